import type { FailureTable, FaultFacts, Sayings } from '../../base/index.js';
import { NUMBERS } from './numbers.js';

/** Where a value of a brief stands. */
type Place = Pick<FaultFacts<'brief-reference'>, 'line' | 'field'>;
type Found = Pick<FaultFacts<'brief-no-text'>, 'found' | 'quoted'>;

const at = ({ line, field }: Place): string => `Zeile ${line}: ${field === '' ? 'Die Seite' : field}`;

const FOUND = {
  empty: 'leer',
  fields: 'eine Gruppe von Feldern',
  list: 'eine Liste',
  unknown: 'nichts Bekanntes',
} as const;
const shown = ({ found, quoted }: Found): string => (found === 'text' ? `„${quoted}“` : FOUND[found]);

const guess = (meant: string): string => (meant === '' ? '' : ` (gemeint ist vielleicht ${meant})`);

/** What is wrong with a teacher's brief, in German. */
export const BRIEF_FAULTS_IN_WORDS = {
  'brief-too-long': ({ letters, most }) => `Der Auftrag hat ${letters} Zeichen; gelesen werden höchstens ${most}.`,
  'brief-too-deep': () => 'Der Auftrag schachtelt seine Felder zu tief; drei Stufen genügen.',
  'brief-not-yaml': ({ line, what, said }) => {
    const fault = {
      'second-page': 'Hier beginnt eine zweite Seite',
      'field-twice': 'Dieses Feld steht zweimal da',
      other: said,
    };
    return `Zeile ${line}: Das ist kein YAML: ${fault[what]}; Felder werden als name: value geschrieben.`;
  },
  'brief-no-such-field': ({ line, field, name, meant, allowed }) =>
    `Zeile ${line}: Ein Feld „${name}“ gibt es ${field === '' ? 'auf dieser Seite' : `in ${field}`} nicht${guess(meant)}; es gibt: ${allowed.join(', ')}.`,
  'brief-reference': (facts) => `${at(facts)} ist ein Verweis auf eine andere Stelle; den Wert selbst hinschreiben.`,
  'brief-no-fields': (facts) => `${at(facts)} ist ${shown(facts)}; nötig sind Felder: ${facts.allowed.join(', ')}.`,
  'brief-no-list': (facts) => `${at(facts)} ist ${shown(facts)}; nötig ist eine Liste, jede Zeile mit Strich.`,
  'brief-long-list': (facts) => `${at(facts)} ist zu lang; gelesen werden höchstens ${facts.most} Einträge.`,
  'brief-no-number': (facts) =>
    `${at(facts)} ist ${shown(facts)}; nötig ist eine Zahl von ${NUMBERS.exact(facts.lowest)} bis ${NUMBERS.exact(facts.highest)}${facts.orOff ? ' oder off' : ''}.`,
  'brief-no-text': (facts) => `${at(facts)} ist ${shown(facts)}; nötig ist ein Text.`,
  'brief-long-text': (facts) => `${at(facts)} ist zu lang; gelesen werden höchstens ${facts.most} Zeichen.`,
  'brief-other-word': (facts) =>
    `${at(facts)} ist ${shown(facts)}${guess(facts.meant)}; nötig ist eines von diesen: ${facts.allowed.join(', ')}.`,
  'brief-no-such-bar': (facts) =>
    `${at(facts)} ist „${facts.bar}“; die Stimme hat die Takte ${facts.first} bis ${facts.last}.`,
  'brief-half-a-place': (facts) => `${at(facts)} nennt keinen Takt oder keinen Schlag; nötig sind bar und beat.`,
  'brief-no-note-there': ({ bar, beat, beats, ...place }) => {
    const there =
      beats.length === 0
        ? `in Takt ${bar} beginnt keine Note`
        : `die Noten von Takt ${bar} beginnen auf ${beats.join(', ')}`;
    return `${at(place)} ist ${NUMBERS.exact(beat)}; ${there}.`;
  },
  'brief-no-such-pass': ({ bar, pass, times, ...place }) =>
    `${at(place)} ist ${pass}; Takt ${bar} wird ${times === 1 ? 'einmal' : `${times}-mal`} gespielt.`,
  'brief-no-place': (facts) => `${at(facts)} nennt keine Stelle; nötig ist after, mit bar und beat.`,
  'brief-place-twice': (facts) => `${at(facts)} nennt eine Stelle zweimal; je Stelle ein Atemzeichen.`,
  'brief-no-bar': (facts) => `${at(facts)} nennt keinen Takt; nötig ist bar.`,
  'brief-bars-turned': (facts) =>
    `${at(facts)} ist ${facts.bar} und liegt vor Takt ${facts.first}; nötig ist ein Takt ab ${facts.first}.`,
  'brief-tempo-twice': (facts) =>
    `${at(facts)} steht neben tempo.quarterBpm; entweder quarterBpm angeben, oder beat und bpm.`,
  'brief-tempo-without-beat': (facts) => `${at(facts)} steht ohne Schlag da; nötig ist tempo.beat, etwa quarter.`,
  'brief-tempo-without-number': (facts) => `${at(facts)} steht ohne Zahl da; nötig ist tempo.bpm.`,
  'brief-range-without-tempo': (facts) =>
    `${at(facts)} steht ohne Tempo da; die Stimme nennt keines, darum ist tempo.quarterBpm nötig.`,
  'brief-above-tempo': (facts) =>
    `${at(facts)} ist ${NUMBERS.exact(facts.value)}; höchstens das Tempo selbst, ${NUMBERS.exact(facts.tempo)}, ist möglich.`,
  'brief-below-tempo': (facts) =>
    `${at(facts)} ist ${NUMBERS.exact(facts.value)}; mindestens das Tempo selbst, ${NUMBERS.exact(facts.tempo)}, ist nötig.`,
  'brief-no-fermata-there': ({ bar, bars, ...place }) => {
    const there = bars.length === 0 ? 'die Stimme hat keine Fermate' : `Fermaten stehen in Takt ${bars.join(', ')}`;
    return `${at(place)} ist ${bar}, wo keine Fermate steht; ${there}.`;
  },
  'brief-least-above-most': (facts) =>
    `${at(facts)} ist ${NUMBERS.exact(facts.least)}; höchstens mostTimes, ${NUMBERS.exact(facts.most)}, ist möglich.`,
  'brief-most-below-least': (facts) =>
    `${at(facts)} ist ${NUMBERS.exact(facts.most)}; mindestens leastTimes, ${NUMBERS.exact(facts.least)}, ist nötig.`,
  'brief-contrast-without-level': (facts) => `${at(facts)} nennt keine Größe; nötig ist leastDb.`,
  'brief-contrast-twice': (facts) => `${at(facts)} steht neben einem Takt; entweder bar angeben, oder from und to.`,
  'brief-contrast-nowhere': (facts) => `${at(facts)} nennt keine Stelle; entweder bar angeben, oder from und to.`,
  'brief-marks-of-none': (facts) => `${at(facts)} nennt ein Lautstärkezeichen; die Stimme hat keine.`,
  'brief-no-mark-there': ({ bar, bars, ...place }) => {
    const there = bars.length === 0 ? 'die Stimme hat keine' : `es gibt sie in Takt ${bars.join(', ')}`;
    return `${at(place)} ist ${bar}, wo kein Lautstärkezeichen steht; ${there}.`;
  },
  'brief-fix-below-watch': (facts) =>
    `${at(facts)} ist ${NUMBERS.exact(facts.fixCents)}; mindestens watchCents, ${NUMBERS.exact(facts.watchCents)}, ist nötig.`,
} satisfies Partial<Sayings<FailureTable>>;
