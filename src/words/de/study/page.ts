import type { RangeEnd } from '../../../study/index.js';
import { quarterBars } from '../../rules/quarter-bars.js';
import type { HairpinFacts, StudyPageWords } from '../../shapes/study.js';
import { install } from '../missing-letters.js';
import { NUMBERS } from '../numbers.js';
import { AT_BEATS_A_MINUTE, beatsIn } from '../tempo.js';
import { pitchName, STUDY_PLACES } from './places.js';

const { bars: barsInWords, barList } = STUDY_PLACES;
const inSeconds = (seconds: number): string => {
  const whole = NUMBERS.number(seconds, 0);
  return `${whole} ${whole === '1' ? 'Sekunde' : 'Sekunden'}`;
};

/** Headings, labels and captions of a study sheet. */
export const STUDY_PAGE: StudyPageWords = {
  kind: 'Übeblatt',
  untitled: 'Etüde',
  documentTitle: (title) => `${title} – Übeblatt`,
  length: ({ bars, seconds, quarterBpm, lowestQuarterBpm, highestQuarterBpm, beat, marked }) => {
    const bpm = NUMBERS.number(beatsIn(quarterBpm, beat), 1);
    const [from, to] = [lowestQuarterBpm, highestQuarterBpm].map((one) => NUMBERS.number(beatsIn(one, beat), 0));
    const speed = marked
      ? `bei ${bpm} ${AT_BEATS_A_MINUTE[beat]}; ${from} bis ${to} sind in Ordnung`
      : `bei angenommenen ${bpm} ${AT_BEATS_A_MINUTE[beat]}: Es steht kein Tempo da`;
    return `${bars} ${bars === 1 ? 'Takt' : 'Takte'}, etwa ${lengthInWords(seconds)} ${speed}.`;
  },
  range: (lowest, highest, pickUp) =>
    `Tonumfang, wie notiert: von ${endOf(lowest)} bis ${endOf(highest)}.${pickUp ? ' Takt 0 ist der Auftakt.' : ''}`,
  demands: 'Was im Auftrag steht',
  watch: { heading: 'Darauf sollst du besonders achten', noReason: 'Schau dir diese Stelle genau an.' },
  etude: {
    heading: 'Die Etüde mit Bleistift',
    introduction:
      'Ringe: Noten, die man leicht falsch liest; mehr dazu unten. Über den Noten: worauf du achtest, wo du atmest und wie lange du hältst. Darunter: wo laut und leise sofort verschieden sind und wo eine Gabel ankommt.',
    breath: { full: 'voll atmen', quick: 'atmen' },
    hold: (seconds) => `${NUMBERS.number(seconds, 1)} s halten`,
    watch: 'Achtung',
    step: { louder: 'viel lauter', softer: 'viel leiser' },
    arrive: 'hier ankommen',
    alternative: (bars, marks) =>
      `${bars} in Noten, wie sie für dich dastehen. ${marks.length === 0 ? 'Hier steht nichts mit Bleistift.' : `Mit Bleistift: ${marks.join('; ')}.`}`,
    mark: (place, what) => `${place}: ${what}`,
    ring: (names) => `ein Ring um ${names}`,
  },
  traps: {
    heading: 'Noten, die man leicht falsch liest',
    none: 'Hier gibt es keine Vorzeichen, die man leicht falsch liest. Lies die Vorzeichen der Tonart trotzdem.',
    printedOnly: 'Kein Vorzeichen führt hier in die Irre. Diese stehen da, und du musst sie rechtzeitig sehen.',
    introduction:
      'Ein Vorzeichen gilt bis zum Taktstrich, nur auf seiner Linie oder in seinem Zwischenraum. Danach gelten wieder die Vorzeichen der Tonart. Ringe zeigen die Noten, an die du denken musst, gestrichelte Ringe die Vorzeichen, die in die Irre führen.',
    inBar: (bar, reason) => `Takt ${bar}, ${reason.replace(/^Nach/, 'nach')}`,
    alternative: (bars, notes) =>
      `${bars} in Noten, mit Ringen um ${notes.map(({ names, bar }) => `${names} in Takt ${bar}`).join(', ')}.`,
    also: 'Außerdem',
    toSee: 'Was du rechtzeitig sehen musst',
    bar: (bar) => `Takt ${bar}`,
    more: (count) => (count === 1 ? 'Noch eine Note dieser Art.' : `Noch ${count} Noten dieser Art.`),
  },
  breaths: {
    heading: 'Wo du atmest',
    introduction:
      'Die Zeiten gelten beim Tempo von oben. Wer langsamer übt, muss öfter atmen: Tu es dort, wo ein Bogen endet.',
    none: (seconds) =>
      `Hier steht kein Atemzeichen, und keine Pause lässt Zeit zum Atmen; das Stück dauert etwa ${inSeconds(seconds)}. Such mit deiner Lehrerin oder deinem Lehrer Stellen aus und schreib sie mit Bleistift ein.`,
    heads: {
      after: 'Nach der Note',
      breath: 'Atem',
      before: 'Davor gespielt',
      time: 'Zeit dafür',
      source: 'Woher die Zeit kommt',
    },
    kind: { full: 'voll', quick: 'kurz' },
    seconds: (seconds) => `${NUMBERS.number(seconds, 1)} s`,
    underATenth: 'unter 0,1 s',
    source: {
      rest: 'aus der Pause',
      'end-of-note': 'vom Ende der Note davor',
      fermata: 'nach der Fermate; nimm sie dir in Ruhe',
    },
    hardlyAny: 'fast keine: Lass die Note früh los',
    more: (count) => (count === 1 ? 'Noch eine Stelle.' : `Noch ${count} Stellen.`),
    long: (bar, toBar, seconds) =>
      `${bar === toBar ? `Takt ${bar} dauert` : `Die Takte ${bar}–${toBar} dauern`} ${inSeconds(seconds)} auf einen Atem. Atme vorher gut ein und spar von Anfang an Luft. Wenn sie nicht reicht, frag deine Lehrerin oder deinen Lehrer, wo du noch atmen kannst.`,
    moreLong: (count) =>
      count === 1
        ? 'Noch eine Stelle ist so lang für einen Atem.'
        : `Noch ${count} Stellen sind so lang für einen Atem.`,
  },
  dynamics: {
    heading: 'Wie laut',
    none: 'Hier steht nicht, wie laut du spielen sollst. Frag deine Lehrerin oder deinen Lehrer, wie laut es anfängt und wohin es führt.',
    introduction:
      'Die Linie zeigt die Lautstärke über die Takte. Kommas sind Atemzeichen, die großen für volles Atmen.',
    alternative: (bar, toBar, marks) => {
      const said = marks.map(({ mark, bar: at }) => `${mark} in Takt ${at}`).join(', ');
      return `Plan der Lautstärke für ${barsInWords(bar, toBar)}: ${said === '' ? 'kein Zeichen' : said}.`;
    },
    contrasts: (pairs) =>
      `Deutlich verschieden, so dass man sofort zwei Stufen hört: ${pairs
        .map(({ from, to, bars }) => `von ${from} zu ${to} in ${barList(bars)}`)
        .join('; ')}.`,
    hairpin,
    hairpinAgain: (facts) => `Bei der Wiederholung: ${hairpin(facts)}`,
    moreHairpins: (count) => `Die Linie oben zeigt noch ${count}.`,
  },
  tonguing: {
    heading: 'Stoßen und binden',
    introduction: 'Wo das Muster wechselt, sag es laut, bevor du es spielst.',
    dotUnderSlur: ' Ein Punkt auf der letzten Note unter einem Bogen heißt: früh loslassen, nicht neu anstoßen.',
    head: 'Muster',
    alternative: (bars, pattern) => `${bars}, in Noten, wie sie für dich dastehen. ${pattern}.`,
    more: (patterns) =>
      patterns === 1 ? 'Ein weiteres Muster steht in den Noten.' : `${patterns} weitere Muster stehen in den Noten.`,
  },
  entries: {
    heading: 'Einsatz nach einer Pause',
    introduction: 'Auch eine Pause wird gespielt: Zähl sie in kleinen Werten bis ganz zum Ende.',
    head: 'So zählst du',
  },
  fermatas: {
    one: 'Die Fermate',
    several: 'Fermaten',
    introduction: (usual) =>
      `${usual ? 'Etwa doppelt so lang ist üblich.' : 'Wie lang, steht im Auftrag.'} Hör dem Ton zu, während du ihn hältst.`,
    head: 'Wie lang',
  },
  tempo: {
    heading: 'Wechsel im Tempo',
    introduction: 'Mach dir klar, wie schnell jeder davon ist, bevor du anfängst.',
    head: 'Was geschieht',
  },
  where: 'Wo',
  andMore: 'Und mehr',
  morePlaces: (count) =>
    count === 1 ? 'Noch eine Stelle; such sie selbst.' : `Noch ${count} Stellen; such sie selbst.`,
  practice: 'So übst du es',
  problems: {
    heading: 'Für die Lehrerin oder den Lehrer: in den Noten zu prüfen',
    more: (count) => `Und noch ${count}.`,
  },
  care: 'Übe mit Bedacht',
  lettersMissing: (packages) =>
    `Wörter in [Klammern] stehen für Schriftzeichen, die diese Seite nicht hat. ${install(packages)}In den Noten selbst stehen sie.`,
};

function lengthInWords(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return inSeconds(whole);
  return `${Math.floor(whole / 60)} min${whole % 60 === 0 ? '' : ` ${whole % 60} s`}`;
}

function endOf({ pitch, bar }: RangeEnd): string {
  return `${pitchName(pitch, pitch.octave)} (Takt ${bar})`;
}

function hairpin({ kind, bar, toBar, bars, seconds, fromMark, toMark, opposite }: HairpinFacts): string {
  const crescendo = kind === 'crescendo';
  const length = bars >= 1 ? `${quarterBars(bars)} ${bars === 1 ? 'Takt' : 'Takte'}, ` : '';
  const from = fromMark === null ? '' : ` von ${fromMark}`;
  const to = toMark === null ? '' : opposite ? `, dann sofort ${toMark}` : ` zu ${toMark}`;
  const how = `Werde mit jedem Schlag etwas ${crescendo ? 'lauter' : 'leiser'} und komm erst am Ende an`;
  return `${crescendo ? 'Crescendo' : 'Diminuendo'} in ${barsInWords(bar, toBar)}: ${length}etwa ${inSeconds(seconds)}${from}${to}. ${how}.`;
}
