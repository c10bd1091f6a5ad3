import { dateInWords } from './dates.js';
import { numberInWords } from './numbers.js';
import { dayInWords } from './short-dates.js';
import type { Translated } from './translated.js';
import { weekSpans } from './week-spans.js';
import type { BarState, DayTakes, Gap, NoiseFacts } from './weeks-facts.js';

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const list = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
const barsIn = (numbers: readonly string[]) => `${numbers.length === 1 ? 'bar' : 'bars'} ${list(numbers)}`;

function span(first: string, last: string): string {
  if (first === last) return dateInWords(first);
  const sameYear = first.slice(0, 4) === last.slice(0, 4);
  return `${sameYear ? dayInWords(first) : dateInWords(first)} to ${dateInWords(last)}`;
}

const MOST_DAYS = 6;

/** Sentences of the progress sheet. Those that may have nothing to tell give null, or an empty list. */
export const PROGRESS_SENTENCES = {
  documentTitle: (title: string, kind: string) => `${title} – ${kind}`,
  foot: (title: string, kind: string) => `${kind}  ·  ${title}`,
  piece: (title: string, part: string) => [title, part].filter((one) => one !== '').join(', '),
  list,
  /** a measure's name inside a sentence */
  inSentence: (name: string) => name.charAt(0).toLowerCase() + name.slice(1),
  /** a change beyond noise: first the music, then the numbers */
  change: (what: string, now: string, day: string, before: string) => `${what}: ${now} (${day}: ${before}).`,
  /** the line under the title; days in order */
  facts: (players: number, takes: number, days: readonly string[]) => {
    const [first, last] = [days[0], days.at(-1)];
    const when = first === undefined || last === undefined ? [] : [span(first, last)];
    return [counted(players, 'player', 'players'), counted(takes, 'take', 'takes'), ...when].join('  ·  ');
  },
  /** bars that somebody had to fix and nobody has any more */
  mastered: (bars: readonly string[]): string | null =>
    bars.length === 0 ? null : `Mastered by everybody who had something to fix there: ${barsIn(bars)}.`,
  /** who has it on the latest day, and for whom it is only worth a listen or not judged */
  hasIt: (have: readonly string[], open: readonly string[]) => {
    const perhaps = open.length === 0 ? [] : [`${list(open)} perhaps`];
    return [...(have.length === 0 ? [] : [list(have)]), ...perhaps].join('; ');
  },
  /** which days, and how many takes */
  days: (days: readonly DayTakes[]) => {
    const [first, last] = [days[0], days.at(-1)];
    if (first === undefined || last === undefined) return 'No take that was reviewed';
    const all = days.reduce((sum, day) => sum + day.takes, 0);
    const takes = counted(all, 'take', 'takes');
    if (days.length > MOST_DAYS) return `${takes} on ${days.length} days, ${span(first.date, last.date)}`;
    return `${takes}: ${list(days.map(({ date, takes: n }) => (n > 1 ? `${dayInWords(date)} (${n})` : dayInWords(date))))}`;
  },
  /** what stands where there is no change to tell */
  noChange: (days: number, changes: number): string | null => {
    if (days === 0) return null;
    if (days === 1) return 'This is the first day. The next takes will show what moves.';
    return changes > 0 ? null : 'No number has changed by more than takes of one day differ by themselves.';
  },
  /** bars that were to fix and are free now, and those that are to fix on the latest day */
  bars: (fixed: readonly string[], open: readonly string[]): readonly string[] => [
    ...(fixed.length === 0 ? [] : [`Fixed: ${barsIn(fixed)}.`]),
    ...(open.length === 0 ? [] : [`Still to work on: ${barsIn(open)}.`]),
  ],
  /** measures that stayed as they were, as inside a sentence */
  stable: (names: readonly string[]): string | null => (names.length === 0 ? null : `Stable: ${list(names)}.`),
  /** measures that moved in between and are back where they began */
  toAndFro: (names: readonly string[]): string | null =>
    names.length === 0 ? null : `To and fro, and now where it began: ${list(names)}.`,
  /** Mondays of weeks without a take, and of all weeks with one, in order */
  missingWeeks: (missing: readonly string[], all: readonly string[]): string | null => {
    const spans = weekSpans(missing, all).map((one) =>
      typeof one === 'string' ? dayInWords(one) : `${dayInWords(one[0])} to ${dayInWords(one[1])}`,
    );
    if (spans.length === 0) return null;
    return `No take of this étude in the ${missing.length === 1 ? 'week' : 'weeks'} of ${list(spans)}.`;
  },
  /** a measure without any number, and why */
  notJudged: (name: string, reason: string) => `${name}: ${reason.replace(/\.$/, '')}.`,
  /** why takes do not count, with their days; weeks without a take are told elsewhere */
  notCounted: (gaps: readonly Gap[]): readonly string[] => {
    const daysOf = (why: Gap['why']) =>
      gaps.filter((gap) => gap.why === why).map(({ date, file }) => (date === null ? (file ?? '') : dayInWords(date)));
    const [unclear, other] = [daysOf('too-poor'), daysOf('not-this-score')];
    return [
      ...(unclear.length === 0 ? [] : [`Not counted, because it could not be heard clearly enough: ${list(unclear)}.`]),
      ...(other.length === 0 ? [] : [`Not counted, because it does not fit the part: ${list(other)}.`]),
      ...gaps.filter(({ why }) => why === 'failed').map(failed),
    ];
  },
  /** how a bar stands now */
  status: ({ status, since }: BarState) => {
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
  },
  /** how a change is told from chance. Source: Bland & Altman 1986; Weir 2005 */
  noise: ({ measures }: NoiseFacts): readonly string[] => {
    const days = Math.max(0, ...measures.map(({ noise }) => noise.fromTakes.days));
    return [
      'Nobody plays a thing twice in the same way, and no measuring is exact. So two takes differ even when nothing has changed.',
      days === 0 ? NO_REPEATS : `${counted(days, 'day', 'days')} ${REPEATS}`,
      'A difference between two days is called a change when it is larger than 1.96 times √2 times what one take varies by (Bland & Altman 1986, Weir 2005); with several takes a day, less is needed. About one in twenty differences that mean nothing is still larger than that. A change can also be a good or a bad day: listen again next week.',
    ];
  },
  /** days with several takes that a number rests on, further takes on them, and the working values */
  restsOn: (days: number, takes: number, measuring: number, playing: number) => {
    const [off, varies] = [measuring, playing].map((value) => numberInWords(value, 1));
    const working = `working values: measuring ${off}, playing ${varies}`;
    return days === 0
      ? working
      : `${counted(takes, 'repeat', 'repeats')} on ${counted(days, 'day', 'days')}, and ${working}`;
  },
  /** how versions of the étude's file are dealt with, with the first day of each */
  versions: (change: 'none' | 'compared' | 'apart', firstDays: readonly string[]): string | null => {
    const later = firstDays.slice(1).map(dayInWords);
    const compared = later.length === 0 ? [] : [`The étude’s file changed on ${list(later)}. ${STILL_THE_SAME}`];
    const said = [...compared, ...(change === 'apart' ? [OTHER_VERSION] : [])].join(' ');
    return said === '' ? null : said;
  },
  /** the file that counts, the others, and whether they name another player or day */
  repeated: (counts: string, passedOver: readonly string[], differ: boolean) => {
    const sameTake = `One recording has several results and counts once: ${counts} counts, ${list(passedOver)} ${passedOver.length === 1 ? 'does' : 'do'} not.`;
    return differ ? `${sameTake} They name another player or day: look which is right.` : sameTake;
  },
  /** folders in which numbers stand for players who can be followed */
  numbersFollowed: (folders: readonly string[]) =>
    folders.length === 1
      ? 'Numbers stand for players here; the key that review wrote says who is who.'
      : 'Numbers stand for players here; the keys that review wrote say who is who. The same number in another folder is somebody else, so the folder stands beside it.',
  /** folders in which numbers may stand for anybody */
  numbersApart: (folders: readonly string[]) =>
    `In ${list(folders)} numbers stand for names, and none comes on two days: who is who from day to day is not known, so nobody there is followed.`,
  /** versions of the programs that wrote the results */
  toolVersions: (versions: readonly string[]): string | null =>
    versions.length < 2
      ? null
      : `The results were written by several versions of the program (${list(versions)}). A change may come from the program; review the older takes again to be sure.`,
  /** the words for a figure */
  measureInWords: (name: string, unit: string, said: readonly string[], verdict: string | null) =>
    `${name}, ${unit}: ${said.join(', ')}${verdict === null ? '' : ` (${verdict})`}.`,
  dayInWords: (day: string, value: string) => `${day} ${value}`,
  weekInWords: (week: string, value: string, players: number) =>
    `week of ${week} ${value} (${counted(players, 'player', 'players')})`,
  barInWords: (bar: string, states: readonly string[]) => `Bar ${bar}: ${states.join('; ')}.`,
  stateInWords: (state: string, who: readonly string[]) => `${state} ${list(who)}`,
  storyInWords: (bar: string, what: string, days: readonly string[], status: string) =>
    `Bar ${bar}, ${what}: ${days.join(', ')}; ${status}.`,
} as const;

/** Sentences of the progress sheet, in one language. */
export type ProgressSentences = Translated<typeof PROGRESS_SENTENCES>;

const NO_REPEATS =
  'No player has several takes of one day here, so working values stand in: what the measuring itself can be off by, and what a player usually varies by. Two takes on one day, from a few players, would put real numbers in their place.';
const REPEATS =
  'with several takes of one player say how far takes lie apart when nothing was learnt between them. With few such days the numbers still lean on working values.';
const STILL_THE_SAME = 'Title, part, bars and notes are the same, so the takes are compared.';
const OTHER_VERSION =
  'There is another version of this étude with other bars or notes. The two are followed apart and not compared.';

function failed({ date, file, detail }: Gap): string {
  const when = date === null ? '' : ` of ${dayInWords(date)}`;
  return `Not counted, because it could not be read: the take${when} (${[file, detail].filter((one) => one !== null).join(': ')}).`;
}
