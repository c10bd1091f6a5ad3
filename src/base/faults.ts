import type { CodeArguments, Coded, FactShape, FactsOf } from './coded.js';
import { RECORDING_FAULTS } from './recording-faults.js';

/**
 * Kinds of what can be wrong with a user's input, stable across versions: a contract for scripts, which find them as `code`
 * beside a failure in the documents.
 */
export type InputErrorCode =
  | 'no-such-file'
  | 'not-readable'
  | 'empty-file'
  | 'not-a-wav'
  | 'wav-damaged'
  | 'wav-unsupported'
  | 'not-a-recording'
  | 'sound-not-read'
  | 'recording-damaged'
  | 'recording-too-short'
  | 'recording-too-long'
  | 'sound-library-missing'
  | 'decoder-died'
  | 'decoder-too-slow'
  | 'decoder-too-large'
  | 'not-musicxml'
  | 'score-refused'
  | 'score-without-notes'
  | 'no-takes'
  | 'changed-while-read'
  | 'bad-roster'
  | 'cannot-write'
  | 'bad-brief'
  | 'bad-result'
  | 'no-results'
  | 'bad-option';

type FaultTable<Kind extends string> = Readonly<
  Record<string, readonly [kind: Kind, facts: Readonly<Record<string, FactShape>>]>
>;

/** Where in a brief: the line from 1, and the field's name, empty for the page itself. */
const PLACE = { line: 'number', field: 'text' } as const;
/** What stands there: a quoted text, or something that is none. */
const FOUND = { found: ['empty', 'fields', 'list', 'text', 'unknown'], quoted: 'text' } as const;

/** Why the disk does not write. */
const WRITING_FAULTS = [
  'not-allowed',
  'read-only',
  'full',
  'full-for-you',
  'too-large',
  'file-in-the-way',
  'folder-in-the-way',
  'no-folder',
  'long-name',
  'link-in-circle',
  'files-open',
  'other',
] as const;

/**
 * Everything a user can put right: its kind, and the facts that are told along with it. An empty text stands for what is not
 * known. What each is in words stands in the room `words`.
 */
export const FAULTS = {
  ...RECORDING_FAULTS,

  // scores
  'score-empty': ['empty-file', {}],
  'score-no-xml': ['not-musicxml', {}],
  'score-too-large': ['score-refused', { megabytes: 'number' }],
  'score-grows': ['score-refused', { ratio: 'number' }],
  'score-zip-without-score': ['not-musicxml', {}],
  'score-zip-names-nothing': ['not-musicxml', {}],
  'score-zip-damaged': ['not-musicxml', {}],
  'score-other-document': ['not-musicxml', { root: 'text' }],
  'score-not-well-formed': ['not-musicxml', { line: 'number', said: 'text' }],
  'score-without-element': ['not-musicxml', {}],
  'score-unsafe-name': ['score-refused', {}],
  'score-nests-deep': ['score-refused', { deepest: 'number' }],
  'score-xml-unread': ['not-musicxml', { said: 'text' }],
  'score-defines-types': ['score-refused', {}],
  'score-without-part': ['score-without-notes', {}],
  'part-without-notes': ['score-without-notes', {}],
  'part-not-there': ['bad-option', { wanted: 'text', parts: 'texts' }],
  'voice-not-there': ['bad-option', { wanted: 'text', voices: 'texts' }],
  'bar-too-long': ['score-refused', { bar: 'text', quarters: 'number', most: 'number' }],
  'note-beyond-instruments': ['score-refused', { bar: 'text', where: ['lower', 'higher'] }],
  'too-many-notes': ['score-refused', { most: 'number' }],

  // briefs
  'brief-too-long': ['bad-brief', { letters: 'number', most: 'number' }],
  'brief-too-deep': ['bad-brief', {}],
  'brief-not-yaml': ['bad-brief', { line: 'number', what: ['second-page', 'field-twice', 'other'], said: 'text' }],
  'brief-no-such-field': ['bad-brief', { ...PLACE, name: 'text', meant: 'text', allowed: 'texts' }],
  'brief-reference': ['bad-brief', PLACE],
  'brief-no-fields': ['bad-brief', { ...PLACE, ...FOUND, allowed: 'texts' }],
  'brief-no-list': ['bad-brief', { ...PLACE, ...FOUND }],
  'brief-long-list': ['bad-brief', { ...PLACE, most: 'number' }],
  'brief-no-number': ['bad-brief', { ...PLACE, ...FOUND, lowest: 'number', highest: 'number', orOff: 'yes-or-no' }],
  'brief-no-text': ['bad-brief', { ...PLACE, ...FOUND }],
  'brief-long-text': ['bad-brief', { ...PLACE, most: 'number' }],
  'brief-other-word': ['bad-brief', { ...PLACE, ...FOUND, meant: 'text', allowed: 'texts' }],
  'brief-no-such-bar': ['bad-brief', { ...PLACE, bar: 'text', first: 'text', last: 'text' }],
  'brief-half-a-place': ['bad-brief', PLACE],
  'brief-no-note-there': ['bad-brief', { ...PLACE, bar: 'text', beat: 'number', beats: 'texts' }],
  'brief-no-such-pass': ['bad-brief', { ...PLACE, bar: 'text', pass: 'number', times: 'number' }],
  'brief-no-place': ['bad-brief', PLACE],
  'brief-place-twice': ['bad-brief', PLACE],
  'brief-no-bar': ['bad-brief', PLACE],
  'brief-bars-turned': ['bad-brief', { ...PLACE, bar: 'text', first: 'text' }],
  'brief-tempo-twice': ['bad-brief', PLACE],
  'brief-tempo-without-beat': ['bad-brief', PLACE],
  'brief-tempo-without-number': ['bad-brief', PLACE],
  'brief-range-without-tempo': ['bad-brief', PLACE],
  'brief-above-tempo': ['bad-brief', { ...PLACE, value: 'number', tempo: 'number' }],
  'brief-below-tempo': ['bad-brief', { ...PLACE, value: 'number', tempo: 'number' }],
  'brief-no-fermata-there': ['bad-brief', { ...PLACE, bar: 'text', bars: 'texts' }],
  'brief-least-above-most': ['bad-brief', { ...PLACE, least: 'number', most: 'number' }],
  'brief-most-below-least': ['bad-brief', { ...PLACE, least: 'number', most: 'number' }],
  'brief-contrast-without-level': ['bad-brief', PLACE],
  'brief-contrast-twice': ['bad-brief', PLACE],
  'brief-contrast-nowhere': ['bad-brief', PLACE],
  'brief-marks-of-none': ['bad-brief', PLACE],
  'brief-no-mark-there': ['bad-brief', { ...PLACE, bar: 'text', bars: 'texts' }],
  'brief-fix-below-watch': ['bad-brief', { ...PLACE, fixCents: 'number', watchCents: 'number' }],

  // rosters and names of files
  'roster-no-utf8': ['bad-roster', {}],
  'roster-empty': ['bad-roster', { line: 'number', columns: 'texts' }],
  'roster-many-cells': ['bad-roster', { line: 'number', cells: 'number', heads: 'number' }],
  'roster-long-cell': ['bad-roster', { line: 'number', most: 'number' }],
  'roster-quotes': ['bad-roster', { line: 'number' }],
  'roster-head-empty': ['bad-roster', { line: 'number', place: 'number' }],
  'roster-head-missing': ['bad-roster', { line: 'number', columns: 'texts' }],
  'roster-head-twice': ['bad-roster', { line: 'number' }],
  'roster-no-file': ['bad-roster', { line: 'number' }],
  'roster-no-day': ['bad-roster', { line: 'number' }],
  'roster-days-unclear': ['bad-roster', { line: 'number', days: 'texts', orders: 'texts' }],
  'roster-several-takes': ['bad-roster', { line: 'number', takes: 'number' }],
  'roster-take-twice': ['bad-roster', { line: 'number', earlierLine: 'number' }],
  'roster-no-such-part': ['bad-roster', { line: 'number', scores: 'texts' }],
  // marks of a panel
  'marks-heads': ['bad-roster', { columns: 'texts' }],
  'marks-line': ['bad-roster', { line: 'number', criteria: 'texts' }],
  'names-no-such-field': ['bad-option', { pattern: 'text', field: 'text', fields: 'texts' }],
  'names-stray-sign': ['bad-option', { pattern: 'text', fields: 'texts' }],
  'names-field-twice': ['bad-option', { pattern: 'text' }],
  'names-no-field': ['bad-option', { pattern: 'text', fields: 'texts' }],
  'names-fields-touch': ['bad-option', { pattern: 'text' }],

  // what is asked for
  'bad-words': ['bad-option', { said: 'text' }],
  'no-score-given': ['bad-option', {}],
  'brief-beside-scores': ['bad-option', { ending: 'text' }],
  'scores-no-folder': ['bad-option', {}],
  'scores-folder-empty': ['no-such-file', {}],
  /** inputs as they were given, none where names must not be shown */
  'no-recording-found': ['no-takes', { inputs: 'texts' }],
  'no-such-takes': ['no-takes', { inputs: 'texts' }],
  'folder-without-results': ['no-takes', {}],
  'take-without-pages': ['not-readable', {}],
  'nothing-to-hand-out': ['no-takes', {}],
  'results-are-blind': ['bad-option', {}],
  'results-show-names': ['bad-option', {}],
  'sheet-over-result': ['bad-option', {}],
  'sheet-over-source': ['bad-option', {}],

  // the disk
  'file-missing': ['no-such-file', {}],
  'name-not-utf8': ['not-readable', {}],
  'file-forbidden': ['not-readable', {}],
  'link-in-circle': ['not-readable', {}],
  'files-open': ['not-readable', {}],
  'folder-for-file': ['not-readable', {}],
  'no-ordinary-file': ['not-readable', {}],
  'file-too-large': ['not-readable', { megabytes: 'number', most: 'number' }],
  'file-changed': ['changed-while-read', {}],
  /** `said` is the system's name for a fault that has none here */
  'cannot-write': ['cannot-write', { why: WRITING_FAULTS, said: 'text' }],
  'folder-leads-away': ['cannot-write', { folder: 'text' }],
  'key-changed': ['not-readable', { file: 'text' }],

  // results that are there already
  'result-unread': ['not-readable', {}],
  'result-of-others': ['bad-result', {}],
  'result-cut-off': ['bad-result', {}],
  /** `version` is empty where none is named, `tool` where nobody says who wrote it */
  'result-of-other-version': ['bad-result', { version: 'text', tool: 'text', readVersion: 'number' }],
  /** `place` is empty for the document itself */
  'result-against-schema': ['bad-result', { place: 'text' }],
  'no-result-found': ['no-results', { inputs: 'texts' }],
  'no-result-readable': ['no-results', { file: 'text', failure: 'code', more: 'number' }],
  'results-without-points': ['no-results', {}],
  'nobody-to-follow': ['no-results', { folders: 'texts' }],
} as const satisfies FaultTable<InputErrorCode>;

/** What can go wrong with a take beside what its user can put right. */
const LOSSES = {
  'took-too-long': ['took-too-long', {}],
  'too-much-memory': ['too-much-memory', {}],
  'worker-died': ['worker-died', {}],
  'internal-error': ['internal-error', { said: 'text' }],
  /** an earlier program told it in a sentence of its own */
  'told-before': ['internal-error', { said: 'text' }],
} as const satisfies FaultTable<string>;

type FactsIn<T extends FaultTable<string>> = { readonly [K in keyof T]: T[K][1] };

/** Every fault and loss with its facts. */
export type FailureTable = FactsIn<typeof FAULTS> & FactsIn<typeof LOSSES>;

/** Something a user can put right. */
export type Fault = Coded<FactsIn<typeof FAULTS>>;

/** Why something could not be done. */
export type Failure = Coded<FailureTable>;

/** A fault's code and, where it has some, its facts. */
export type FaultArguments = CodeArguments<FactsIn<typeof FAULTS>>;

const factsIn = <T extends FaultTable<string>>(table: T): FactsIn<T> =>
  Object.fromEntries(Object.entries(table).map(([code, [, facts]]) => [code, facts])) as FactsIn<T>;

const KINDS = { ...LOSSES, ...FAULTS };

/** Codes of all faults and losses with the facts that belong to them. */
export const FAILURES: FailureTable = { ...factsIn(FAULTS), ...factsIn(LOSSES) };

/** The facts of one fault. */
export type FaultFacts<C extends FaultCode> = FactsOf<(typeof FAULTS)[C][1]>;

/** A code of the table of faults. */
export type FaultCode = keyof typeof FAULTS;

/**
 * @param fault a fault or a loss
 * @returns its kind, as scripts know it
 */
export function kindOf({ code }: Failure): string {
  return KINDS[code][0];
}
