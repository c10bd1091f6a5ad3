import type { SummaryWords } from './words.js';

const lean = (cents: number) => `${Math.abs(Math.round(cents))} cents ${cents > 0 ? 'sharp' : 'flat'}`;
const times = (count: number) => (count === 0 ? 'never' : count === 1 ? 'once' : `${count} times`);
const signed = (value: number) => `${value > 0 ? '+' : '−'}${Math.abs(Math.round(value))}`;

/** One line a criterion, in English. */
export const ENGLISH_SUMMARIES: SummaryWords = {
  leftOut: {
    'all-slurred': 'not judged: all slurred for practice',
    'under-tempo': 'not judged: below the tempo for practice',
    'by-brief': 'not judged: the brief leaves it out',
  },
  notMeasured: (reason) => `not measured: ${reason}`,
  notes: (right, of, unclear) =>
    `${right} of ${of} notes as written${unclear > 0 ? `, ${unclear} not clear enough to tell` : ''}`,
  groupsEven: (even, of) => `${even} of ${of} groups even`,
  entriesInTime: (inTime, of) => `${inTime} of ${of} entries after rests in time`,
  noRhythm: 'no groups or rests to measure',
  tempo: (played, marked) =>
    `${Math.round(played)} quarter notes a minute${marked === null ? '' : `, ${Math.round(marked)} marked`}`,
  levelRiding: 'not judged: the recorder moved its level',
  noChange: 'no change of level to measure',
  hairpinsMeasured: (count) => `${count} hairpins measured`,
  changes: (changes) => `changes of level ${changes.map(signed).join(', ')} dB`,
  wrongOrder: (softer, louder) => `over the whole take ${softer} is louder than ${louder}`,
  slursJoined: (joined, of) => `${joined} of ${of} slurred notes joined`,
  dotted: (percent) => `dotted notes sound for ${Math.round(percent)} percent of their time`,
  tenuto: (percent) => `notes with a line sound for ${Math.round(percent)} percent of their time`,
  noArticulation: 'no slur or dot to measure',
  noBreathMarked: 'no breath marked',
  noBreathHeard: 'no marked breath could be heard: the notes around them were not all played',
  breathsHeard: (heard, of) => `${heard} of ${of} marked ${of === 1 ? 'breath' : 'breaths'} heard`,
  shortBreaths: (count) =>
    count === 1 ? 'one full breath was only a quick one' : `${count} full breaths were only quick ones`,
  breathsBeyond: (count) => `${count} more ${count === 1 ? 'stands' : 'stand'} where not all was played`,
  tuning: (a4Hz, cents) => `A = ${a4Hz.toFixed(1)} Hz (${Math.round(cents) === 0 ? '0' : signed(cents)} cents)`,
  register: (register, cents) => `${register} notes ${lean(cents)}`,
  loudNotes: (cents) => `loud notes ${lean(cents)} of soft ones`,
  playedThrough: 'played through',
  stops: (restarts, skips) => `begun again ${times(restarts)}, jumped ahead ${times(skips)}`,
};
