/** Headings, labels and captions of a take's pages. */
export const PAGE_WORDS = {
  wentWell: 'What went well',
  wholeTake: 'The whole take',
  workOn: [
    'What to work on',
    'The first thing to work on',
    'The first two things to work on',
    'The first three things to work on',
  ],
  nothing:
    'Nothing stood out clearly enough to name. Listen to the take yourself with the part in front of you. Your own ear hears more than measurements do, and so does your teacher’s.',
  worthAListen: 'worth a listen',
  measured: (value: string) => `Measured: ${value}.`,
  toPractise: (sentence: string) => `To practise: ${sentence}`,
  seconds: (seconds: number) => `${seconds} s`,
  minutes: (minutes: number, seconds: number) => `${minutes} min ${seconds} s`,
  fileAndLength: (file: string, length: string) => `${file}, ${length}`,
  documentTitle: (piece: string, who: string) => `${piece} – ${who}`,
} as const;

/** The picture of the whole take. */
export const GLANCE_WORDS = {
  heading: 'The whole take at a glance',
  loudness: 'Above: how loud you play, in dB below your loudest. Heavy lines: how loud each mark came out.',
  loudnessAlone: 'Above: how loud you play, in dB below your loudest.',
  levelRiding:
    'The recorder seems to have changed its level by itself: the curve shows the recording, not your playing.',
  tempo: 'Below: your tempo in quarter notes a minute, one point a bar. Dashed: the printed tempo.',
  tempoAlone: 'Below: your tempo in quarter notes a minute, one point a bar.',
  noTempo: (reason: string) => `Tempo was not measured: ${reason}.`,
  notHeard: (bars: string) => `Nothing was heard of ${bars}.`,
  bars: (first: string, last: string) => (first === last ? `bar ${first}` : `bars ${first} to ${last}`),
  tempoOver: (bars: string, range: { low: string; high: string } | null) =>
    range === null
      ? `Tempo over ${bars}: no bar could be measured.`
      : `Tempo over ${bars}: between ${range.low} and ${range.high} quarter notes a minute.`,
  decibels: (value: string) => `${value} dB`,
  rise: (value: string) => `${value} dB from end to end`,
  notMeasured: 'not measured',
  markIn: (mark: string, bar: string, level: string) => `${mark} in bar ${bar}: ${level}`,
  hairpinIn: (kind: 'crescendo' | 'diminuendo', bar: string, toBar: string, rise: string) =>
    `${kind} from bar ${bar} to bar ${toBar}: ${rise}`,
  loudnessOver: (bars: string, marks: readonly string[]) =>
    `Loudness over ${bars}, relative to the loudest playing. ${
      marks.length === 0 ? 'No dynamic mark stands here.' : `${marks.join('; ')}.`
    }`,
} as const;

/** The tables. */
export const TABLE_WORDS = {
  byCriterion: 'By criterion',
  weights: 'To fix: clear and worth your time. To watch: worth a listen; it may be nothing.',
  criterion: 'Criterion',
  toFix: 'To fix',
  toWatch: 'To watch',
  heard: 'What was heard',
  points: 'Points',
  pointsOf: (given: string, possible: string) => `${given} of ${possible}`,
  noPoints: (possible: string) => `– of ${possible}`,
  pointsFormula: (given: string, possible: string) =>
    `Points: ${given} of ${possible} that could be given. For each criterion they are the points your teacher set, times what was as asked for, divided by what could be measured. They support a panel and never replace one.`,
  notJudged: '–',
  everythingElse: 'Everything else, bar by bar',
  where: 'Where',
  about: 'About',
  to: 'To',
  weight: { fix: 'fix', watch: 'watch', well: 'went well' },
  withPractice: (text: string, practice: string) => `${text} To practise: ${practice}`,
  recording: 'About the recording',
  notMeasured: 'What was not measured',
} as const;

/** What may be missing from the measurements, and the line that says so. */
export const GAP_WORDS = {
  tuning: 'tuning',
  tempo: 'tempo',
  noise: 'the noise of the room',
  level: (mark: string, bar: string) => `the level under ${mark} in bar ${bar}`,
  step: (from: string, to: string, bar: string) => `the step from ${from} to ${to} in bar ${bar}`,
  hairpin: (kind: 'crescendo' | 'diminuendo', bar: string, toBar: string) =>
    bar === toBar ? `the ${kind} in bar ${bar}` : `the ${kind} in bars ${bar}–${toBar}`,
  fermata: (bar: string) => `the fermata in bar ${bar}`,
  list: (items: readonly string[]) =>
    items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`,
  line: (what: string, reason: string) => `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${reason}.`,
} as const;
