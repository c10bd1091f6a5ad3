/** A threshold with its unit and where it comes from. */
export interface Standard {
  readonly value: number;
  readonly unit: string;
  readonly source: string;
}

/** What a take is judged by unless the teacher says otherwise. */
export const STANDARDS = {
  /** surer than this, what is timed or held against a note may be a `fix` */
  noteConfidence: { value: 0.55, unit: 'share', source: 'working value: doubt never becomes an accusation' },
  /** surer than this, a wrong pitch is a `fix` */
  slipConfidence: {
    value: 0.8,
    unit: 'share',
    source:
      'working value: on real players slips came out at 0.86 and more, soft notes in a ringing room at 0.71 and less',
  },
  addedLongest: { value: 1, unit: 's', source: 'working value: a longer one is more than a slip' },
  slipWidest: { value: 12, unit: 'semitones', source: 'working value: a wider slip is more likely misheard' },
  addedSeconds: { value: 0.08, unit: 's', source: 'working value: shorter sounds may be finger noise' },
  echoSofter: {
    value: 5,
    unit: 'dB',
    source: 'working value: what a wall sent back was 5 to 10 dB below its note, slips within 2 dB of their neighbours',
  },
  emptyShare: { value: 0.45, unit: 'share', source: 'working value: about half of a missing note’s time is silent' },
  emptyRepeated: {
    value: 0.8,
    unit: 'share',
    source: 'working value: a missing note at the pitch of the one before leaves nearly all of its time silent',
  },
  emptyFall: { value: 10, unit: 'dB', source: 'working value: what is left in a room of the note before it' },
  closedUp: { value: 0.3, unit: 'share', source: 'working value: so much of the time around a missing note is gone' },
  contrastLeast: {
    value: 3,
    unit: 'dB',
    source:
      'working value, common practice: less is not heard as two levels; 1 dB is just noticeable on piano tones (Slade et al. 2022)',
  },
  contrastMargin: {
    value: 0.5,
    unit: 'dB',
    source:
      'half the level difference just noticeable on piano tones (Slade et al. 2022): a contrast so near the limit is at it',
  },
  contrastReversed: {
    value: 1,
    unit: 'dB',
    source: 'level difference just noticeable on piano tones (Slade et al. 2022)',
  },
  hairpinLeast: { value: 3, unit: 'dB', source: 'as contrastLeast' },
  courseEarly: {
    value: 0.9,
    unit: 'share',
    source: 'working value, common practice: a gradual change uses all its bars',
  },
  courseTurned: { value: 3, unit: 'dB', source: 'as hairpinLeast: a way back that is heard as one' },
  fallLeast: {
    value: 2,
    unit: 'dB',
    source: 'twice the level difference just noticeable on piano tones (Slade et al. 2022)',
  },
  fermataLeast: {
    value: 1.25,
    unit: 'times',
    source: 'common practice (from memory): longer than written, at the player’s discretion',
  },
  fermataMost: { value: 3, unit: 'times', source: 'common practice (from memory): about twice is usual' },
  fermataMargin: {
    value: 0.08,
    unit: 'share',
    source: 'twice the measuring error of a fermata’s ratio on rendered takes',
  },
  tuningWatch: {
    value: 15,
    unit: 'cents',
    source: 'tolerance about 25 cents (Larrouy-Maestri 2018), less the error of a room’s tuning',
  },
  noteWatch: { value: 25, unit: 'cents', source: 'tolerance about 25 cents (Larrouy-Maestri 2018)' },
  noteFix: {
    value: 35,
    unit: 'cents',
    source: 'tolerance 25 cents plus the measuring error that 95 of 100 notes keep within on rendered takes',
  },
  noteSeconds: { value: 0.2, unit: 's', source: 'working value: the ear needs a held note to hear tuning' },
  tempoWatch: {
    value: 0.1,
    unit: 'share',
    source: 'working value, common practice: well beyond the noticeable 3 % (Drake & Botte 1993)',
  },
  tempoSteady: { value: 0.03, unit: 'share', source: 'drift noticeable at about 3 % (Drake & Botte 1993)' },
  onsetError: {
    value: 0.015,
    unit: 's',
    source: 'measuring error of an onset on rendered takes: about two thirds lie within it',
  },
  entryLeast: {
    value: 0.045,
    unit: 's',
    source: 'displacement noticeable at 6 ms to 2.5 % (Friberg & Sundberg 1995), several times the measuring error',
  },
  entryLeastFix: {
    value: 0.08,
    unit: 's',
    source: 'as entryLeast, twice the error that 95 of 100 onsets keep within in a room on rendered takes',
  },
  entryWatch: { value: 0.085, unit: 'quarters', source: 'working value, common practice: well beyond the noticeable' },
  entryFix: { value: 0.11, unit: 'quarters', source: 'working value, common practice: about a ninth of a beat' },
  entryMost: {
    value: 0.75,
    unit: 'quarters',
    source: 'working value: a longer wait is a hesitation, not a late entry',
  },
  entryEarly: { value: 0.15, unit: 'quarters', source: 'working value, common practice' },
  groupWatch: {
    value: 0.065,
    unit: 'share of the group',
    source: 'working value, common practice: a third becomes two fifths',
  },
  groupFix: {
    value: 0.085,
    unit: 'share of the group',
    source: 'working value: beyond 12 % of the group less the error of two onsets',
  },
  leanLeast: {
    value: 0.1,
    unit: 'share of the note',
    source: 'working value: a displacement is noticeable from 2.5 % on (Friberg & Sundberg 1995), fourfold as a habit',
  },
  slurGapWatch: { value: 0.028, unit: 's', source: 'working value: three times the measuring error of a joined pair' },
  slurDip: { value: 15, unit: 'dB', source: 'working value: a break of the air, not a soft change of register' },
  slurSpoken: {
    value: 12,
    unit: 'dB',
    source: 'working value: more than a slurred leap changes the level; the softer note hardly spoke',
  },
  slurGapFix: {
    value: 0.065,
    unit: 's',
    source:
      'working value: a tongue stroke makes a gap of about 40 ms (common practice), plus the measuring error of an offset in a room',
  },
  staccatoWatch: {
    value: 0.72,
    unit: 'share',
    source: 'staccato about 40 %, repeated tongued notes about 60 % of the interval (Bresin & Battel 2000, piano)',
  },
  staccatoFix: { value: 0.82, unit: 'share', source: 'as staccatoWatch, plus the measuring error of an offset' },
  staccatoSeconds: { value: 0.15, unit: 's', source: 'working value: shorter notes leave the release no room' },
  ringing: {
    value: 0.25,
    unit: 's',
    source: 'working value: in a room that rings longer the gap after a short note fills up',
  },
  ringingLong: { value: 0.8, unit: 's', source: 'working value: such a room holds a note by itself' },
  ringingFall: {
    value: 0.4,
    unit: 'share',
    source: 'working value: a short note’s end falls at least so much of what the room allows',
  },
  accentWatch: {
    value: 0.5,
    unit: 'dB',
    source:
      'working value, half of what is just noticeable on piano tones (Slade et al. 2022): an accent is colour and length, too, so it is watched only where the level shows nothing',
  },
  accentDetached: {
    value: 0.6,
    unit: 'share',
    source:
      'working value: notes that are tongued apart sound about 60 % of the interval (Bresin & Battel 2000, piano)',
  },
  accentHeld: {
    value: 0.75,
    unit: 'share',
    source: 'working value: such an accent has its note behind it, without a space that is heard (common practice)',
  },
  accentSpread: { value: 4, unit: 'dB', source: 'working value: among notes this uneven an accent cannot be told' },
  breathTaken: {
    value: 0.12,
    unit: 's',
    source:
      'a gap at a mark is a breath from here on: a quick one takes 0.2 to 0.5 s (from memory), less what a room fills',
  },
  breathGap: { value: 0.22, unit: 's', source: 'a quick breath takes 0.2 to 0.5 s (from memory)' },
  breathTongue: {
    value: 0.04,
    unit: 's',
    source: 'a tongue stroke makes a gap of about 40 ms (common practice): no longer a gap, and nobody has breathed',
  },
  breathFull: {
    value: 0.3,
    unit: 's',
    source: 'a quick breath takes 0.2 to 0.5 s, a full one up to 1 s (from memory), less what a room fills',
  },
  breathSip: { value: 0.2, unit: 's', source: 'as breathFull: the shortest quick breath' },
  breathLate: { value: 0.35, unit: 's', source: 'working value, common practice' },
  hesitation: { value: 0.8, unit: 's', source: 'working value, common practice: more than a breath' },
  drift: {
    value: 0.07,
    unit: 'share',
    source: 'drift noticeable at about 3 % over several beats (Drake & Botte 1993), doubled',
  },
  wobbleWatch: {
    value: 12,
    unit: 'cents',
    source:
      'working value: beyond the just noticeable 10 cents (Hill & Summers 2007); of 363 long notes of real players 14 stray so far, vibrato left out',
  },
  wobbleOver: {
    value: 2.5,
    unit: 'times',
    source:
      'working value: a note is held against the upper quartile of the player’s own, as instruments and players differ',
  },
  wobbleSeconds: {
    value: 0.55,
    unit: 's',
    source: 'working value: of a shorter note what happens once at its end is half of it',
  },
  wobbleVibrato: {
    value: 0.2,
    unit: 'share',
    source: 'working value: of a player who has vibrato, an uneven one cannot be told from shaking',
  },
  sagCents: {
    value: 15,
    unit: 'cents',
    source:
      'working value: beyond the just noticeable 10 cents (Hill & Summers 2007); real players’ last notes before a breath end 9 cents lower at most, and most end higher',
  },
  sagDb: { value: 2, unit: 'dB', source: 'as fallLeast: the level falls together with the pitch' },
  crackSeconds: {
    value: 0.04,
    unit: 's',
    source: 'working value: a shorter sound at another pitch is part of any attack',
  },
  crackLongest: { value: 0.15, unit: 's', source: 'working value: a longer sound is a note of its own' },
  speakSeconds: {
    value: 0.08,
    unit: 's',
    source:
      'working value: of 353 notes of real wind players that start out of silence none speaks after more than 40 ms, of sampled instruments none',
  },
  speakOver: {
    value: 2.5,
    unit: 'times',
    source: 'as wobbleOver: a note is held against the upper quartile of the player’s own',
  },
  hitDb: {
    value: 5,
    unit: 'dB',
    source:
      'working value: of 450 notes of real wind players, tongued and without accent, none is begun more than 4 dB over the level it comes to',
  },
  hitOver: {
    value: 4,
    unit: 'dB',
    source:
      'working value: a note is held against the upper quartile of the player’s own, as instruments and players differ',
  },
  tongueSag: {
    value: 2,
    unit: 'dB',
    source:
      'working value: notes that are tongued for nine tenths of their time sag by 1.2 to 1.5 dB on the synthesiser, for seven tenths by 3 to 4',
  },
  tongueSofter: { value: 1, unit: 'dB', source: 'just noticeable on piano tones (Slade et al. 2022)' },
  wetRoom: {
    value: 0.7,
    unit: 's',
    source: 'working value: in such a room the notes before are heard in a note, and sway it',
  },
  inTune: { value: 10, unit: 'cents', source: 'just noticeable (Hill & Summers 2007)' },
} as const satisfies Record<string, Standard>;

/** All standards a take is judged by, by name. */
export type Standards = { readonly [K in keyof typeof STANDARDS]: Standard };
