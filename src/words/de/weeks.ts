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
const takes = (count: number) => (count === 1 ? '1 Aufnahme' : `${count} Aufnahmen`);
const people = (count: number) => (count === 1 ? '1 Person' : `${count} Personen`);

function span(first: string, last: string): string {
  if (first === last) return dateInWords(first);
  const sameYear = first.slice(0, 4) === last.slice(0, 4);
  return `${sameYear ? dayInWords(first) : dateInWords(first)} bis ${dateInWords(last)}`;
}

/** Sentences of the progress sheet. */
export const WEEKS_SENTENCES: WeeksSentences = {
  documentTitle: (title, kind) => `${title} – ${kind}`,
  foot: (title, kind) => `${kind}  ·  ${title}`,
  sheetOf: (sheet, of, first, last) => `Blatt ${sheet} von ${of}: ${first} bis ${last}`,
  etude: (title, part) => [title, part].filter((one) => one !== '').join(', '),
  list: listed,
  inSentence: (name) => name,
  change: (what, now, day, before) => `${what}: ${now} (${day}: ${before}).`,
  facts: (players, count, days) => {
    const [first, last] = [days[0], days.at(-1)];
    const when = first === undefined || last === undefined ? [] : [span(first, last)];
    return [people(players), takes(count), ...when].join('  ·  ');
  },
  mastered: (bars) =>
    bars.length === 0 ? null : `Geschafft von allen, die dort etwas zu üben hatten: ${barsIn(bars)}.`,
  hasIt: (have, open) => {
    const perhaps = open.length === 0 ? [] : [`vielleicht ${listed(open)}`];
    return [...(have.length === 0 ? [] : [listed(have)]), ...perhaps].join('; ');
  },
  days: (days) => {
    const [first, last] = [days[0], days.at(-1)];
    if (first === undefined || last === undefined) return 'Keine Aufnahme, die beurteilt wurde';
    const all = takes(days.reduce((sum, day) => sum + day.takes, 0));
    if (days.length > MOST_DAYS) return `${all} an ${days.length} Tagen, ${span(first.date, last.date)}`;
    return `${all}: ${listed(days.map(({ date, takes: n }) => (n > 1 ? `${dayInWords(date)} (${n})` : dayInWords(date))))}`;
  },
  stable: (names) => (names.length === 0 ? null : `Wie am ersten Tag: ${listed(names)}.`),
  toAndFro: (names) =>
    names.length === 0 ? null : `Zwischendurch anders, jetzt wieder wie am ersten Tag: ${listed(names)}.`,
  missingWeeks: (missing, all) => {
    const spans = weekSpans(missing, all).map((one) =>
      typeof one === 'string'
        ? `vom ${dayInWords(one)}`
        : `vom ${dayInWords(one[0])} bis zu der vom ${dayInWords(one[1])}`,
    );
    if (spans.length === 0) return null;
    return `Keine Aufnahme dieser Etüde in ${missing.length === 1 ? 'der Woche' : 'den Wochen'} ${listed(spans)}.`;
  },
  notJudged: (name, reason) => `${name}: ${reason.replace(/\.$/, '')}.`,
  notCounted: (gaps) => {
    const daysOf = (why: Gap['why']) =>
      gaps.filter((gap) => gap.why === why).map(({ date, file }) => (date === null ? (file ?? '') : dayInWords(date)));
    const [unclear, other] = [daysOf('too-poor'), daysOf('not-this-score')];
    return [
      ...(unclear.length === 0 ? [] : [`Nicht gezählt, weil nicht deutlich genug zu hören: ${listed(unclear)}.`]),
      ...(other.length === 0 ? [] : [`Nicht gezählt, weil nicht zu den Noten passend: ${listed(other)}.`]),
      ...gaps.filter(({ why }) => why === 'failed').map(failed),
    ];
  },
  besideSlurred: ({ date, sag, softer }) => {
    const [more, less] = [sag?.beside === 'more', sag?.beside === 'less'];
    const sags = `zwischen gestoßenen Tönen sackt der Klang um ${whole(sag?.db ?? 0)} dB ab`;
    const told = [
      ...(more ? [sags] : less ? ['zwischen gestoßenen Tönen geht der Klang weiter'] : []),
      ...(softer?.beside === 'more' ? [`gestoßene Töne sind um ${whole(softer.db)} dB leiser`] : []),
    ];
    if (told.length === 0) return null;
    const costs = more || softer?.beside === 'more';
    return `Dieselben Takte gebunden, dann gestoßen (${dayInWords(date)}): ${listed(told)}.${costs ? ` ${AIR_GOES_ON}` : ''}`;
  },
  status: ({ status, since }) => {
    const day = since === null ? '' : dayInWords(since);
    return {
      fixed: `erledigt seit ${day}`,
      eased: `nur zum Hinhören seit ${day}`,
      returning: `war erledigt, wieder da am ${day}`,
      still: 'noch da',
      new: `neu am ${day}`,
      grown: `zu üben seit ${day}, davor nur zum Hinhören`,
      'not-judged': 'am letzten Tag nicht beurteilt',
      seen: 'zu üben',
    }[status];
  },
  noise: ({ measures }) => {
    const days = Math.max(0, ...measures.map(({ noise }) => noise.fromTakes.days));
    return [
      'Niemand spielt etwas zweimal gleich, und kein Messen ist genau. Zwei Aufnahmen sind also verschieden, auch wenn sich nichts geändert hat.',
      days === 0 ? NO_REPEATS : `${days === 1 ? 'An 1 Tag' : `An ${days} Tagen`} ${REPEATS}`,
      'Ein Unterschied zwischen zwei Tagen heißt Änderung, wenn er größer ist als 1,96 mal √2 mal das, um was eine Aufnahme schwankt (Bland & Altman 1986, Weir 2005); bei mehreren Aufnahmen am Tag reicht weniger. Etwa einer von zwanzig Unterschieden, die nichts bedeuten, ist trotzdem größer. Eine Änderung kann auch ein guter oder ein schlechter Tag sein: nächste Woche noch einmal hinhören.',
    ];
  },
  restsOn: (days, repeats, measuring, playing) => {
    const [off, varies] = [measuring, playing].map((value) => NUMBERS.number(value, 1));
    const working = `Arbeitswerte: Messen ${off}, Spielen ${varies}`;
    if (days === 0) return working;
    const again = repeats === 1 ? '1 Wiederholung' : `${repeats} Wiederholungen`;
    return `${again} an ${days === 1 ? '1 Tag' : `${days} Tagen`}, dazu ${working}`;
  },
  versions: (change, firstDays) => {
    const later = firstDays.slice(1).map(dayInWords);
    const compared =
      later.length === 0 ? [] : [`Die Datei der Etüde hat sich am ${listed(later)} geändert. ${THE_SAME}`];
    const said = [...compared, ...(change === 'apart' ? [OTHER_VERSION] : [])].join(' ');
    return said === '' ? null : said;
  },
  repeated: (counts, passedOver, differ) => {
    const once = `Eine Aufnahme hat mehrere Ergebnisse und zählt einmal: Es gilt ${counts}, nicht ${listed(passedOver)}.`;
    return differ ? `${once} Name oder Tag sind dort verschieden: nachsehen, was stimmt.` : once;
  },
  numbersFollowed: (folders) =>
    folders.length === 1
      ? 'Hier stehen Nummern für Namen; wer wer ist, sagt der Schlüssel, den review geschrieben hat.'
      : 'Hier stehen Nummern für Namen; wer wer ist, sagen die Schlüssel, die review geschrieben hat. Dieselbe Nummer ist in einem anderen Ordner jemand anderes, darum steht der Ordner dabei.',
  numbersApart: (folders) =>
    `In ${listed(folders)} stehen Nummern für Namen, und keine kommt an zwei Tagen vor: Wer an welchem Tag wer ist, ist nicht bekannt, darum geht dort kein Vergleich über die Tage.`,
  toolVersions: (versions) =>
    versions.length < 2
      ? null
      : `Die Ergebnisse stammen von mehreren Versionen des Programms (${listed(versions)}). Eine Änderung kann vom Programm kommen; sicher ist, wer die älteren Aufnahmen noch einmal auswertet.`,
  measureInWords: (name, unit, said, verdict) =>
    `${name}, ${unit}: ${said.join(', ')}${verdict === null ? '' : ` (${verdict})`}.`,
  dayInWords: (day, value) => `${day} ${value}`,
  weekInWords: (week, value, players) => `Woche vom ${week} ${value} (${people(players)})`,
  barInWords: (bar, states) => `Takt ${bar}: ${states.join('; ')}.`,
  stateInWords: (state, who) => `${state} ${listed(who)}`,
  storyInWords: (bar, what, days, status) => `Takt ${bar}, ${what}: ${days.join(', ')}; ${status}.`,
};

const AIR_GOES_ON = 'Lass die Luft strömen wie in der Bindung; die Zunge berührt sie nur.';

const NO_REPEATS =
  'Hier hat niemand mehrere Aufnahmen von einem Tag. Darum gelten Arbeitswerte: wie ungenau das Messen selbst ist und wie sehr jemand beim Spielen meist schwankt. Zwei Aufnahmen am selben Tag von einigen aus dem Register brächten echte Zahlen.';
const REPEATS =
  'gibt es mehrere Aufnahmen einer Person. Sie zeigen, wie weit Aufnahmen auseinanderliegen, wenn dazwischen nichts gelernt wurde. Sind es wenige solche Tage, stützen sich die Zahlen noch auf Arbeitswerte.';
const THE_SAME = 'Titel, Stimme, Takte und Noten sind gleich, darum werden die Aufnahmen verglichen.';
const OTHER_VERSION =
  'Von dieser Etüde gibt es eine andere Fassung mit anderen Takten oder Noten. Beide stehen für sich und werden nicht verglichen.';

function failed({ date, file, detail }: Gap): string {
  const when = date === null ? '' : ` vom ${dayInWords(date)}`;
  const what = [file, detail].filter((one) => one !== null).join(': ');
  return `Nicht gezählt, weil nicht zu lesen: die Aufnahme${when} (${what.replace(/\.$/, '')}).`;
}
