import { mayBeEcho } from '../observed/echoes.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import { noteName, playedName } from '../observed/note-name.js';
import type { Observation } from '../observed/observation.js';

/**
 * Notes played at another pitch: an accidental when a misreading predicts exactly that pitch, else a wrong note. An octave
 * is only watched: what rings strongest in a tone can be its octave. So is a note of which neither neighbour was heard, and
 * what the room may have sent back of the note before.
 *
 * @param input one take
 * @returns one observation a note
 *
 * Source: the accidental rule (common practice); the misreading comes from the same computation as the study sheet.
 */
export function judgePitches(input: JudgeInput): Observation[] {
  const { part, alignment, standards } = input;
  return alignment.notes.flatMap((aligned): Observation[] => {
    if (aligned.status !== 'other-pitch' || aligned.playedMidi === undefined) return [];
    const note = part.notes[aligned.index]!;
    const playedMidi = aligned.playedMidi;
    const playedWritten = playedMidi - (note.soundingMidi - note.writtenMidi);
    const placed = [aligned.index - 1, aligned.index + 1].some((i) => alignment.notes[i]?.status === 'as-written');
    const echo = mayBeEcho(input, aligned.onsetSeconds!);
    const weight = placed && !echo && aligned.confidence >= standards.slipConfidence.value ? 'fix' : 'watch';
    const misreading = note.misreadings.find((m) => m.soundingMidi === playedMidi);
    const written = noteName(note.written);
    const shared = { criterion: 'notes', weight, ...placeOf(input, note) } as const;
    if (misreading !== undefined) {
      const played = playedName(playedWritten, note.written);
      const facts = { written, played, letter: note.written.step, misreading: misreading.kind };
      return [{ kind: 'accidental', size: 1.5, ...shared, facts }];
    }
    const away = playedMidi - note.soundingMidi;
    const surely = away % 12 === 0 || Math.abs(away) > standards.slipWidest.value ? 'watch' : weight;
    const octave = away % 12 !== 0 ? null : away > 0 ? 'higher' : 'lower';
    const measured = { value: away, unit: 'semitones' } as const;
    return [
      {
        kind: 'wrong-note',
        size: 1.2,
        ...shared,
        weight: surely,
        measured,
        facts: { written, played: playedName(playedWritten, note.written), octave },
      },
    ];
  });
}
