import type { SummaryWords } from './words.js';

const lean = (cents: number) => `${Math.abs(Math.round(cents))} cents ${cents > 0 ? 'sharp' : 'flat'}`;
const times = (count: number) => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);
/** Never rounded up, so that what falls short of something does not read as if it reached it. */
const decibels = (db: number) => {
  if (db < SMALLEST_HEARD_DB) return `less than ${SMALLEST_HEARD_DB} dB`;
  return `${db < 10 ? Math.floor(db * 10 + 1e-6) / 10 : Math.floor(db)} dB`;
};
/** Source: 1 dB is the smallest difference of level noticed (Slade et al. 2022). */
const SMALLEST_HEARD_DB = 1;
/** Nearer than this two tones sound the same. Source: just noticeable (Hill & Summers 2007). */
const IN_TUNE_CENTS = 10;
/** A tempo nearer than this sounds the same. Source: about 3 % is noticed (Drake & Botte 1993). */
const NOTICED = 0.03;

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
  tempo: (played, marked) => {
    const said = `${Math.round(played)} quarter notes a minute`;
    if (marked === null) return `${said}; no tempo is marked`;
    const off = played / marked - 1;
    if (Math.abs(off) <= NOTICED) return `as marked: ${said}`;
    const way = off > 0 ? 'faster than marked' : 'slower than marked';
    return `${Math.abs(off) <= 2 * NOTICED ? 'a little ' : ''}${way}: ${said}, ${Math.round(marked)} marked`;
  },
  levelRiding: 'not judged: the recorder moved its level',
  noChange: 'no change of level to measure',
  contrasts: ({ of, plain, reversed, usualDb, smallestDb, leastDb }) => {
    const where = of === 1 ? 'at the one change of dynamics' : `at all ${of} changes`;
    const [usual, least] = [`${of === 1 ? '' : 'usually '}${decibels(usualDb)}`, `at least ${leastDb} dB is asked for`];
    if (plain === of) return `soft and loud differ well ${where}: ${usual}, where ${least}`;
    if (reversed === of) return `soft and loud come the wrong way round ${where}`;
    const turned = reversed === 0 ? '' : `, ${times(reversed)} the wrong way round`;
    if (plain === 0) return `soft and loud sound nearly alike ${where}${turned}: ${usual}, where ${least}`;
    const smallest = reversed === 0 ? `; the smallest is ${decibels(smallestDb)}, where ${least}` : turned;
    return `soft and loud differ well at ${plain} of ${of} changes${smallest}`;
  },
  hairpins: (plain, of) =>
    of === 1 ? `the hairpin is ${plain === 1 ? 'plain' : 'hardly heard'}` : `${plain} of ${of} hairpins plain to hear`,
  wrongOrder: (softer, louder) => `over the whole take ${softer} is louder than ${louder}`,
  slursJoined: (joined, of) => `${joined} of ${of} slurred notes joined`,
  dotted: (percent) => `staccato notes sound for ${Math.round(percent)} percent of their time`,
  tenuto: (percent) => `notes with a line sound for ${Math.round(percent)} percent of their time`,
  noArticulation: 'no slur or staccato to measure',
  noBreathMarked: 'no breath marked',
  noBreathHeard: 'no marked breath could be heard: the notes around them were not all played',
  breathsHeard: (heard, of) => `${heard} of ${of} marked ${of === 1 ? 'breath' : 'breaths'} heard`,
  shortBreaths: (count) =>
    count === 1 ? 'one full breath was only a quick one' : `${count} full breaths were only quick ones`,
  breathsBeyond: (count) => `${count} more ${count === 1 ? 'stands' : 'stand'} where not all was played`,
  tuning: (a4Hz, cents) => {
    const away = Math.abs(Math.round(cents));
    const [said, way] = [away === 1 ? '1 cent' : `${away} cents`, cents > 0 ? 'high' : 'low'];
    if (away > IN_TUNE_CENTS) return `tuned ${said} too ${way}: A = ${a4Hz.toFixed(1)} Hz`;
    return away === 0 ? 'tuned to A = 440 Hz' : `tuned close to A = 440 Hz: ${said} ${way}, ${a4Hz.toFixed(1)} Hz`;
  },
  register: (register, cents) => `${register} notes ${lean(cents)}`,
  loudNotes: (cents) => `loud notes ${lean(cents)} of soft ones`,
  playedThrough: 'played through',
  stops: (restarts, skips) =>
    [
      ...(restarts === 0 ? [] : [`begun again ${times(restarts)}`]),
      ...(skips === 0 ? [] : [`jumped ahead ${times(skips)}`]),
    ].join(', '),
};
