import { SMALLEST_HEARD_CENTS, SMALLEST_HEARD_DB } from '../rules/sizes.js';
import type { SayingsWords } from '../shapes/sayings.js';
import { LEANING } from './leaning.js';
import { NUMBERS } from './numbers.js';
import { beatsIn, tempoIn } from './tempo.js';

const { down, exact, fixed, whole } = NUMBERS;
const size = (cents: number) => whole(Math.abs(Math.round(cents)));
const lean = (cents: number, than: string) =>
  `${cents > 0 ? 'higher' : 'lower'} than ${than} (${size(cents)} cents; listeners notice ${SMALLEST_HEARD_CENTS})`;
const times = (count: number) => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);
const decibels = (db: number) => (db < SMALLEST_HEARD_DB ? `less than ${SMALLEST_HEARD_DB} dB` : `${down(db)} dB`);
const changes = (of: number) => (of === 1 ? 'at the one change of dynamics' : `at all ${of} changes`);
const usually = (of: number, db: number) => `${of === 1 ? '' : 'usually '}by ${decibels(db)}`;
const enough = (db: number) => `${exact(db)} dB is enough`;
const needed = (db: number) => `it takes ${exact(db)} dB`;

const missing = (count: number) =>
  `at ${count} ${count === 1 ? 'place' : 'places'} none was heard: see whether you need the air there`;

const BESIDE_MARK = {
  'a-little-faster': 'a little faster than marked',
  faster: 'faster than marked',
  'a-little-slower': 'a little slower than marked',
  slower: 'slower than marked',
} as const;

const LOUD_TONE = {
  brighter: 'the tone is brighter when loud',
  'as-bright': 'the tone is as bright when loud as when soft',
  darker: 'the tone is darker when loud',
} as const;

/** What is said of a criterion in one line. */
export const SAYINGS: SayingsWords = {
  'notes-as-written': ({ right, of, unclear }) =>
    `${right} of ${of} notes as written${unclear > 0 ? `, ${unclear} not clear enough to tell` : ''}`,
  'groups-even': ({ even, of }) => `${even} of ${of} beats even`,
  'entries-in-time': ({ inTime, of }) => `${inTime} of ${of} entries after rests in time`,
  'groups-lean': LEANING.line,
  tempo: ({ played, beat }) => `${tempoIn(played, beat)}; no tempo is marked`,
  'tempo-beside-mark': ({ played, marked, heard, beat }) =>
    heard === 'as-marked'
      ? `as marked: ${tempoIn(played, beat)}`
      : `${BESIDE_MARK[heard]}: ${tempoIn(played, beat)}, ${whole(beatsIn(marked, beat))} marked`,
  'contrasts-plain': ({ of, usualDb, leastDb }) =>
    `soft and loud differ well ${changes(of)}, ${usually(of, usualDb)} (${enough(leastDb)})`,
  'contrasts-reversed': ({ of }) => `soft and loud come the wrong way round ${changes(of)}`,
  'contrasts-alike': ({ of, reversed, usualDb, leastDb }) => {
    const turned = reversed === 0 ? '' : `, ${times(reversed)} the wrong way round`;
    return `soft and loud sound nearly alike ${changes(of)}${turned}: they differ ${usually(of, usualDb)}, and ${needed(leastDb)}`;
  },
  'contrasts-mixed': ({ of, plain, reversed, smallestDb, leastDb }) => {
    const smallest = `; at the weakest place by ${decibels(smallestDb)}, and ${needed(leastDb)}`;
    const turned = `, ${times(reversed)} the wrong way round`;
    return `soft and loud differ well at ${plain} of ${of} changes${reversed === 0 ? smallest : turned}`;
  },
  hairpins: ({ plain, of }) =>
    of === 1 ? `the hairpin is ${plain === 1 ? 'plain' : 'hardly heard'}` : `${plain} of ${of} hairpins plain to hear`,
  'wrong-order': ({ softer, louder }) => `over the whole take ${softer} is louder than ${louder}`,
  'slurs-joined': ({ joined, of }) => `${joined} of ${of} slurred notes joined`,
  'staccato-sounds': ({ percent }) =>
    `staccato notes sound for ${whole(percent)} percent of their time (short: up to about 50)`,
  'staccato-half': ({ from, to }) =>
    whole(from) === whole(to) ? 'nearly all alike' : `half of them for ${whole(from)} to ${whole(to)} percent`,
  'accent-kinds': ({ short, long, of }) =>
    long === of
      ? 'accents are held on'
      : short === of
        ? 'accents are short, with a space behind'
        : `of ${of} accents ${short} ${short === 1 ? 'is' : 'are'} short, with a space behind, and ${long} held on`,
  'tenuto-sounds': ({ percent }) =>
    `notes with a line sound for ${whole(percent)} percent of their time (full: nearly 100)`,
  'breaths-heard': ({ heard, of }) =>
    heard === of
      ? `${of === 1 ? 'the breath was' : `all ${of} breaths were`} where ${of === 1 ? 'it is' : 'they are'} marked`
      : heard === 0
        ? `no breath was heard where ${of === 1 ? 'it is' : 'they are'} marked: see whether you need the air there`
        : `${heard} of ${of} ${of === 1 ? 'breath' : 'breaths'} ${heard === 1 ? 'was where it is' : 'were where they are'} marked; ${missing(of - heard)}`,
  'short-breaths': ({ count }) =>
    count === 1 ? 'one full breath was only a quick one' : `${count} full breaths were only quick ones`,
  'breaths-beyond': ({ count }) => `${count} more ${count === 1 ? 'stands' : 'stand'} where not all was played`,
  tuning: ({ a4Hz, cents, heard }) => {
    const [away, way, hertz] = [size(cents), cents > 0 ? 'high' : 'low', `${fixed(a4Hz, 1)} Hz`];
    const said = away === '1' ? '1 cent' : `${away} cents`;
    if (heard === 'off')
      return `tuned too ${way}: ${said}, and listeners notice ${SMALLEST_HEARD_CENTS} (A = ${hertz})`;
    return heard === 'exact' ? 'tuned to A = 440 Hz' : `well tuned to A = 440 Hz; ${said} ${way}, hardly to be heard`;
  },
  register: ({ register, cents }) => `${register} notes are ${lean(cents, 'the others')}`,
  'loud-notes': ({ cents }) => `loud notes are ${lean(cents, 'soft ones')}`,
  'notes-steady': ({ steady, of }) => `${steady} of ${of} long notes held steadily`,
  'with-vibrato': ({ count }) => `${count} with vibrato`,
  'air-under-slurs': ({ db }) =>
    db < SMALLEST_HEARD_DB
      ? 'the air goes on evenly under slurs'
      : `under slurs the tone dips by ${down(db)} dB from note to note`,
  'notes-speak': ({ prompt, of }) =>
    prompt === of ? 'notes after a silence speak at once' : `${prompt} of ${of} notes after a silence speak at once`,
  'tone-over-breath': ({ db }) => `the tone is ${whole(db)} dB louder than the breath in it`,
  'loud-tone': ({ beside }) => LOUD_TONE[beside],
  'played-through': () => 'played through',
  restarts: ({ count }) => `begun again ${times(count)}`,
  skips: ({ count }) => `jumped ahead ${times(count)}`,
};
