import type { Face, Ink, TextItem, Typesetter } from './drawing.js';
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

/** A stretch of a line in one face. */
interface Run {
  readonly text: string;
  readonly face: Face;
  readonly width: number;
  /** how the signs stand in the line */
  readonly fit: Fit;
}

/** How signs of the music face are made to stand in a line of text, as shares of the text's size. */
interface Fit {
  readonly scale: number;
  readonly rise: number;
  /** white before the sign */
  readonly before: number;
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
  /** the text as it should read, present when some of its letters could not be drawn */
  readonly actualText?: string;
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
 * @returns lines with their runs; flats and sharps come from the music face; letters that no face holds are named
 * in brackets
 *
 * Source: Unicode Standard Annex 15 for composition.
 */
export function setText(typesetter: Typesetter, text: string, style: TextStyle, width: number): SetText {
  const clean = text
    .normalize('NFC')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .trim();
  const canDraw = (letter: string): boolean => letter in MUSIC_SIGNS || typesetter.hasGlyph(letter, style.face);
  const drawn = spellOut(clean, canDraw, (letters) => typesetter.nameMissing(letters));
  const words = wordsOf(drawn).map((word) => runsOf(typesetter, word, style));
  const lines = breakLines(typesetter, words, style, width);
  return {
    style,
    width,
    lines,
    height: lines.length * style.leading,
    ...(drawn === clean ? {} : { actualText: clean }),
  };
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
    return line.runs.map((run, i): TextItem => {
      const readsOn = i === line.runs.length - 1 && row < lines.length - 1 ? ' ' : '';
      const item = {
        kind: 'text' as const,
        x: left + run.fit.before * style.size,
        baseline: baseline - run.fit.rise * style.size,
        text: run.text + readsOn,
        face: run.face,
        size: style.size * run.fit.scale,
        ink: style.ink,
      };
      left += run.width;
      return item;
    });
  });
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

function runsOf(typesetter: Typesetter, word: string, style: TextStyle): Run[] {
  const found: Letters[] = [];
  for (const character of word) {
    const next = lettersFor(character, style.face);
    const last = found.at(-1);
    if (last !== undefined && last.fit === PLAIN && next.fit === PLAIN) last.text += next.text;
    else found.push(next);
  }
  return found.map((letters) => {
    const { scale, before } = letters.fit;
    const width = typesetter.widthOf(letters.text, letters.face, style.size * scale) + before * style.size;
    return { ...letters, width };
  });
}

function lettersFor(character: string, face: Face): Letters {
  const fit = MUSIC_SIGNS[character];
  return fit === undefined ? { text: character, face, fit: PLAIN } : { text: character, face: 'music', fit };
}

const widthOfRuns = (runs: readonly Run[]) => runs.reduce((sum, run) => sum + run.width, 0);

function breakLines(typesetter: Typesetter, words: readonly Run[][], style: TextStyle, width: number): Line[] {
  const lines: Line[] = [];
  let line: Run[] = [];
  for (const word of words.flatMap((one) => fitting(typesetter, one, style, width))) {
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
  if (last.face === 'music') {
    if (first.face === 'music') return [...line, { text: ' ', face: style.face, width: space, fit: PLAIN }, ...word];
    return [...line, { ...first, text: ` ${first.text}`, width: space + first.width }, ...word.slice(1)];
  }
  if (first.face === 'music')
    return [...line.slice(0, -1), { ...last, text: `${last.text} `, width: last.width + space }, ...word];
  const middle = { ...last, text: `${last.text} ${first.text}`, width: last.width + space + first.width };
  return [...line.slice(0, -1), middle, ...word.slice(1)];
}

/** A word cut where it is wider than a line. */
function fitting(typesetter: Typesetter, word: Run[], style: TextStyle, width: number): Run[][] {
  if (widthOfRuns(word) <= width) return [word];
  const cuts: Run[][] = [];
  let text = '';
  for (const character of word.map((run) => run.text).join('')) {
    if (text !== '' && widthOfRuns(runsOf(typesetter, text + character, style)) > width) {
      // after a hyphen where there is one
      const cut = text.lastIndexOf('-') + 1 || text.length;
      cuts.push(runsOf(typesetter, text.slice(0, cut), style));
      text = text.slice(cut);
    }
    text += character;
  }
  return [...cuts, runsOf(typesetter, text, style)];
}
