import type { BarStory, ProgressPlayer, ProgressResult } from '../progress/progress-result-schema.js';
import { dateInWords } from './dates.js';
import { numberInWords } from './numbers.js';
import { dayInWords } from './short-dates.js';

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

/**
 * @param names names or numbers
 * @returns "a", "a and b", "a, b and c"
 *
 * Source: definition.
 */
export function listInWords(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/**
 * @param players how many players
 * @param takes how many takes
 * @param days all days, in order
 * @returns the line under the title
 *
 * Source: definition.
 */
export function factsInWords(players: number, takes: number, days: readonly string[]): string {
  const [first, last] = [days[0], days.at(-1)];
  const when = first === undefined || last === undefined ? [] : [spanInWords(first, last)];
  return [counted(players, 'player', 'players'), counted(takes, 'take', 'takes'), ...when].join('  ·  ');
}

/**
 * @param bars bars that somebody had to fix and nobody has any more
 * @returns one sentence, null when there are none
 *
 * Source: definition.
 */
export function masteredInWords(bars: readonly string[]): string | null {
  if (bars.length === 0) return null;
  return `Mastered by everybody who had something to fix there: ${bars.length === 1 ? 'bar' : 'bars'} ${listInWords(bars)}.`;
}

/**
 * @param have players who have it on the latest day
 * @param open players for whom it is only worth a listen, or not judged
 * @returns who has it now
 *
 * Source: definition.
 */
export function hasItInWords(have: readonly string[], open: readonly string[]): string {
  const perhaps = open.length === 0 ? [] : [`${listInWords(open)} perhaps`];
  return [...(have.length === 0 ? [] : [listInWords(have)]), ...perhaps].join('; ');
}

function spanInWords(first: string, last: string): string {
  if (first === last) return dateInWords(first);
  const sameYear = first.slice(0, 4) === last.slice(0, 4);
  return `${sameYear ? dayInWords(first) : dateInWords(first)} to ${dateInWords(last)}`;
}

const MOST_DAYS = 6;

/**
 * @param days the player's days
 * @returns which days, and how many takes
 *
 * Source: definition.
 */
export function daysInWords(days: ProgressPlayer['days']): string {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return 'No take that was reviewed';
  const takes = counted(
    days.reduce((sum, day) => sum + day.takes, 0),
    'take',
    'takes',
  );
  if (days.length > MOST_DAYS) return `${takes} on ${days.length} days, ${spanInWords(first.date, last.date)}`;
  return `${takes}: ${listInWords(days.map(({ date, takes: n }) => (n > 1 ? `${dayInWords(date)} (${n})` : dayInWords(date))))}`;
}

/**
 * @param days how many days there are to compare
 * @param changes how many changes were found
 * @returns what stands where there is no change to tell, null when there is one
 *
 * Source: definition.
 */
export function noChangeInWords(days: number, changes: number): string | null {
  if (days === 0) return null;
  if (days === 1) return 'This is the first day. The next takes will show what moves.';
  return changes > 0 ? null : 'No number has changed by more than takes of one day differ by themselves.';
}

/**
 * @param fixed bars that were to fix and are free now
 * @param open bars that are to fix on the latest day
 * @returns sentences for a player with several days, none when there is nothing to tell
 *
 * Source: definition.
 */
export function barsInWords(fixed: readonly string[], open: readonly string[]): string[] {
  const bars = (numbers: readonly string[]) => `${numbers.length === 1 ? 'bar' : 'bars'} ${listInWords(numbers)}`;
  return [
    ...(fixed.length === 0 ? [] : [`Fixed: ${bars(fixed)}.`]),
    ...(open.length === 0 ? [] : [`Still to work on: ${bars(open)}.`]),
  ];
}

/**
 * @param names measures that stayed as they were, as inside a sentence
 * @returns one sentence, null when there are none
 *
 * Source: definition.
 */
export function stableInWords(names: readonly string[]): string | null {
  return names.length === 0 ? null : `Stable: ${listInWords(names)}.`;
}

/**
 * @param names measures that moved in between and are back where they began, as inside a sentence
 * @returns one sentence, null when there are none
 *
 * Source: definition.
 */
export function toAndFroInWords(names: readonly string[]): string | null {
  return names.length === 0 ? null : `To and fro, and now where it began: ${listInWords(names)}.`;
}

/** As many weeks in a row are told as a span. */
const A_SPAN = 3;

/**
 * @param missing Mondays of weeks without a take, in order
 * @param all Mondays of all weeks with a take of the étude, in order
 * @returns one sentence, null when no week is missing
 *
 * Source: definition.
 */
export function missingWeeksInWords(missing: readonly string[], all: readonly string[]): string | null {
  const runs: string[][] = [];
  for (const week of missing) {
    const before = runs.at(-1);
    const follows = before !== undefined && all.indexOf(week) === all.indexOf(before.at(-1) ?? '') + 1;
    if (follows) before.push(week);
    else runs.push([week]);
  }
  const spans = runs.flatMap((run) => {
    const [first, last] = [run[0], run.at(-1)];
    const isSpan = run.length >= A_SPAN && first !== undefined && last !== undefined;
    return isSpan ? [`${dayInWords(first)} to ${dayInWords(last)}`] : run.map(dayInWords);
  });
  if (spans.length === 0) return null;
  return `No take of this étude in the ${missing.length === 1 ? 'week' : 'weeks'} of ${listInWords(spans)}.`;
}

/**
 * @param name measure without any number
 * @param reason why there is none
 * @returns one sentence
 *
 * Source: definition.
 */
export function notJudgedInWords(name: string, reason: string): string {
  return `${name}: ${reason.replace(/\.$/, '')}.`;
}

type Gap = ProgressPlayer['gaps'][number];

/**
 * @param gaps what is missing; weeks without a take are told elsewhere
 * @returns a sentence for each reason why takes do not count, with their days
 *
 * Source: definition.
 */
export function notCountedInWords(gaps: readonly Gap[]): string[] {
  const daysOf = (why: Gap['why']) =>
    gaps.filter((gap) => gap.why === why).map(({ date, file }) => (date === null ? (file ?? '') : dayInWords(date)));
  const [unclear, other] = [daysOf('too-poor'), daysOf('not-this-score')];
  return [
    ...(unclear.length === 0
      ? []
      : [`Not counted, because it could not be heard clearly enough: ${listInWords(unclear)}.`]),
    ...(other.length === 0 ? [] : [`Not counted, because it does not fit the part: ${listInWords(other)}.`]),
    ...gaps.filter(({ why }) => why === 'failed').map(failedInWords),
  ];
}

function failedInWords({ date, file, detail }: Gap): string {
  const when = date === null ? '' : ` of ${dayInWords(date)}`;
  return `Not counted, because it could not be read: the take${when} (${[file, detail].filter((one) => one !== null).join(': ')}).`;
}

/**
 * @param story a bar's story
 * @returns how it stands now
 *
 * Source: definition.
 */
export function statusInWords({ status, since }: BarStory): string {
  const day = since === null ? '' : dayInWords(since);
  return {
    fixed: `fixed since ${day}`,
    eased: `only worth a listen since ${day}`,
    returning: `had been fixed, came back on ${day}`,
    still: 'still there',
    new: `new on ${day}`,
    grown: `to fix since ${day}, only worth a listen before`,
    'not-judged': 'not judged on the latest day',
    seen: 'to work on',
  }[status];
}

/**
 * @param progress the whole document
 * @returns the paragraph that explains noise
 *
 * Source: Bland & Altman 1986; Weir 2005.
 */
export function noiseInWords(progress: ProgressResult): string[] {
  const days = Math.max(0, ...progress.measures.map(({ noise }) => noise.fromTakes.days));
  const found =
    days === 0
      ? 'No player has several takes of one day here, so working values stand in: what the measuring itself can be off by, and what a player usually varies by. Two takes on one day, from a few players, would put real numbers in their place.'
      : `${counted(days, 'day', 'days')} with several takes of one player say how far takes lie apart when nothing was learnt between them. With few such days the numbers still lean on working values.`;
  return [
    'Nobody plays a thing twice in the same way, and no measuring is exact. So two takes differ even when nothing has changed.',
    found,
    'A difference between two days is called a change when it is larger than 1.96 times √2 times what one take varies by (Bland & Altman 1986, Weir 2005); with several takes a day, less is needed. About one in twenty differences that mean nothing is still larger than that. A change can also be a good or a bad day: listen again next week.',
  ];
}

/**
 * @param days days with several takes that this measure rests on
 * @param takes further takes on them
 * @param measuring standard deviation of the measuring alone
 * @param playing standard deviation of a player from take to take
 * @returns what a number rests on
 *
 * Source: definition.
 */
export function restsOnInWords(days: number, takes: number, measuring: number, playing: number): string {
  const [off, varies] = [measuring, playing].map((value) => numberInWords(value, 1));
  const working = `working values: measuring ${off}, playing ${varies}`;
  return days === 0
    ? working
    : `${counted(takes, 'repeat', 'repeats')} on ${counted(days, 'day', 'days')}, and ${working}`;
}

/**
 * @param change how versions of the étude's file are dealt with
 * @param firstDays first day of each version
 * @returns one sentence, null when there is nothing to say
 *
 * Source: definition.
 */
export function versionsInWords(change: 'none' | 'compared' | 'apart', firstDays: readonly string[]): string | null {
  const later = firstDays.slice(1).map(dayInWords);
  const apart = change === 'apart' ? [OTHER_VERSION] : [];
  const compared = later.length === 0 ? [] : [`The étude’s file changed on ${listInWords(later)}. ${STILL_THE_SAME}`];
  const said = [...compared, ...apart].join(' ');
  return said === '' ? null : said;
}

const STILL_THE_SAME = 'Title, part, bars and notes are the same, so the takes are compared.';
const OTHER_VERSION =
  'There is another version of this étude with other bars or notes. The two are followed apart and not compared.';

/**
 * @param counted file that counts
 * @param passedOver the others
 * @param differ whether they name another player or day
 * @returns one sentence
 *
 * Source: definition.
 */
export function repeatedInWords(counted: string, passedOver: readonly string[], differ: boolean): string {
  const sameTake = `One recording has several results and counts once: ${counted} counts, ${listInWords(passedOver)} ${passedOver.length === 1 ? 'does' : 'do'} not.`;
  return differ ? `${sameTake} They name another player or day: look which is right.` : sameTake;
}

/**
 * @param versions of the programs that wrote the results
 * @returns a caution when there are several, else null
 *
 * Source: definition.
 */
export function toolVersionsInWords(versions: readonly string[]): string | null {
  if (versions.length < 2) return null;
  return `The results were written by several versions of the program (${listInWords(versions)}). A change may come from the program; review the older takes again to be sure.`;
}
