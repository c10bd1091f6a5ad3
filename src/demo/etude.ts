/**
 * The demo's étude in a compact notation, one line a bar. Invented for this project.
 *
 * A word is `pitch:value` with marks after it: pitch is letter, `#` or `b` when altered, octave (always the full pitch,
 * the printed accidental follows from key and bar); `r` is a rest; value is `w h q e`, dotted with `d` (`qd`).
 * Marks: `(` slur begins, `)` slur ends, `~` tied to the next note, `.` staccato, `>` accent, `,` breath mark after it,
 * `^` fermata. `3[` … `]` is a triplet. `!p` and the like is a dynamic mark, `!<` begins a crescendo wedge and `!|` ends
 * it, `!"dim."` is a direction in words, `!{A}` a rehearsal letter, `!_` puts a double bar line after the bar.
 */
export const ETUDE = {
  title: 'Étude: The Ferry at Low Tide',
  composer: 'written for the takesheet demonstration',
  partName: 'Clarinet in B♭',
  /** flats in the key signature, written */
  keyFifths: -2,
  /** written to sounding: a major second down */
  transpose: { diatonic: -1, chromatic: -2 },
  quarterBpm: 92,
  tempoWords: 'Andante con moto',
  bars: [
    '!{A} !p D5:qd( C5:e Bb4:q) F4:q',
    'G4:e( A4:e Bb4:e C5:e) D5:h,',
    'Eb5:qd( D5:e C5:q) G4:q',
    'C5:e( B4:e C5:e D5:e Eb5:q) B4:q',
    'C5:q( Bb4:q) A4:e( G4:e) F4:q,',
    '!< F4:e( G4:e A4:e Bb4:e) C5:e( D5:e Eb5:e C5:e)',
    'D5:e( Eb5:e F5:e D5:e) G5:q( A5:q) !|',
    '!f Bb5:hd> r:q !_',
    '!{B} F5:q> 3[ Eb5:e( D5:e C5:e) ] Bb4:e. C5:e. D5:q',
    '!p r:e Bb4:e. C5:e. D5:e. 3[ Eb5:e( D5:e C5:e) ] A4:q',
    '!f F#4:e( G4:e.) A4:e. Bb4:e. F5:q>( Eb5:q.)',
    '!p 3[ D5:e( C5:e Bb4:e) ] 3[ A4:e( Bb4:e C5:e) ] D5:q( Bb4:q.),',
    '!f r:q E5:e>( F5:e.) E5:e( F5:e.) G5:q>',
    '!"dim." Eb5:qd( D5:e C5:q) A4:q',
    '!p Bb4:q( A4:q) F4:h^, !_',
    '!{C} D5:qd( C5:e Bb4:q) F4:q',
    'G4:q Eb5:hd(~',
    'Eb5:e D5:e C5:e Bb4:e) 3[ A4:e( Bb4:e C5:e) ] C#5:e( D5:e.),',
    '!f F5:q> C5:e( D5:e) Eb5:e. C5:e. A4:q>',
    '!p F4:q( A4:q Bb4:h^)',
  ],
} as const;
