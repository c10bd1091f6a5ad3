import type { Face, Ink, TextItem, Typesetter } from './drawing.js';
import { inVisualOrder } from './in-visual-order.js';
import { RIGHT_TO_LEFT } from './right-to-left.js';
import type { Fit, Run } from './run.js';
import { spellOut } from './spell-out.js';

/** How a text is set. */
export interface TextStyle {
  readonly face: Face;
  /** points */
  readonly size: number;
  /** distance of baselines, points */
  readonly leading: number;
  readonly ink: Ink;
  readonly align?: 'left' | 'right' | 'centre';
}

interface Line {
  readonly runs: readonly Run[];
  readonly width: number;
}

/** Text broken into lines, not yet placed. */
export interface SetText {
  readonly style: TextStyle;
  readonly width: number;
  readonly lines: readonly Line[];
  readonly height: number;
  /** the text as it is written, present when what is drawn may not read like it */
  readonly actualText?: string;
  /** letters that no face holds; none when all could be drawn */
  readonly missing: string;
}

const PLAIN: Fit = { scale: 1, rise: 0, before: 0 };
const FLAT: Fit = { scale: 1.2, rise: 0.22, before: 0.04 };
const SHARP: Fit = { scale: 1.1, rise: 0.35, before: 0.05 };

/** Signs taken from the music face. */
const MUSIC_SIGNS: Readonly<Record<string, Fit>> = { '♭': FLAT, '𝄫': FLAT, '♯': SHARP, '♮': SHARP, '𝄪': SHARP };

/**
 * Breaks text into lines. A word that is wider than the line is broken where it must be, so nothing is ever cut.
 *
 * @param typesetter widths and coverage of the faces
 * @param text any text; composed to NFC, line breaks and control characters read as spaces
 * @param style how it is set
 * @param width points a line may take
 * @returns lines with their runs from left to right; flats and sharps come from the music face, letters of other scripts
 * from faces of their own; letters that no face holds are named in brackets
 *
 * Source: Unicode Standard Annex 15 for composition; Annex 9 for writing from right to left.
 */
export function setText(typesetter: Typesetter, text: string, style: TextStyle, width: number): SetText {
  const clean = text
    .normalize('NFC')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .trim();
  const faceOf = facesFor(typesetter, clean, style.face);
  let missing = '';
  const shown = clean.replace(DIRECTIONS, '');
  const drawn = spellOut(
    shown,
    (letter) => letter in MUSIC_SIGNS || faceOf(letter) !== undefined,
    (letters) => typesetter.nameMissing(letters),
    (letters) => {
      missing += letters;
    },
  );
  const words = wordsOf(drawn).map((word) => runsOf(typesetter, word, style, faceOf));
  const lines = breakLines(typesetter, words, style, width, faceOf);
  const isAsWritten = drawn === clean && lines.every(({ runs }) => runs.every(({ face }) => !face.startsWith('lent')));
  return {
    style,
    width,
    lines: lines.map((line) => visual(typesetter, line, style)),
    height: lines.length * style.leading,
    missing,
    ...(isAsWritten ? {} : { actualText: clean }),
  };
}

/** Signs without a form that only tell directions; directions follow from the letters. Source: Unicode Annex 9, 2. */
const DIRECTIONS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

type FaceOf = (letter: string) => Face | undefined;

/** The face of each letter of a text; what has no face of its own is looked for only once. */
function facesFor(typesetter: Typesetter, text: string, face: Face): FaceOf {
  const known = new Map<string, Face | undefined>();
  return (letter) => {
    if (!known.has(letter)) known.set(letter, typesetter.faceFor(letter, face, text));
    return known.get(letter);
  };
}

function visual(typesetter: Typesetter, line: Line, style: TextStyle): Line {
  if (!line.runs.some(({ text }) => RIGHT_TO_LEFT.test(text))) return line;
  const widthOf = (text: string, { face, fit }: Run): number =>
    typesetter.widthOf(text, face, style.size * fit.scale) + fit.before * style.size;
  const runs = inVisualOrder(line.runs).map((run) => ({ ...run, width: widthOf(run.text, run) }));
  return { runs, width: widthOfRuns(runs) };
}

/**
 * @param set text broken into lines
 * @param x left edge, points
 * @param top upper edge of the first line's leading, points
 * @returns the text's items; every line but the last ends in a space, so that it reads on
 */
export function placeText(set: SetText, x: number, top: number): TextItem[] {
  const { style, lines, width } = set;
  return lines.flatMap((line, row) => {
    const free = width - line.width;
    let left = x + (style.align === 'right' ? free : style.align === 'centre' ? free / 2 : 0);
    const baseline = top + row * style.leading + style.leading / 2 + style.size * 0.33;
    const items = line.runs.map((run): TextItem => {
      const item = {
        kind: 'text' as const,
        x: left + run.fit.before * style.size,
        baseline: baseline - run.fit.rise * style.size,
        text: run.text,
        face: run.face,
        size: style.size * run.fit.scale,
        ink: style.ink,
      };
      left += run.width;
      return item;
    });
    return row < lines.length - 1 ? readingOn(items, left, style) : items;
  });
}

/** Lent faces hold no space, so theirs stands by itself. */
function readingOn(items: readonly TextItem[], x: number, { face }: TextStyle): TextItem[] {
  const last = items.at(-1);
  if (last === undefined) return [];
  if (last.face.startsWith('lent')) return [...items, { ...last, x, text: ' ', face }];
  return [...items.slice(0, -1), { ...last, text: `${last.text} ` }];
}

/**
 * For furniture that must stay on one line; whatever is shortened stands in full elsewhere on the pages.
 *
 * @param typesetter widths and coverage of the faces
 * @param text any text
 * @param style how it is set
 * @param width points the line may take
 * @returns the text on one line, its end replaced by an ellipsis when it is too long
 */
export function setOneLine(typesetter: Typesetter, text: string, style: TextStyle, width: number): SetText {
  const whole = setText(typesetter, text, style, Number.POSITIVE_INFINITY);
  const letters = [...text];
  let set = whole;
  while ((set.lines[0] as Line).width > width && letters.length > 1) {
    letters.pop();
    set = setText(typesetter, `${letters.join('').trimEnd()}…`, style, Number.POSITIVE_INFINITY);
  }
  return { ...set, width };
}

/** A number and its unit, and a short remark in brackets, are not parted at the end of a line. */
const UNPARTED =
  /(?<=^| )[+−]?\d[\d.,]* (?:dB|Hz|%|s|cents?|Cent|percent|Prozent)(?![\p{L}\d])[^ ]*|\([^() ]+(?: [^() ]+){1,2}\)[^ ]*/gu;
const LONGEST_UNPARTED = 18;
/** Stands for a space within a word while lines are broken; a character that no text holds. */
const WITHIN = '\u{E000}';

function wordsOf(text: string): string[] {
  const bound = text.replace(UNPARTED, (found) =>
    found.length > LONGEST_UNPARTED ? found : found.replaceAll(' ', WITHIN),
  );
  return bound.split(' ').map((word) => word.replaceAll(WITHIN, ' '));
}

/** Neighbouring letters in one face, or one sign. */
interface Letters {
  text: string;
  readonly face: Face;
  readonly fit: Fit;
}

function runsOf(typesetter: Typesetter, word: string, style: TextStyle, faceOf: FaceOf): Run[] {
  const found: Letters[] = [];
  for (const character of word) {
    const last = found.at(-1);
    const next = lettersFor(character, faceOf(character) ?? style.face);
    if (last !== undefined && JOINED.test(character) && typesetter.hasGlyph(character, last.face)) {
      last.text += character;
    } else if (last !== undefined && last.fit === PLAIN && next.fit === PLAIN && last.face === next.face) {
      last.text += next.text;
    } else found.push(next);
  }
  return found.map((letters) => {
    const { scale, before } = letters.fit;
    const width = typesetter.widthOf(letters.text, letters.face, style.size * scale) + before * style.size;
    return { ...letters, width };
  });
}

/** Marks and joiners are set with the letter before them. */
const JOINED = /[\p{M}\u200c\u200d]/u;

function lettersFor(character: string, face: Face): Letters {
  const fit = MUSIC_SIGNS[character];
  return fit === undefined ? { text: character, face, fit: PLAIN } : { text: character, face: 'music', fit };
}

const widthOfRuns = (runs: readonly Run[]) => runs.reduce((sum, run) => sum + run.width, 0);

function breakLines(
  typesetter: Typesetter,
  words: readonly Run[][],
  style: TextStyle,
  width: number,
  faceOf: FaceOf,
): Line[] {
  const lines: Line[] = [];
  let line: Run[] = [];
  for (const word of words.flatMap((one) => fitting(typesetter, one, style, width, faceOf))) {
    const longer = line.length === 0 ? word : joined(typesetter, line, word, style);
    if (line.length > 0 && widthOfRuns(longer) > width) {
      lines.push({ runs: line, width: widthOfRuns(line) });
      line = word;
    } else line = longer;
  }
  return [...lines, { runs: line, width: widthOfRuns(line) }];
}

/** Two words with a space between them; neighbouring runs in the same face become one. */
function joined(typesetter: Typesetter, line: readonly Run[], word: readonly Run[], style: TextStyle): Run[] {
  const last = line.at(-1) as Run;
  const first = word[0];
  if (first === undefined) return [...line];
  const space = typesetter.widthOf(' ', style.face, style.size);
  const isOwn = (run: Run): boolean => run.face === style.face;
  if (!isOwn(last)) {
    if (!isOwn(first)) return [...line, { text: ' ', face: style.face, width: space, fit: PLAIN }, ...word];
    return [...line, { ...first, text: ` ${first.text}`, width: space + first.width }, ...word.slice(1)];
  }
  if (!isOwn(first))
    return [...line.slice(0, -1), { ...last, text: `${last.text} `, width: last.width + space }, ...word];
  const middle = { ...last, text: `${last.text} ${first.text}`, width: last.width + space + first.width };
  return [...line.slice(0, -1), middle, ...word.slice(1)];
}

/** A word cut where it is wider than a line; a letter stays with its marks. */
function fitting(typesetter: Typesetter, word: Run[], style: TextStyle, width: number, faceOf: FaceOf): Run[][] {
  if (widthOfRuns(word) <= width) return [word];
  const cuts: Run[][] = [];
  let text = '';
  for (const { segment } of LETTERS.segment(word.map((run) => run.text).join(''))) {
    if (text !== '' && widthOfRuns(runsOf(typesetter, text + segment, style, faceOf)) > width) {
      // after a hyphen where there is one
      const cut = text.lastIndexOf('-') + 1 || text.length;
      cuts.push(runsOf(typesetter, text.slice(0, cut), style, faceOf));
      text = text.slice(cut);
    }
    text += segment;
  }
  return [...cuts, runsOf(typesetter, text, style, faceOf)];
}

/** Source: Unicode Standard Annex 29, grapheme clusters. */
const LETTERS = new Intl.Segmenter('und', { granularity: 'grapheme' });
