import type { Criterion, FindingKind } from '../judge/index.js';
import type { MisreadingKind } from '../score/index.js';

/** A short heading and the reason why it matters, in plain words. */
export interface FindingWords {
  readonly headline: string;
  readonly why: string;
}

const ACCIDENTAL_RULE =
  'A sign holds to the barline, on its own line or space only. After the barline the key signature is back.';

const MISREADINGS: Record<MisreadingKind, FindingWords> = {
  'key-signature-forgotten': {
    headline: 'The key signature was forgotten',
    why: 'The key signature holds on every line, in every octave, until it is changed.',
  },
  'accidental-forgotten': { headline: 'A printed sign was passed over', why: ACCIDENTAL_RULE },
  'dropped-within-bar': { headline: 'A sign from earlier in the bar still holds', why: ACCIDENTAL_RULE },
  'carried-past-barline': { headline: 'A sign was carried past the barline', why: ACCIDENTAL_RULE },
  'wrong-octave-applied': { headline: 'A sign was used in another octave', why: ACCIDENTAL_RULE },
};

const KINDS: Record<FindingKind, FindingWords> = {
  accidental: { headline: 'An accidental was misread', why: ACCIDENTAL_RULE },
  'wrong-note': {
    headline: 'Another note was played',
    why: 'A wrong note that is repeated is soon learnt. Put it right slowly before it settles.',
  },
  'missed-note': { headline: 'A note is missing', why: 'Every note carries the line to the next one.' },
  'added-note': {
    headline: 'A note was added',
    why: 'An extra note often means that the fingers or the air changed a moment too early.',
  },
  'skipped-bars': { headline: 'Some bars were passed over', why: 'The panel and the section count every bar.' },
  restart: {
    headline: 'The playing stopped and began again',
    why: 'Carrying on after a slip is a skill of its own, and an audition asks for it.',
  },
  hesitation: {
    headline: 'The music stood still for a moment',
    why: 'The beat goes on for everyone else, so it has to go on for you.',
  },
  'late-entry': {
    headline: 'The entry came late',
    why: 'A rest is played too: count it in small values and the entry falls into place.',
  },
  'early-entry': {
    headline: 'The entry came early',
    why: 'A rest is played too: count it to its very end before you come in.',
  },
  'uneven-group': {
    headline: 'The notes of the beat are not equal',
    why: 'The parts of a beat stay equal across leaps and changes of articulation.',
  },
  rushing: { headline: 'The tempo runs ahead', why: 'Others can only play with a beat they can foresee.' },
  dragging: { headline: 'The tempo falls back', why: 'Others can only play with a beat they can foresee.' },
  'off-tempo': {
    headline: 'The tempo is not the one asked for',
    why: 'The marked tempo gives the piece its character. A slower one is right for practice.',
  },
  'weak-contrast': {
    headline: 'Two dynamic marks sound nearly alike',
    why: 'Marks that differ on the page have to differ for a listener at the back of the hall.',
  },
  'reversed-contrast': {
    headline: 'The softer mark came out louder',
    why: 'Listeners follow the dynamics to hear where the music is going.',
  },
  'weak-hairpin': {
    headline: 'The hairpin hardly changes the level',
    why: 'A gradual change uses all of its bars and arrives at its mark.',
  },
  'reversed-hairpin': {
    headline: 'The hairpin goes the other way',
    why: 'A gradual change uses all of its bars and arrives at its mark.',
  },
  'fermata-long': {
    headline: 'The fermata is very long',
    why: 'A fermata lets the music rest. When it lasts too long the line is lost.',
  },
  'fermata-short': { headline: 'The fermata is hardly held', why: 'A fermata lets the music rest before it goes on.' },
  'slur-broken': {
    headline: 'The slur is interrupted',
    why: 'Under a slur the air goes on and the tongue stays away until the next group.',
  },
  'staccato-long': {
    headline: 'The staccato notes are long',
    why: 'A dot asks for space before the next note; the space is part of the rhythm.',
  },
  'accent-weak': {
    headline: 'The accent can hardly be heard',
    why: 'An accent shows the listener where the weight is.',
  },
  'breath-unmarked': {
    headline: 'A breath falls where none is marked',
    why: 'A breath in the wrong place cuts the phrase in two.',
  },
  'breath-late': {
    headline: 'The breath delays the next note',
    why: 'Take the time for a breath from the note before it, never from the note after it.',
  },
  'note-out-of-tune': {
    headline: 'A note is out of tune with the rest',
    why: 'One note that leans away from its neighbours is heard even in a large section.',
  },
  'tuning-off': {
    headline: 'The instrument is tuned away from A = 440 Hz',
    why: 'The section can only play in tune together from one common pitch.',
  },
  'went-well': { headline: 'This went well', why: '' },
};

/**
 * @param finding a finding's kind and, for an accidental, the misreading that explains it
 * @returns heading and reason; the reason is empty for praise
 *
 * Source: rule of accidentals: common practice notation (e.g. Read, Music Notation); the others: common practice.
 */
export function wordsFor(finding: {
  readonly kind: FindingKind;
  readonly misreading?: MisreadingKind | undefined;
}): FindingWords {
  return finding.misreading === undefined ? KINDS[finding.kind] : MISREADINGS[finding.misreading];
}

const CRITERIA: Record<Criterion, string> = {
  notes: 'Notes',
  rhythm: 'Rhythm',
  tempo: 'Tempo',
  dynamics: 'Dynamics',
  articulation: 'Articulation',
  breath: 'Breath',
  intonation: 'Intonation',
  continuity: 'Continuity',
};

/**
 * @param criterion name in the data
 * @returns name for reading
 *
 * Source: definition.
 */
export function criterionInWords(criterion: Criterion): string {
  return CRITERIA[criterion];
}
