import { weekSpans } from '../rules/week-spans.js';
import { MOST_DAYS } from '../rules/weeks.js';
import type { WeeksSentences } from '../shapes/weeks.js';
import type { Gap } from '../shapes/weeks-facts.js';
import { barsIn } from './bars-in.js';
import { DATES } from './dates.js';
import { listed } from './lists.js';
import { NUMBERS } from './numbers.js';

const { date: dateInWords, day: dayInWords } = DATES;
const { whole } = NUMBERS;
const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

function span(first: string, last: string): string {
  if (first === last) return dateInWords(first);
  const sameYear = first.slice(0, 4) === last.slice(0, 4);
  return `${sameYear ? dayInWords(first) : dateInWords(first)} to ${dateInWords(last)}`;
}

/** Sentences of the progress sheet. */
export const WEEKS_SENTENCES: WeeksSentences = {
  documentTitle: (title, kind) => `${title} – ${kind}`,
  foot: (title, kind) => `${kind}  ·  ${title}`,
  sheetOf: (sheet, of, first, last) => `Sheet ${sheet} of ${of}: ${first} to ${last}`,
  etude: (title, part) => [title, part].filter((one) => one !== '').join(', '),
  list: listed,
  inSentence: (name) => name.charAt(0).toLowerCase() + name.slice(1),
  change: (what, now, day, before) => `${what}: ${now} (${day}: ${before}).`,
  facts: (players, takes, days) => {
    const [first, last] = [days[0], days.at(-1)];
    const when = first === undefined || last === undefined ? [] : [span(first, last)];
    return [counted(players, 'player', 'players'), counted(takes, 'take', 'takes'), ...when].join('  ·  ');
  },
  mastered: (bars) =>
    bars.length === 0 ? null : `Mastered by everybody who had something to fix there: ${barsIn(bars)}.`,
  hasIt: (have, open) => {
    const perhaps = open.length === 0 ? [] : [`${listed(open)} perhaps`];
    return [...(have.length === 0 ? [] : [listed(have)]), ...perhaps].join('; ');
  },
  days: (days) => {
    const [first, last] = [days[0], days.at(-1)];
    if (first === undefined || last === undefined) return 'No take that was reviewed';
    const all = days.reduce((sum, day) => sum + day.takes, 0);
    const takes = counted(all, 'take', 'takes');
    if (days.length > MOST_DAYS) return `${takes} on ${days.length} days, ${span(first.date, last.date)}`;
    return `${takes}: ${listed(days.map(({ date, takes: n }) => (n > 1 ? `${dayInWords(date)} (${n})` : dayInWords(date))))}`;
  },
  stable: (names) => (names.length === 0 ? null : `As on the first day: ${listed(names)}.`),
  toAndFro: (names) =>
    names.length === 0 ? null : `Different in between, and now as on the first day: ${listed(names)}.`,
  missingWeeks: (missing, all) => {
    const spans = weekSpans(missing, all).map((one) =>
      typeof one === 'string' ? dayInWords(one) : `${dayInWords(one[0])} to ${dayInWords(one[1])}`,
    );
    if (spans.length === 0) return null;
    return `No take of this étude in the ${missing.length === 1 ? 'week' : 'weeks'} of ${listed(spans)}.`;
  },
  notJudged: (name, reason) => `${name}: ${reason.replace(/\.$/, '')}.`,
  notCounted: (gaps) => {
    const daysOf = (why: Gap['why']) =>
      gaps.filter((gap) => gap.why === why).map(({ date, file }) => (date === null ? (file ?? '') : dayInWords(date)));
    const [unclear, other] = [daysOf('too-poor'), daysOf('not-this-score')];
    return [
      ...(unclear.length === 0
        ? []
        : [`Not counted, because it could not be heard clearly enough: ${listed(unclear)}.`]),
      ...(other.length === 0 ? [] : [`Not counted, because it does not fit the part: ${listed(other)}.`]),
      ...gaps.filter(({ why }) => why === 'failed').map(failed),
    ];
  },
  besideSlurred: ({ date, sag, softer }) => {
    const [more, less] = [sag?.beside === 'more', sag?.beside === 'less'];
    const sags = `between tongued notes the tone sags by ${whole(sag?.db ?? 0)} dB`;
    const told = [
      ...(more ? [sags] : less ? ['the tone goes on between tongued notes'] : []),
      ...(softer?.beside === 'more' ? [`tongued notes are ${whole(softer.db)} dB softer`] : []),
    ];
    if (told.length === 0) return null;
    const costs = more || softer?.beside === 'more';
    return `The same bars slurred, then tongued (${dayInWords(date)}): ${listed(told)}.${costs ? ` ${AIR_GOES_ON}` : ''}`;
  },
  status: ({ status, since }) => {
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
  noise: ({ measures }) => {
    const days = Math.max(0, ...measures.map(({ noise }) => noise.fromTakes.days));
    return [
      'Nobody plays a thing twice in the same way, and no measuring is exact. So two takes differ even when nothing has changed.',
      days === 0 ? NO_REPEATS : `${counted(days, 'day', 'days')} ${REPEATS}`,
      'A difference between two days is called a change when it is larger than 1.96 times √2 times what one take varies by (Bland & Altman 1986, Weir 2005); with several takes a day, less is needed. About one in twenty differences that mean nothing is still larger than that. A change can also be a good or a bad day: listen again next week.',
    ];
  },
  restsOn: (days, takes, measuring, playing) => {
    const [off, varies] = [measuring, playing].map((value) => NUMBERS.number(value, 1));
    const working = `working values: measuring ${off}, playing ${varies}`;
    return days === 0
      ? working
      : `${counted(takes, 'repeat', 'repeats')} on ${counted(days, 'day', 'days')}, and ${working}`;
  },
  versions: (change, firstDays) => {
    const later = firstDays.slice(1).map(dayInWords);
    const compared = later.length === 0 ? [] : [`The étude’s file changed on ${listed(later)}. ${STILL_THE_SAME}`];
    const said = [...compared, ...(change === 'apart' ? [OTHER_VERSION] : [])].join(' ');
    return said === '' ? null : said;
  },
  repeated: (counts, passedOver, differ) => {
    const sameTake = `One recording has several results and counts once: ${counts} counts, ${listed(passedOver)} ${passedOver.length === 1 ? 'does' : 'do'} not.`;
    return differ ? `${sameTake} They name another player or day: look which is right.` : sameTake;
  },
  numbersFollowed: (folders) =>
    folders.length === 1
      ? 'Numbers stand for players here; the key that review wrote says who is who.'
      : 'Numbers stand for players here; the keys that review wrote say who is who. The same number in another folder is somebody else, so the folder stands beside it.',
  numbersApart: (folders) =>
    `In ${listed(folders)} numbers stand for names, and none comes on two days: who is who from day to day is not known, so nobody there is followed.`,
  toolVersions: (versions) =>
    versions.length < 2
      ? null
      : `The results were written by several versions of the program (${listed(versions)}). A change may come from the program; review the older takes again to be sure.`,
  measureInWords: (name, unit, said, verdict) =>
    `${name}, ${unit}: ${said.join(', ')}${verdict === null ? '' : ` (${verdict})`}.`,
  dayInWords: (day, value) => `${day} ${value}`,
  weekInWords: (week, value, players) => `week of ${week} ${value} (${counted(players, 'player', 'players')})`,
  barInWords: (bar, states) => `Bar ${bar}: ${states.join('; ')}.`,
  stateInWords: (state, who) => `${state} ${listed(who)}`,
  storyInWords: (bar, what, days, status) => `Bar ${bar}, ${what}: ${days.join(', ')}; ${status}.`,
};

const AIR_GOES_ON = 'Keep the air going as in the slur; the tongue only touches it.';

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
