import type { RangeEnd } from '../../../study/index.js';
import { quarterBars } from '../../rules/quarter-bars.js';
import type { HairpinFacts, StudyPageWords } from '../../shapes/study.js';
import { install } from '../missing-letters.js';
import { NUMBERS } from '../numbers.js';
import { BEATS_A_MINUTE, beatsIn } from '../tempo.js';
import { STUDY_PLACES, signedNameWithOctave } from './places.js';

const { bars: barsInWords, barList } = STUDY_PLACES;
const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
const inSeconds = (seconds: number): string => {
  const whole = NUMBERS.number(seconds, 0);
  return `${whole} ${whole === '1' ? 'second' : 'seconds'}`;
};

/** Headings, labels and captions of a study sheet. */
export const STUDY_PAGE: StudyPageWords = {
  kind: 'Study sheet',
  untitled: 'Étude',
  documentTitle: (title) => `${title} – Study sheet`,
  length: ({ bars, seconds, quarterBpm, lowestQuarterBpm, highestQuarterBpm, beat, marked }) => {
    const bpm = NUMBERS.number(beatsIn(quarterBpm, beat), 1);
    const [from, to] = [lowestQuarterBpm, highestQuarterBpm].map((one) => NUMBERS.number(beatsIn(one, beat), 0));
    const speed = marked
      ? `at ${bpm} ${BEATS_A_MINUTE[beat]}; ${from} to ${to} is fine`
      : `if ${bpm} ${BEATS_A_MINUTE[beat]} are assumed: no tempo is marked`;
    return `${bars} ${bars === 1 ? 'bar' : 'bars'}, about ${lengthInWords(seconds)} ${speed}.`;
  },
  range: (lowest, highest, pickUp) =>
    `Written range from ${endOf(lowest)} up to ${endOf(highest)}.${pickUp ? ' Bar 0 is the pick-up.' : ''}`,
  demands: 'What your teacher asks for',
  watch: { heading: 'Your teacher asks you to watch', noReason: 'Look at this place with care.' },
  etude: {
    heading: 'The étude with pencil marks',
    introduction:
      'Rings: notes that are easily misread, told below. Above the staff: where to watch, breaths, and how long to hold. Below: where loud and soft must differ at once, and where a hairpin is to arrive.',
    breath: { full: 'full breath', quick: 'breath' },
    hold: (seconds) => `hold ${NUMBERS.number(seconds, 1)} s`,
    watch: 'watch',
    step: { louder: 'much louder', softer: 'much softer' },
    arrive: 'arrive here',
    alternative: (bars, marks) =>
      `${bars} of the part in notes, as written for you. ${marks.length === 0 ? 'No pencil mark stands here.' : `Pencil marks: ${marks.join('; ')}.`}`,
    mark: (place, what) => `${lower(place)}, ${what}`,
    ring: (names) => `a ring around ${names}`,
  },
  traps: {
    heading: 'Notes that are easily misread',
    none: 'This part has no accidentals that are easily misread. Read its key signature all the same.',
    printedOnly: 'No accidental in this part leads astray. These are printed, and have to be seen in time.',
    introduction:
      'An accidental holds to the barline, on its own line or space only; then the key signature is back. Rings mark the notes to think of, dashed rings the accidentals that lead astray.',
    inBar: (bar, reason) => `Bar ${bar}, ${lower(reason)}`,
    alternative: (bars, notes) =>
      `${bars} of the part in notes, with rings around ${notes.map(({ names, bar }) => `${names} in bar ${bar}`).join(', ')}.`,
    also: 'Also',
    toSee: 'What to see in time',
    bar: (bar) => `Bar ${bar}`,
    more: (count) => (count === 1 ? 'One further note of this kind.' : `${count} further notes of this kind.`),
  },
  breaths: {
    heading: 'Where to breathe',
    introduction: 'Times are at the tempo above. Slower practice needs more breaths: add them at the ends of slurs.',
    none: (seconds) =>
      `The part marks no breath and leaves no rest for one; it lasts about ${inSeconds(seconds)}. Choose your places with your teacher and pencil them in.`,
    heads: {
      after: 'After the note on',
      breath: 'Breath',
      before: 'Played before it',
      time: 'Time for it',
      source: 'Where the time comes from',
    },
    kind: { full: 'full', quick: 'quick' },
    seconds: (seconds) => `${NUMBERS.number(seconds, 1)} s`,
    underATenth: 'under 0.1 s',
    source: {
      rest: 'in the rest',
      'end-of-note': 'from the end of the note before it',
      fermata: 'after the hold; take it calmly',
    },
    hardlyAny: 'hardly any: let go of the note early',
    more: (count) => (count === 1 ? 'One further place.' : `${count} further places.`),
    long: (bar, toBar, seconds) =>
      `${barsInWords(bar, toBar)} ${bar === toBar ? 'lasts' : 'last'} ${inSeconds(seconds)} in one breath. Fill up well before, save air from the start, and ask your teacher where a breath may be added if it does not last.`,
    moreLong: (count) =>
      count === 1
        ? 'One further stretch is as long for one breath.'
        : `${count} further stretches are as long for one breath.`,
  },
  dynamics: {
    heading: 'How loud',
    none: 'The part marks no dynamics. Ask your teacher how loud it begins and where it leads.',
    introduction: 'The line shows how loud over the bars. Commas are breaths, the large ones full.',
    alternative: (bar, toBar, marks) => {
      const said = marks.map(({ mark, bar: at }) => `${mark} in bar ${at}`).join(', ');
      return `Plan of loudness over ${lower(barsInWords(bar, toBar))}: ${said === '' ? 'no mark' : said}.`;
    },
    contrasts: (pairs) =>
      `Plainly different, so that a listener hears two levels at once: ${pairs
        .map(({ from, to, bars }) => `from ${from} to ${to} in ${lower(barList(bars))}`)
        .join('; ')}.`,
    hairpin,
    hairpinAgain: (facts) => `When it is repeated: ${lower(hairpin(facts))}`,
    moreHairpins: (count) => `The line above shows ${count} more.`,
  },
  tonguing: {
    heading: 'Tongue and slur',
    introduction: 'Where the pattern changes, say it aloud before you play it.',
    dotUnderSlur: ' A dot on the last note under a slur means: let go early, no new tongue.',
    head: 'Pattern',
    alternative: (bars, pattern) => `${bars}, shown in notes, as written for you. ${pattern}.`,
    more: (patterns) =>
      patterns === 1 ? 'One more pattern stands in the part.' : `${patterns} more patterns stand in the part.`,
  },
  entries: {
    heading: 'Coming in after a rest',
    introduction: 'A rest is played too: count it in small values to its very end.',
    head: 'How to count',
  },
  fermatas: {
    one: 'The fermata',
    several: 'Fermatas',
    introduction: (usual) =>
      `${usual ? 'About twice is usual.' : 'Your teacher says how long.'} Listen to the note while you hold it.`,
    head: 'How long',
  },
  tempo: {
    heading: 'Changes of tempo',
    introduction: 'Know before you begin how fast each of them is.',
    head: 'What happens',
  },
  where: 'Where',
  andMore: 'And more',
  morePlaces: (count) =>
    count === 1 ? 'One further place; look for it yourself.' : `${count} further places; look for them yourself.`,
  practice: 'How to practise it',
  problems: { heading: 'For the teacher: to check in the part', more: (count) => `And ${count} more.` },
  care: 'Practise with care',
  lettersMissing: (packages) =>
    `Words in [brackets] stand for letters that this page’s type does not hold. ${install(packages)}The part itself has them.`,
};

function lengthInWords(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return inSeconds(whole);
  return `${Math.floor(whole / 60)} min${whole % 60 === 0 ? '' : ` ${whole % 60} s`}`;
}

function endOf({ pitch, bar }: RangeEnd): string {
  return `${signedNameWithOctave(pitch)} (bar ${bar})`;
}

function hairpin({ kind, bar, toBar, bars, seconds, fromMark, toMark, opposite }: HairpinFacts): string {
  const crescendo = kind === 'crescendo';
  const length = bars >= 1 ? `${quarterBars(bars)} ${bars === 1 ? 'bar' : 'bars'}, ` : '';
  const from = fromMark === null ? '' : ` from ${fromMark}`;
  const to = toMark === null ? '' : opposite ? `, then ${toMark} at once` : ` to ${toMark}`;
  const how = `${crescendo ? 'Grow' : 'Fade'} a little on every beat, and arrive only at the end`;
  return `${crescendo ? 'Crescendo' : 'Diminuendo'} in ${lower(barsInWords(bar, toBar))}: ${length}about ${inSeconds(seconds)}${from}${to}. ${how}.`;
}
