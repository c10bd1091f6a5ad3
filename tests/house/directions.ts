import type { ICruiseOptions, IFlattenedRuleSet, IRegularForbiddenRuleType } from 'dependency-cruiser';

/**
 * Who may import whom. The rooms read as the pipeline: a room imports only from rooms above it in this list, and only
 * through their door `index.ts`. Type imports count. `rooms.test.ts` beside this file runs these rules on `src`.
 */
const ROOMS = [
  'base',
  'standards',
  'simd',
  'decode',
  'encode',
  'second-ear',
  'features',
  'score',
  'brief',
  'align',
  'measure',
  'judge',
  'study',
  'words',
  'page',
  'engrave',
  'result',
  'weeks',
  'report',
  'review',
  'batch',
  'demo',
  'cli',
];

/** Pairs that the order would allow but that must not know each other, with the reason. */
const STRANGERS: readonly (readonly [room: string, others: string, reason: string])[] = [
  ['simd', 'base|standards', 'Inner loops know numbers alone, whatever they stand for.'],
  ['encode', 'standards', 'What can be heard is the recording, whatever is thought of it.'],
  ['second-ear', 'standards|decode|encode', 'A second opinion shares nothing with the first: it knows base alone.'],
  ['score', 'decode|encode|features', 'The reading of the part and the listening never meet: align introduces them.'],
  ['study', 'align|measure|judge', 'A study sheet is written before anyone plays: it knows no take.'],
  [
    'page',
    'standards|decode|encode|features|score|brief|align|measure|judge|study|words',
    'A page is text, lines and areas: it knows no take and has no words of its own.',
  ],
  [
    'engrave',
    'standards|decode|encode|features|score|brief|align|measure|judge|study|words',
    'Engraving turns MusicXML into items of a page, whatever is then said about its notes.',
  ],
  ['weeks', 'page|engrave', 'What changed over weeks is decided before anything is drawn.'],
  ['result', 'page|engrave', 'A document of results is data, however it may be drawn.'],
  ['batch', 'demo', 'The demo is only another source of takes: the review must not know it.'],
  [
    'demo',
    'encode|features|brief|align|measure|judge|study|words|page|engrave|result|weeks|report|review|batch',
    'The demo plays; it must not know how it is listened to.',
  ],
];

/** npm packages and the only rooms that may import them. A package that is not named here may be imported nowhere. */
const PACKAGES: readonly (readonly [pattern: string, rooms: string, reason: string])[] = [
  ['fast-xml-parser', 'score|engrave', 'Score reads the part; engrave reads back what the engraver draws.'],
  ['verovio', 'engrave', 'Only engrave engraves.'],
  ['fflate', 'score', 'Only score opens compressed MusicXML.'],
  ['yaml', 'brief', 'The page written by a teacher is read there.'],
  ['zod', 'result|weeks|batch', 'Documents and records are defined there.'],
  ['node-web-audio-api', 'decode', 'Only decode opens recordings, in a process of its own.'],
  ['mediabunny', 'decode', 'Only decode takes recordings out of their containers.'],
  ['opus-decoder', 'decode', 'Only decode opens recordings.'],
  ['opusscript', 'encode', 'Only encode compresses recordings.'],
  ['@audio/decode-amr', 'decode', 'Only decode opens recordings.'],
  ['essentia.js', 'second-ear', 'Only the second ear asks another engine.'],
  ['pdfkit', 'page', 'Only page draws.'],
  ['@expo-google-fonts/source-serif-4', 'page', 'Only page sets type.'],
  ['@vexflow-fonts/bravura', 'page', 'Only page sets musical signs.'],
  ['@cantoo/pdf-lib', 'page', 'Only page gathers PDFs.'],
  ['fontkit', 'page', 'Only page sets type.'],
  ['bidi-js', 'page', 'Only page knows in which direction letters are written.'],
  ['@fontsource-variable/.*', 'page', 'Only page sets type.'],
  ['csv-stringify', 'result', 'Only result writes tables.'],
  ['csv-parse', 'batch', 'Only batch reads rosters and keys.'],
  ['commander', 'cli', 'Only cli reads the command line.'],
];

const room = (names: string): string => `^src/(${names})/`;
const named = (pattern: string): string => `(^|/)node_modules/(@types/)?${pattern}(/|$)`;
const nodes = (names: string): string => `^(node:)?(${names})(/promises)?$`;
const forbid = (
  name: string,
  from: IRegularForbiddenRuleType['from'],
  to: IRegularForbiddenRuleType['to'],
  comment: string,
): IRegularForbiddenRuleType => ({ name, severity: 'error', comment, from, to });

const DIRECTIONS = ROOMS.slice(0, -1).map((name, place) =>
  forbid(
    `${name}-only-uses-rooms-above-it`,
    { path: room(name) },
    { path: room(ROOMS.slice(place + 1).join('|')) },
    'The rooms are a pipeline. An import against its direction makes two rooms one.',
  ),
);

const DOORS = [
  forbid(
    'only-through-the-door',
    { path: '^src/([^/]+)/' },
    { path: '^src/[^/]+/', pathNot: ['^src/$1/', '^src/[^/]+/index\\.ts$'] },
    'What a room does not export from its index.ts is free to change.',
  ),
  forbid(
    'every-file-lives-in-a-known-room',
    {},
    { path: '^src/', pathNot: room(ROOMS.join('|')) },
    'A new room must be given its place in the order above.',
  ),
  ...STRANGERS.map(([name, others, reason]) =>
    forbid(
      `${name}-is-a-stranger-to-${others.replaceAll('|', '-')}`,
      { path: room(name) },
      { path: room(others) },
      reason,
    ),
  ),
];

/** The documents that are drawn, each in a folder of `report`, and the folders that all of them may use. */
const SHEETS = 'take|listen|section|study|weeks|handout';
const SHARED = 'bars|curves|excerpt';

const REPORT = [
  forbid(
    'report-sheets-do-not-know-each-other',
    { path: `^src/report/(${SHEETS})/` },
    { path: `^src/report/(${SHEETS})/`, pathNot: '^src/report/$1/' },
    'What two sheets need stands in a folder of its own, so that one can be changed without looking at the others.',
  ),
  forbid(
    'report-shared-knows-no-sheet',
    { path: `^src/report/((${SHARED})/|[^/]+\\.ts$)`, pathNot: '^src/report/index\\.ts$' },
    { path: `^src/report/(${SHEETS})/` },
    'What all sheets use must not know which of them uses it.',
  ),
];

const HOMES = [
  ...PACKAGES.map(([pattern, rooms, reason]) =>
    forbid(
      `package-${pattern.replaceAll(/[^a-z0-9-]/g, '')}-stays-in-${rooms.replaceAll('|', '-')}`,
      { path: '^src/', pathNot: room(rooms) },
      { path: named(pattern) },
      reason,
    ),
  ),
  forbid(
    'no-package-without-a-home',
    { path: '^src/' },
    {
      dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown'],
      pathNot: [...PACKAGES.map(([pattern]) => named(pattern)), named('node')],
    },
    'Every package has a line above that says which room may use it, and why.',
  ),
  forbid(
    'no-development-package-at-run-time',
    { path: '^src/' },
    { dependencyTypes: ['npm-dev'], pathNot: 'node_modules/@types/' },
    'A package used by src is a dependency; only type declarations may be a development dependency.',
  ),
];

const OUTSIDE = [
  forbid(
    'only-batch-touches-the-disk',
    { path: '^src/', pathNot: room('batch') },
    { path: nodes('fs') },
    'All other rooms are functions of their arguments, so they can be tested and repeated.',
  ),
  forbid(
    'no-network',
    { path: '^src/' },
    { path: nodes('http|https|http2|net|tls|dgram|dns') },
    'Recordings of minors stay on the machine: nothing here may open a connection.',
  ),
  forbid(
    'no-other-program',
    { path: '^src/', pathNot: '^src/decode/apart/decoder\\.ts$' },
    { path: nodes('child_process') },
    'What the program needs comes with it; nothing else on the machine is run. Recordings are decoded by a process of ours.',
  ),
];

const SOUND = [
  forbid(
    'no-circle',
    { path: '^src/' },
    { circular: true },
    'Files that import each other in a circle cannot be read one after the other.',
  ),
  forbid(
    'resolvable',
    { path: '^src/' },
    { couldNotResolve: true },
    'An import that leads nowhere is invisible to every other rule.',
  ),
];

/** What no import may do, each with its reason. */
export const RULES: IFlattenedRuleSet = {
  forbidden: [...DIRECTIONS, ...DOORS, ...REPORT, ...HOMES, ...OUTSIDE, ...SOUND],
};

/** How imports are found: before compilation, so that type imports count. */
export const OPTIONS: ICruiseOptions = {
  tsPreCompilationDeps: true,
  tsConfig: { fileName: 'tsconfig.json' },
  enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  doNotFollow: { path: 'node_modules' },
  exclude: { path: '^(dist|tests)/' },
};
