import type {
  GapWords,
  GlanceWords,
  NotReviewedHeadings,
  NotReviewedWords,
  PageWords,
  SmallPrint,
  TableWords,
} from '../shapes/page.js';
import { listed } from './lists.js';
import { install } from './missing-letters.js';
import { BEATS_A_MINUTE } from './tempo.js';

/** Which time the music comes to a bar, from the second on. */
const timeAround = (pass: number) => (pass > 1 ? ` (time ${pass})` : '');

/** Headings, labels and captions of a take's pages. */
export const PAGE: PageWords = {
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
  hearInRoom: (place) => `Hear it in the listening room: ${place}`,
  measured: (value) => `Measured: ${value}.`,
  toPractise: (sentence) => `To practise: ${sentence}`,
  seconds: (seconds) => `${seconds} s`,
  minutes: (minutes, seconds) => `${minutes} min ${seconds} s`,
  fileAndLength: (file, length) => `${file}, ${length}`,
  documentTitle: (piece, who) => `${piece} – ${who}`,
  partly: ({ stretches, played, of, repeats, restarts, ending, points }) => {
    const bars = listed(
      stretches.map(({ bar, toBar, pass }) => `${bar === toBar ? bar : `${bar}–${toBar}`}${timeAround(pass)}`),
    );
    const count = stretches.length > 1 || repeats ? ` (${played} of ${of})` : ` of ${of}`;
    const said = [
      `Bars played: ${stretches.length === 0 ? 'none' : bars}${count}${repeats ? ', repeats counted' : ''}.`,
    ];
    if (restarts > 0) said.push(`Begun again ${restarts === 1 ? 'once' : `${restarts} times`}.`);
    if (ending === 'cut-off') {
      said.unshift('The recorder cut this take off.');
      said.push(points ? 'It earns no points until a whole one is handed in.' : 'Hand in a whole one.');
    } else if (points && played < of) said.push('What was not played earns no points.');
    return said.join(' ');
  },
};

/** The picture of the whole take. Source of what ten decibels sound like: Stevens 1955. */
export const GLANCE: GlanceWords = {
  heading: 'The whole take at a glance',
  loudness: 'Above: how loud you play, in dB below your loudest (10 dB: half as loud). Heavy lines: each mark.',
  loudnessAlone: 'Above: how loud you play, in dB below your loudest (10 dB: half as loud).',
  levelRiding:
    'The recorder seems to have changed its level by itself: the curve shows the recording, not your playing.',
  tempo: (beat) => `Below: your tempo in ${BEATS_A_MINUTE[beat]}, one point a bar. Dashed: the printed tempo.`,
  tempoAlone: (beat) => `Below: your tempo in ${BEATS_A_MINUTE[beat]}, one point a bar.`,
  noTempo: (reason) => `Tempo was not measured: ${reason}.`,
  notHeard: (bars) => `Nothing was heard of ${bars}.`,
  bars: (first, last) => (first === last ? `bar ${first}` : `bars ${first} to ${last}`),
  tempoOver: (bars, range, beat) =>
    range === null
      ? `Tempo over ${bars}: no bar could be measured.`
      : `Tempo over ${bars}: between ${range.low} and ${range.high} ${BEATS_A_MINUTE[beat]}.`,
  decibels: (value) => `${value} dB`,
  rise: (value) => `${value} dB from end to end`,
  notMeasured: 'not measured',
  markIn: (mark, bar, level) => `${mark} in bar ${bar}: ${level}`,
  hairpinIn: (kind, bar, toBar, rise) => `${kind} from bar ${bar} to bar ${toBar}: ${rise}`,
  loudnessOver: (bars, marks) =>
    `Loudness over ${bars}, relative to the loudest playing. ${
      marks.length === 0 ? 'No dynamic mark stands here.' : `${marks.join('; ')}.`
    }`,
};

/** The tables. */
export const TABLE: TableWords = {
  byCriterion: 'By criterion',
  weights: 'To fix: clear and worth your time. To watch: worth a listen; it may be nothing.',
  criterion: 'Criterion',
  toFix: 'To fix',
  toWatch: 'To watch',
  heard: 'What was heard',
  points: 'Points',
  pointsOf: (given, possible) => `${given} of ${possible}`,
  noPoints: (possible) => `– of ${possible}`,
  pointsFormula: (given, possible) =>
    `Points: ${given} of ${possible} that could be given. For each criterion they are the points your teacher set, times what was as asked for, divided by what is written, except what was played but could not be measured. They support a panel and never replace one.`,
  notJudged: '–',
  notPlayed: 'not played',
  everythingElse: 'Everything else, bar by bar',
  more: (count) =>
    `${count} more ${count === 1 ? 'place is' : 'places are'} not shown here. Your teacher finds ${count === 1 ? 'it' : 'them'} in the JSON file beside this page.`,
  where: 'Where',
  about: 'About',
  to: 'To',
  weight: { fix: 'fix', watch: 'watch', well: 'went well' },
  withPractice: (text, practice) => `${text} To practise: ${practice}`,
  recording: 'About the recording',
  notMeasured: 'What was not measured',
};

/** What may be missing from the measurements, and the line that says so. */
export const GAP: GapWords = {
  tuning: 'tuning',
  tempo: 'tempo',
  noise: 'the noise of the room',
  level: (mark, bar) => `the level under ${mark} in bar ${bar}`,
  step: (from, to, bar) => `the step from ${from} to ${to} in bar ${bar}`,
  hairpin: (kind, bar, toBar) => (bar === toBar ? `the ${kind} in bar ${bar}` : `the ${kind} in bars ${bar}–${toBar}`),
  fermata: (bar) => `the fermata in bar ${bar}`,
  list: listed,
  line: (what, reason) => `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${reason}.`,
};

/** The page for a take that was not reviewed, by the reason. */
export const NOT_REVIEWED: Readonly<Record<'not-this-score' | 'too-poor', NotReviewedWords>> = {
  'not-this-score': {
    heading: 'This take does not fit the part',
    what: 'There is playing on this recording, but it could not be matched to the part. So nothing is said about the playing.',
    tries: [
      'Check that the right file was sent in: another étude, a scale or a warm-up may have its name.',
      'Check that the part is the one for your instrument. A part in another key or clef does not fit.',
      'If the take stops and starts many times, record it once more from the beginning to the end.',
      'Play a little slower if that helps. A slow take from beginning to end can be reviewed well.',
    ],
  },
  'too-poor': {
    heading: 'The playing could not be heard',
    what: 'The recording does not let the playing be heard clearly enough. So nothing is said about the playing.',
    tries: [
      'Listen to the file first. If you cannot follow the melody yourself, record it once more.',
      'Put the recorder about two metres away, in front of you and a little to the side, in a quiet room.',
      'Switch off noise suppression and automatic level where the recorder has them.',
      'Make a short test with your loudest bar. It should not distort, and your softest bar should stand clear of the room.',
    ],
  },
};

/** Headings of that page. */
export const NOT_REVIEWED_HEADINGS: NotReviewedHeadings = { tries: 'What to try', recording: 'About the recording' };

const PANEL =
  'These results support a panel; they never replace one. The recording stays on this machine. Your school’s and your country’s rules on keeping recordings of minors apply.';

/** The cautions at the end. */
export const SMALL_PRINT: SmallPrint = {
  practice:
    'Practise with care. Tired lips, fingers and breath need rest before they hurt. Stop when something hurts, when you are dizzy from breathing too much, or when your ears ring after loud playing, and ask your teacher or a doctor.',
  panel: PANEL,
  teacher: PANEL,
  lettersMissing: (packages) =>
    `Words in [brackets] stand for letters that this page’s type does not hold. ${install(packages)}The result file beside this page holds the full text.`,
};
