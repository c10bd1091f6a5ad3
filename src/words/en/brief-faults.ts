import type { FailureTable, FaultFacts, Sayings } from '../../base/index.js';

/** Where a value of a brief stands. */
type Place = Pick<FaultFacts<'brief-reference'>, 'line' | 'field'>;
type Found = Pick<FaultFacts<'brief-no-text'>, 'found' | 'quoted'>;

const at = ({ line, field }: Place): string => `line ${line}: ${field === '' ? 'the page' : field}`;

const FOUND = { empty: 'empty', fields: 'a group of fields', list: 'a list', unknown: 'nothing known' } as const;
const shown = ({ found, quoted }: Found): string => (found === 'text' ? `"${quoted}"` : FOUND[found]);

const guess = (meant: string): string => (meant === '' ? '' : ` (did you mean ${meant}?)`);

/** What is wrong with a teacher's brief, in English. */
export const BRIEF_FAULTS_IN_WORDS = {
  'brief-too-long': ({ letters, most }) => `the brief has ${letters} letters; at most ${most} are read`,
  'brief-too-deep': () => 'the brief nests its fields too deep; three levels are needed',
  'brief-not-yaml': ({ line, what, said }) => {
    const fault = {
      'second-page': 'a second page begins here',
      'field-twice': 'this field stands there twice',
      other: said,
    };
    return `line ${line}: this is no YAML: ${fault[what]}; fields are written as name: value`;
  },
  'brief-no-such-field': ({ line, field, name, meant, allowed }) =>
    `line ${line}: there is no field "${name}" in ${field === '' ? 'this page' : field}${guess(meant)}; the fields are: ${allowed.join(', ')}`,
  'brief-reference': (facts) => `${at(facts)} is a reference to another place; write the value itself`,
  'brief-no-fields': (facts) => `${at(facts)} is ${shown(facts)}; fields are needed: ${facts.allowed.join(', ')}`,
  'brief-no-list': (facts) => `${at(facts)} is ${shown(facts)}; a list is needed, each line with a dash`,
  'brief-long-list': (facts) => `${at(facts)} is too long; at most ${facts.most} entries are read`,
  'brief-no-number': (facts) =>
    `${at(facts)} is ${shown(facts)}; a number from ${facts.lowest} to ${facts.highest}${facts.orOff ? ', or off,' : ''} is needed`,
  'brief-no-text': (facts) => `${at(facts)} is ${shown(facts)}; a text is needed`,
  'brief-long-text': (facts) => `${at(facts)} is too long; at most ${facts.most} letters are read`,
  'brief-other-word': (facts) =>
    `${at(facts)} is ${shown(facts)}${guess(facts.meant)}; one of these is needed: ${facts.allowed.join(', ')}`,
  'brief-no-such-bar': (facts) => `${at(facts)} is "${facts.bar}"; the part has bars ${facts.first} to ${facts.last}`,
  'brief-half-a-place': (facts) => `${at(facts)} lacks a bar or a beat; bar and beat are needed`,
  'brief-no-note-there': ({ bar, beat, beats, ...place }) => {
    const there =
      beats.length === 0 ? `no note begins in bar ${bar}` : `notes of bar ${bar} begin on ${beats.join(', ')}`;
    return `${at(place)} is ${beat}; ${there}`;
  },
  'brief-no-such-pass': ({ bar, pass, times, ...place }) =>
    `${at(place)} is ${pass}; bar ${bar} is played ${times === 1 ? 'once' : `${times} times`}`,
  'brief-no-place': (facts) => `${at(facts)} names no place; after is needed, with bar and beat`,
  'brief-place-twice': (facts) => `${at(facts)} names a place twice; one breath a place is needed`,
  'brief-no-bar': (facts) => `${at(facts)} names no bar; bar is needed`,
  'brief-bars-turned': (facts) =>
    `${at(facts)} is ${facts.bar}, before bar ${facts.first}; a bar from ${facts.first} on is needed`,
  'brief-tempo-twice': (facts) =>
    `${at(facts)} stands beside tempo.quarterBpm; give either quarterBpm, or beat and bpm`,
  'brief-tempo-without-beat': (facts) => `${at(facts)} stands without a beat; tempo.beat is needed, e.g. quarter`,
  'brief-tempo-without-number': (facts) => `${at(facts)} stands without a number; tempo.bpm is needed`,
  'brief-range-without-tempo': (facts) =>
    `${at(facts)} stands without a tempo; the part marks none, so tempo.quarterBpm is needed`,
  'brief-above-tempo': (facts) => `${at(facts)} is ${facts.value}; at most the tempo itself, ${facts.tempo}, is needed`,
  'brief-below-tempo': (facts) =>
    `${at(facts)} is ${facts.value}; at least the tempo itself, ${facts.tempo}, is needed`,
  'brief-no-fermata-there': ({ bar, bars, ...place }) => {
    const there = bars.length === 0 ? 'the part has no fermata' : `fermatas stand in bar ${bars.join(', ')}`;
    return `${at(place)} is ${bar}, where no fermata stands; ${there}`;
  },
  'brief-least-above-most': (facts) => `${at(facts)} is ${facts.least}; at most mostTimes, ${facts.most}, is needed`,
  'brief-most-below-least': (facts) => `${at(facts)} is ${facts.most}; at least leastTimes, ${facts.least}, is needed`,
  'brief-contrast-without-level': (facts) => `${at(facts)} says no level; leastDb is needed`,
  'brief-contrast-twice': (facts) => `${at(facts)} stands beside a bar; give either bar, or from and to`,
  'brief-contrast-nowhere': (facts) => `${at(facts)} names no place; give either bar, or from and to`,
  'brief-marks-of-none': (facts) => `${at(facts)} names a mark; the part has no dynamic marks`,
  'brief-no-mark-there': ({ bar, bars, ...place }) => {
    const there = bars.length === 0 ? 'the part has no dynamic marks' : `marks stand in bar ${bars.join(', ')}`;
    return `${at(place)} is ${bar}, where no dynamic mark stands; ${there}`;
  },
  'brief-fix-below-watch': (facts) =>
    `${at(facts)} is ${facts.fixCents}; at least watchCents, ${facts.watchCents}, is needed`,
} satisfies Partial<Sayings<FailureTable>>;
