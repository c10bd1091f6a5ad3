import { attributes, type NoteExtras, note } from './score-of.js';

/**
 * Random scores by seed, for comparing readers. Everything a reader needs is written out as notation programs do (types,
 * dots, tuplet brackets, ties as sound and curve); nothing here knows how it is read.
 */

/** Mulberry32: a small generator of pseudo-random numbers (from memory). */
function randomNumbers(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

type Draw = (below: number) => number;

/** What is written at the two ends of a bar. */
interface Frame {
  readonly left: string;
  readonly right: string;
}

interface Writing {
  readonly draw: Draw;
  divisions: number;
  /** pitch that the note before is tied to */
  tied: string | null;
}

/** Written values in 24ths of a quarter: type, dots, length. */
const VALUES = [
  ['whole', 0, 96],
  ['half', 1, 72],
  ['half', 0, 48],
  ['quarter', 1, 36],
  ['quarter', 0, 24],
  ['eighth', 1, 18],
  ['eighth', 0, 12],
  ['16th', 0, 6],
] as const;

const TIMES = ['4/4', '3/4', '2/4', '6/8', '5/8', '2/2', '7/8', '9/8'];
const TRANSPOSES = ['', '', 'B flat', 'F', 'E flat'];
const TRANSPOSE_XML: Readonly<Record<string, string>> = {
  'B flat': '<transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></transpose>',
  F: '<transpose><diatonic>-4</diatonic><chromatic>-7</chromatic></transpose>',
  'E flat': '<transpose><diatonic>-5</diatonic><chromatic>-9</chromatic></transpose>',
};

const REPEAT = '<bar-style>light-heavy</bar-style>';
const FORWARD = '<barline location="left"><bar-style>heavy-light</bar-style><repeat direction="forward"/></barline>';
const BACKWARD = `<barline location="right">${REPEAT}<repeat direction="backward"/></barline>`;
/** The ending of two passes says how often the passage is played, as not every reader counts the numbers. */
const backwardAfter = (numbers: string): string =>
  `<repeat direction="backward"${numbers === '1, 2' ? ' times="3"' : ''}/>`;
const opening = (numbers: string): string =>
  `<barline location="left"><ending number="${numbers}" type="start"/></barline>`;
const closing = (numbers: string, repeated: boolean): string =>
  `<barline location="right">${repeated ? REPEAT : ''}<ending number="${numbers}" type="stop"/>${repeated ? backwardAfter(numbers) : ''}</barline>`;

const PLAIN: Frame = { left: '', right: '' };

/**
 * @param seed any whole number
 * @returns contents of the bars of one part: a line of notes, rests, ties, triplets, quintuplets and chords; changing
 *   divisions, times and keys; transposition; repeats with up to three endings
 */
export function generatedBars(seed: number): string[] {
  const draw = randomNumbers(seed);
  const frames = Array.from({ length: 3 + draw(2) }, () => sectionOf(draw)).flat();
  const transpose = TRANSPOSE_XML[TRANSPOSES[draw(TRANSPOSES.length)] as string] ?? '';
  const writing: Writing = { draw, divisions: 120, tied: null };
  let time = TIMES[draw(TIMES.length)] as string;
  return frames.map(({ left, right }, i) => {
    let head = '';
    if (i > 0 && draw(4) === 0) {
      writing.divisions = 120 * (1 + draw(3));
      time = TIMES[draw(TIMES.length)] as string;
      head = attributes(writing.divisions, draw(9) - 4, time);
    }
    if (i === 0) head = attributes(120, draw(9) - 4, time, `<clef><sign>G</sign><line>2</line></clef>${transpose}`);
    const goesOn = right === '' && frames[i + 1]?.left === '';
    return left + head + barOf(time, goesOn, writing) + right;
  });
}

/** A few bars: plain, repeated, or with two endings, three endings, or one ending shared by two passes. */
function sectionOf(draw: Draw): Frame[] {
  const body = Array.from({ length: 1 + draw(3) }, () => PLAIN);
  const [first = PLAIN, ...others] = body;
  const opened = [{ ...first, left: FORWARD }, ...others];
  const ending = (numbers: string, repeated: boolean): Frame[] =>
    draw(3) === 0
      ? [
          { left: opening(numbers), right: '' },
          { left: '', right: closing(numbers, repeated) },
        ]
      : [{ left: opening(numbers), right: closing(numbers, repeated) }];
  const kinds = [
    () => body,
    () => [...opened, { left: '', right: BACKWARD }],
    () => [...opened, ...ending('1', true), ...ending('2', false)],
    () => [...opened, ...ending('1', true), ...ending('2', true), ...ending('3', false)],
    () => [...opened, ...ending('1, 2', true), ...ending('3', false)],
  ];
  return (kinds[draw(kinds.length)] as () => Frame[])();
}

/** Fills a bar; lengths are counted in 24ths of a quarter. */
function barOf(time: string, goesOn: boolean, writing: Writing): string {
  const [beats = 4, beatType = 4] = time.split('/').map(Number);
  let left = (beats * 96) / beatType;
  let xml = '';
  while (left > 0) {
    const group = left >= 24 && writing.tied === null ? writing.draw(8) : -1;
    if (group === 0 || group === 1) {
      xml += tupletOf(group === 0 ? 3 : 5, writing);
      left -= 24;
      continue;
    }
    const fitting = VALUES.filter(([, , length]) => length <= left);
    const [type, dots, length] = fitting[writing.draw(fitting.length)] as (typeof VALUES)[number];
    left -= length;
    xml += noteOf((length * writing.divisions) / 24, { type, dots }, left > 0 || goesOn, writing);
  }
  return xml;
}

/** Three eighths in the time of two, or five sixteenths in the time of four. */
function tupletOf(actual: 3 | 5, writing: Writing): string {
  const normal = actual - 1;
  return Array.from({ length: actual }, (_, i) =>
    note(writing.draw(6) === 0 ? 'r' : anyPitch(writing.draw), writing.divisions / actual, {
      type: actual === 3 ? 'eighth' : '16th',
      tuplet: [actual, normal],
      ...(i === 0 ? { notations: '<tuplet type="start" number="1" bracket="yes"/>' } : {}),
      ...(i === actual - 1 ? { notations: '<tuplet type="stop" number="1"/>' } : {}),
    }),
  ).join('');
}

/** A rest, or a note that may be tied on and may have a lower chord tone. */
function noteOf(duration: number, extras: NoteExtras, mayTie: boolean, writing: Writing): string {
  const { draw, tied } = writing;
  writing.tied = null;
  if (tied === null && draw(7) === 0) return note('r', duration, extras);
  const pitch = tied ?? anyPitch(draw);
  if (mayTie && draw(6) === 0) writing.tied = pitch;
  const ends = [...(tied === null ? [] : ['stop' as const]), ...(writing.tied === null ? [] : ['start' as const])];
  const notations = ends.map((type) => `<tied type="${type}"/>`).join('');
  const chord = ends.length === 0 && draw(10) === 0 ? note('C3', duration, { ...extras, chord: true }) : '';
  return note(pitch, duration, { ...extras, ...(ends.length > 0 ? { tie: ends, notations } : {}) }) + chord;
}

function anyPitch(draw: Draw): string {
  return `${'CDEFGAB'[draw(7)]}${['', '', '', '#', 'b', '##', 'bb'][draw(7)]}${4 + draw(2)}`;
}
