import type { Sayings } from '../../base/index.js';
import type { REMARKS } from '../../score/index.js';

const quarters = (value: number): string => `${value} ${value === 1 ? 'quarter' : 'quarters'}`;

/** What a copyist would point out in a part, in English. */
export const REMARKS_IN_WORDS: Sayings<typeof REMARKS> = {
  'other-voices': ({ voice, notes }) =>
    `Voice ${voice} is read; ${notes === 1 ? '1 note is' : `${notes} notes are`} in other voices or on other staves.`,
  'repeat-within-bar': ({ bar }) =>
    `Bar ${bar}: a repeat sign stands within the bar; it is read as standing at its end.`,
  'bar-repeat': ({ bar }) =>
    `Bar ${bar}: the sign that repeats the bar before is not read out; the bar counts as a rest.`,
  'concert-pitch': ({ bar }) =>
    `Bar ${bar}: the score is at concert pitch; the player's own part is written in another key.`,
  'bar-too-long': ({ bar, quarters: held, askedQuarters }) =>
    `Bar ${bar} is too long: it holds ${quarters(held)}, its time signature asks for ${quarters(askedQuarters)}.`,
  'bar-too-short': ({ bar, quarters: held, askedQuarters }) =>
    `Bar ${bar} is too short: it holds ${quarters(held)}, its time signature asks for ${quarters(askedQuarters)}.`,
  'slur-without-end': ({ bar }) => `Bar ${bar}: a slur begins and has no end.`,
  microtone: ({ bar, step, octave }) =>
    `Bar ${bar}: the microtone on ${step}${octave} is read as the nearest semitone.`,
  'sign-missing': ({ bar, step, octave, sign }) =>
    `Bar ${bar}: ${step}${octave} is meant with a ${sign} sign that is not printed.`,
  'sign-differs': ({ bar, step, octave, sign }) =>
    `Bar ${bar}: the sign at ${step}${octave} says ${sign}, the file means another pitch; the pitch counts.`,
  'no-coda': ({ bar }) => `Bar ${bar}: there is a way to a coda, but no coda.`,
  'no-segno': ({ bar }) => `Bar ${bar}: D.S. is written, but there is no segno.`,
  'endless-repeats': () => 'The repeats ask for more bars than anyone plays; the rest is left out.',
  'wedge-without-end': ({ bar, kind }) => `Bar ${bar}: the ${kind} wedge has no end.`,
  'hairpin-without-note': ({ bar, kind }) => `Bar ${bar}: no note begins under the ${kind}, so it is not measured.`,
  'unknown-dynamic': ({ bar, mark }) => `Bar ${bar}: the dynamic "${mark}" is not known.`,
  'tempos-differ': ({ bar, markedQuarterBpm, playedQuarterBpm }) =>
    `Bar ${bar}: the metronome mark means ${markedQuarterBpm} quarters a minute, the file plays ${playedQuarterBpm}; the mark counts.`,
  'tempo-assumed': ({ quarterBpm }) => `No tempo is marked at the start; ${quarterBpm} quarters a minute are assumed.`,
};
