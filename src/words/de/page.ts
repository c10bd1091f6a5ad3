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
import { AT_BEATS_A_MINUTE, BEATS_A_MINUTE } from './tempo.js';

/** Which time the music comes to a bar, from the second on. */
const timeAround = (pass: number) => (pass > 1 ? ` (${pass}. Mal)` : '');

/** Headings, labels and captions of a take's pages. */
export const PAGE: PageWords = {
  wentWell: 'Was gelungen ist',
  wholeTake: 'Im Ganzen',
  workOn: [
    'Woran du üben kannst',
    'Das Erste zum Üben',
    'Die ersten zwei Dinge zum Üben',
    'Die ersten drei Dinge zum Üben',
  ],
  nothing:
    'Nichts war so deutlich, dass es hier stehen müsste. Hör dir die Aufnahme mit den Noten selbst an. Deine Ohren hören mehr, als man messen kann, und die deiner Lehrerin oder deines Lehrers auch.',
  worthAListen: 'hör selbst hin',
  hearInRoom: (place) => `Im Hörraum anhören: ${place}`,
  measured: (value) => `Gemessen: ${value}.`,
  toPractise: (sentence) => `So übst du: ${sentence}`,
  seconds: (seconds) => `${seconds} s`,
  minutes: (minutes, seconds) => `${minutes} min ${seconds} s`,
  fileAndLength: (file, length) => `${file}, ${length}`,
  documentTitle: (piece, who) => `${piece} – ${who}`,
  partly: ({ stretches, played, of, repeats, restarts, ending, points }) => {
    const bars = listed(
      stretches.map(({ bar, toBar, pass }) => `${bar === toBar ? bar : `${bar}–${toBar}`}${timeAround(pass)}`),
    );
    const count = stretches.length > 1 || repeats ? ` (${played} von ${of})` : ` von ${of}`;
    const said = [
      `Gespielte Takte: ${stretches.length === 0 ? 'keine' : bars}${count}${repeats ? ', Wiederholungen mitgezählt' : ''}.`,
    ];
    if (restarts > 0) said.push(`${restarts === 1 ? 'Einmal' : `${restarts}-mal`} neu begonnen.`);
    if (ending === 'cut-off') {
      said.unshift('Der Rekorder hat diese Aufnahme abgeschnitten.');
      said.push(points ? 'Punkte gibt es erst, wenn eine ganze Aufnahme da ist.' : 'Gib eine ganze Aufnahme ab.');
    } else if (points && played < of) said.push('Was nicht gespielt wurde, bringt keine Punkte.');
    return said.join(' ');
  },
};

/** The picture of the whole take. Source of what ten decibels sound like: Stevens 1955. */
export const GLANCE: GlanceWords = {
  heading: 'Die ganze Aufnahme auf einen Blick',
  loudness: 'Oben: deine Lautstärke in dB unter dem Lautesten (10 dB: halb so laut). Dicke Linien: jedes Zeichen.',
  loudnessAlone: 'Oben: deine Lautstärke in dB unter dem Lautesten (10 dB: halb so laut).',
  levelRiding: 'Der Rekorder hat den Pegel wohl selbst verändert: Die Kurve zeigt die Aufnahme, nicht dein Spiel.',
  tempo: (beat) =>
    `Unten: dein Tempo in ${AT_BEATS_A_MINUTE[beat]}, ein Punkt je Takt. Gestrichelt: das Tempo, das dasteht.`,
  tempoAlone: (beat) => `Unten: dein Tempo in ${AT_BEATS_A_MINUTE[beat]}, ein Punkt je Takt.`,
  noTempo: (reason) => `Das Tempo wurde nicht gemessen: ${reason}.`,
  notHeard: (bars) => `Von ${bars} war nichts zu hören.`,
  bars: (first, last) => (first === last ? `Takt ${first}` : `Takt ${first} bis ${last}`),
  tempoOver: (bars, range, beat) =>
    range === null
      ? `Tempo über ${bars}: Kein Takt konnte gemessen werden.`
      : `Tempo über ${bars}: zwischen ${range.low} und ${range.high} ${BEATS_A_MINUTE[beat]}.`,
  decibels: (value) => `${value} dB`,
  rise: (value) => `${value} dB vom Anfang bis zum Ende`,
  notMeasured: 'nicht gemessen',
  markIn: (mark, bar, level) => `${mark} in Takt ${bar}: ${level}`,
  hairpinIn: (kind, bar, toBar, rise) => `${WEDGES[kind]} von Takt ${bar} bis Takt ${toBar}: ${rise}`,
  loudnessOver: (bars, marks) =>
    `Lautstärke über ${bars}, gemessen am lautesten Spiel. ${
      marks.length === 0 ? 'Hier steht kein Zeichen.' : `${marks.join('; ')}.`
    }`,
};

const WEDGES = { crescendo: 'Crescendo', diminuendo: 'Diminuendo' } as const;

/** The tables. */
export const TABLE: TableWords = {
  byCriterion: 'Nach Bereichen',
  weights: 'Üben: deutlich und deine Zeit wert. Hinhören: Hör genau zu; vielleicht ist es nichts.',
  criterion: 'Bereich',
  toFix: 'Üben',
  toWatch: 'Hinhören',
  heard: 'Was zu hören war',
  points: 'Punkte',
  pointsOf: (given, possible) => `${given} von ${possible}`,
  noPoints: (possible) => `– von ${possible}`,
  pointsFormula: (given, possible) =>
    `Punkte: ${given} von ${possible} möglichen. In jedem Bereich sind es die Punkte aus dem Auftrag, mal die Stellen, die so waren wie verlangt, geteilt durch alle Stellen, außer denen, die gespielt, aber nicht gemessen werden konnten. Sie helfen einer Jury und ersetzen sie nie.`,
  notJudged: '–',
  notPlayed: 'nicht gespielt',
  everythingElse: 'Alles andere, Takt für Takt',
  more: (count) =>
    `${count === 1 ? 'Eine weitere Stelle steht' : `${count} weitere Stellen stehen`} nicht hier, sondern nur in der JSON-Datei neben dieser Seite.`,
  where: 'Wo',
  about: 'Bereich',
  to: 'Was tun',
  weight: { fix: 'üben', watch: 'hinhören', well: 'gelungen' },
  withPractice: (text, practice) => `${text} So übst du: ${practice}`,
  recording: 'Zur Aufnahme',
  notMeasured: 'Was nicht gemessen wurde',
};

const wedgeIn = (kind: 'crescendo' | 'diminuendo', bars: string) => `das ${WEDGES[kind]} in ${bars}`;

/** What may be missing from the measurements, and the line that says so. */
export const GAP: GapWords = {
  tuning: 'die Stimmung',
  tempo: 'das Tempo',
  noise: 'das Rauschen des Raums',
  level: (mark, bar) => `die Lautstärke unter ${mark} in Takt ${bar}`,
  step: (from, to, bar) => `der Wechsel von ${from} zu ${to} in Takt ${bar}`,
  hairpin: (kind, bar, toBar) => wedgeIn(kind, bar === toBar ? `Takt ${bar}` : `den Takten ${bar}–${toBar}`),
  fermata: (bar) => `die Fermate in Takt ${bar}`,
  list: listed,
  line: (what, reason) => `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${reason}.`,
};

/** The page for a take that was not reviewed, by the reason. */
export const NOT_REVIEWED: Readonly<Record<'not-this-score' | 'too-poor', NotReviewedWords>> = {
  'not-this-score': {
    heading: 'Diese Aufnahme passt nicht zu den Noten',
    what: 'In der Aufnahme wird gespielt, aber es passt nicht zu diesen Noten. Darum steht hier nichts über das Spiel.',
    tries: [
      'Schau nach, ob die richtige Datei geschickt wurde: Eine andere Etüde, eine Tonleiter oder das Einspielen kann ihren Namen tragen.',
      'Schau nach, ob es die Noten für dein Instrument sind. Noten in einer anderen Tonart oder einem anderen Schlüssel passen nicht.',
      'Wenn das Spiel oft anhält und neu beginnt, nimm noch einmal vom Anfang bis zum Ende auf.',
      'Spiel etwas langsamer, wenn das hilft. Eine langsame Aufnahme ohne Halt ist gut zu beurteilen.',
    ],
  },
  'too-poor': {
    heading: 'Das Spiel war nicht zu hören',
    what: 'In der Aufnahme ist das Spiel nicht deutlich genug zu hören. Darum steht hier nichts über das Spiel.',
    tries: [
      'Hör dir zuerst die Datei an. Wenn du der Melodie selbst nicht folgen kannst, nimm noch einmal auf.',
      'Stell den Rekorder etwa zwei Meter vor dir auf, ein wenig zur Seite, in einem stillen Raum.',
      'Schalte am Rekorder aus, was Rauschen dämpft oder den Pegel selbst regelt.',
      'Nimm zur Probe deinen lautesten Takt auf. Er soll nicht verzerrt klingen, und dein leisester soll sich klar vom Raum abheben.',
    ],
  },
};

/** Headings of that page. */
export const NOT_REVIEWED_HEADINGS: NotReviewedHeadings = {
  tries: 'Was du versuchen kannst',
  recording: 'Zur Aufnahme',
};

/** The cautions at the end. */
export const SMALL_PRINT: SmallPrint = {
  practice:
    'Übe mit Bedacht. Müde Lippen, Finger und Lungen brauchen Ruhe, bevor sie schmerzen. Hör auf, wenn dir etwas weh tut, wenn dir vom vielen Atmen schwindlig wird oder wenn die Ohren nach lautem Spiel klingen, und frag deine Lehrerin, deinen Lehrer oder einen Arzt.',
  panel:
    'Diese Ergebnisse helfen einer Jury; sie ersetzen sie nie. Die Aufnahme bleibt auf diesem Computer. Für Aufnahmen von Minderjährigen gelten die Regeln deiner Schule und deines Landes.',
  teacher:
    'Diese Ergebnisse helfen einer Jury; sie ersetzen sie nie. Die Aufnahmen bleiben auf diesem Computer. Für Aufnahmen von Minderjährigen gelten die Regeln der Schule und des Landes.',
  lettersMissing: (packages) =>
    `Wörter in [Klammern] stehen für Schriftzeichen, die diese Seite nicht hat. ${install(packages)}In der Datei mit dem Ergebnis neben dieser Seite steht der ganze Text.`,
};
