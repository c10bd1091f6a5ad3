import type { Face, Item, PathItem, Typesetter } from '../layout/drawing.js';
import { placeText, setText } from '../layout/set-text.js';
import { ellipse } from './ellipse.js';
import { mapPath } from './map-path.js';
import { combined, type Matrix, mapped, readTransform, scaleOf } from './matrix.js';
import type { SvgElement } from './read-svg.js';

/** Faces the engraver's style sheet gives to whole groups. Source: the style element of its SVG. */
const FACE_OF_CLASS: Readonly<Record<string, Face>> = {
  ending: 'semibold',
  fing: 'semibold',
  reh: 'semibold',
  tempo: 'semibold',
  dir: 'italic',
  dynam: 'italic',
  mNum: 'italic',
};
/** Ids that the copy for engraving gives to notes. */
const NOTE_ID = /^n\d+$/;
/** Share of the size of the words before it. Source: common practice (a third of an em). */
const SIGN_GAP = 0.35;
const MUSIC_FAMILIES = /Bravura|Leipzig|Leland|Petaluma|Gootville|VerovioText/;

/** What is known on the way down the tree. */
interface Place {
  readonly matrix: Matrix;
  readonly face: Face;
  /** font size, units of the innermost text */
  readonly size: number;
}

/** What an SVG of the engraver becomes. */
export interface SvgItems {
  readonly items: readonly Item[];
  /** `use` elements of each note by its id, with their places in points */
  readonly glyphs: ReadonlyMap<string, readonly Glyph[]>;
  /** bars drawn, one count a system */
  readonly barsOfSystems: readonly number[];
  /** where the lines furthest to the right end, points */
  readonly right: number;
  /** upper and lower line of the first staff, points */
  readonly staff: readonly [top: number, bottom: number];
  /** where barlines stand, points, from left to right as drawn */
  readonly barlines: readonly number[];
}

/** A sign of the music face where it was drawn. */
export interface Glyph {
  /** SMuFL code point, e.g. `E0A4` */
  readonly code: string;
  /** name of the group it stands in: `notehead`, `accid`, … */
  readonly group: string;
  readonly x: number;
  readonly y: number;
  /** points a staff space at this sign; grace notes are smaller */
  readonly space: number;
}

/**
 * Translates the SVG subset of the engraver (groups, use, path, rect, polygon, polyline, ellipse, text) into items. Lines
 * of the same width are gathered into one item.
 *
 * @param typesetter widths and coverage of the faces
 * @param root the SVG
 * @param matrix from the units of the SVG to points
 * @param withTime whether the time signature before the first note is drawn
 * @returns items, and where the signs of each note are
 *
 * Source: SVG 2.
 */
export function svgItems(typesetter: Typesetter, root: SvgElement, matrix: Matrix, withTime = true): SvgItems {
  const reader = new SvgReader(typesetter, definitionsIn(root), withTime);
  const score = scoreIn(root);
  reader.read(score, { matrix, face: 'regular', size: 0 }, [], '');
  const { glyphs, barsOfSystems, right, staff, barlines } = reader;
  return { items: reader.finish(), glyphs, barsOfSystems, right, staff, barlines };
}

/** The inner `svg` that holds the score. */
export function scoreIn(root: SvgElement): SvgElement {
  return root.children.find(({ name }) => name === 'svg') ?? root;
}

function definitionsIn(root: SvgElement): ReadonlyMap<string, SvgElement> {
  const definitions = root.children.find(({ name }) => name === 'defs')?.children ?? [];
  return new Map(definitions.map((one) => [one.attributes.id ?? '', one]));
}

class SvgReader {
  readonly glyphs = new Map<string, Glyph[]>();
  readonly barsOfSystems: number[] = [];
  readonly barlines: number[] = [];
  staff: readonly [number, number] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  right = 0;
  #timeIsHidden: boolean;
  readonly #typesetter: Typesetter;
  readonly #definitions: ReadonlyMap<string, SvgElement>;
  readonly #lines = new Map<number, string[]>();
  readonly #filled: string[] = [];
  readonly #others: Item[] = [];

  constructor(typesetter: Typesetter, definitions: ReadonlyMap<string, SvgElement>, withTime: boolean) {
    this.#typesetter = typesetter;
    this.#definitions = definitions;
    this.#timeIsHidden = !withTime;
  }

  /** @param ids ids of the groups around, outermost first */
  read(element: SvgElement, place: Place, ids: readonly string[], group: string): void {
    const { attributes: a } = element;
    const names = (a.class ?? '').split(' ');
    if (names[0] === 'system') this.barsOfSystems.push(0);
    if (names[0] === 'measure') this.#countBar();
    if (names[0] === 'meterSig' && this.#timeIsHidden) {
      this.#timeIsHidden = false;
      return;
    }
    const inner = {
      ...place,
      matrix: combined(place.matrix, readTransform(a.transform)),
      face: names.map((name) => FACE_OF_CLASS[name]).find(Boolean) ?? place.face,
    };
    if (element.name === 'text') this.#text(element, inner);
    else if (element.name === 'use') this.#use(a, inner, ids, group);
    else if (element.name === 'g' || element.name === 'svg') {
      const around = a.id === undefined ? ids : [...ids, a.id];
      for (const child of element.children) this.read(child, inner, around, names[0] || group);
    } else {
      if (element.name === 'path') this.#note(group, mapPath(a.d ?? '', inner.matrix));
      this.#shape(element, inner);
    }
  }

  #countBar(): void {
    const system = Math.max(0, this.barsOfSystems.length - 1);
    this.barsOfSystems[system] = (this.barsOfSystems[system] ?? 0) + 1;
    // only what stands before the first bar's notes repeats what is printed elsewhere
    if (this.barsOfSystems.length > 1 || (this.barsOfSystems[0] ?? 0) > 1) this.#timeIsHidden = false;
  }

  /** Keeps the places of staff lines and barlines. */
  #note(group: string, d: string): void {
    const [, x = '0', y = '0'] = /^M([-\d.]+) ([-\d.]+)/.exec(d) ?? [];
    if (group === 'staff' && this.barsOfSystems.length < 2)
      this.staff = [Math.min(this.staff[0], Number(y)), Math.max(this.staff[1], Number(y))];
    if (group === 'barLine') this.barlines.push(Number(x));
  }

  /** Everything gathered so far: lines first, then what lies on them. */
  finish(): Item[] {
    const lines = [...this.#lines].map(([width, parts]): PathItem => {
      return { kind: 'path', d: parts.join(''), stroke: 'text', width, cap: 'butt' };
    });
    const filled: PathItem[] =
      this.#filled.length === 0 ? [] : [{ kind: 'path', d: this.#filled.join(''), fill: 'text' }];
    return [...lines, ...filled, ...this.#others];
  }

  #use(a: SvgElement['attributes'], place: Place, ids: readonly string[], group: string): void {
    const href = (a.href ?? a['xlink:href'] ?? '').slice(1);
    const [x, y] = mapped(place.matrix, 0, 0);
    const glyph = { code: href.slice(0, 4), group, x, y, space: scaleOf(place.matrix) * 250 };
    for (const id of ids.filter((one) => NOTE_ID.test(one)))
      this.glyphs.set(id, [...(this.glyphs.get(id) ?? []), glyph]);
    for (const child of this.#definitions.get(href)?.children ?? []) this.read(child, place, [], group);
  }

  #shape({ name, attributes: a }: SvgElement, { matrix }: Place): void {
    const number = (key: string): number => Number(a[key] ?? 0);
    const stroke = number('stroke-width') * scaleOf(matrix);
    if (name === 'path' && a.d !== undefined) {
      const d = mapPath(a.d, matrix);
      const closed = /[CcSsQqZz]/.test(a.d) && a.fill !== 'none';
      if (a['stroke-dasharray'] !== undefined) this.#dashed(d, stroke, a['stroke-dasharray'], scaleOf(matrix));
      else if (closed) this.#area(d, stroke);
      else this.#line(d, stroke);
    } else if (name === 'polygon') this.#area(mapPath(`M${a.points ?? ''}Z`, matrix), 0);
    else if (name === 'polyline') this.#line(mapPath(`M${a.points ?? ''}`, matrix), stroke);
    else if (name === 'ellipse' || name === 'circle') {
      const [rx, ry] = name === 'circle' ? [number('r'), number('r')] : [number('rx'), number('ry')];
      this.#area(mapPath(ellipse(number('cx'), number('cy'), rx, ry), matrix), 0);
    } else if (name === 'rect') {
      const [x, y, w, h] = ['x', 'y', 'width', 'height'].map(number) as [number, number, number, number];
      const d = mapPath(`M${x} ${y}H${x + w}V${y + h}H${x}Z`, matrix);
      if (a['fill-opacity'] === '0' || a.fill === 'none') this.#line(d, stroke);
      else this.#area(d, 0);
    }
  }

  #line(d: string, width: number): void {
    const rounded = Math.round(width * 1000) / 1000;
    for (const [, x] of d.matchAll(/[ML]([-\d.]+)/g)) this.right = Math.max(this.right, Number(x));
    if (rounded > 0) this.#lines.set(rounded, [...(this.#lines.get(rounded) ?? []), d]);
  }

  #dashed(d: string, width: number, dashes: string, scale: number): void {
    const [on = 100, off = on] = dashes.split(/[\s,]+/).map(Number);
    this.#others.push({ kind: 'path', d, stroke: 'text', width, dash: [on * scale, off * scale] });
  }

  /** Areas with an outline of their own (slurs) keep it, the others are gathered. */
  #area(d: string, width: number): void {
    if (width > 0) this.#others.push({ kind: 'path', d, fill: 'text', stroke: 'text', width });
    else this.#filled.push(d);
  }

  #text(element: SvgElement, place: Place): void {
    const runs = runsIn(element, { ...place, size: sizeIn(element, place.size) });
    const scale = scaleOf(place.matrix);
    const sets = runs.map((run, i) => {
      const size = run.size * scale;
      const spaces = (text: string): number => this.#typesetter.widthOf(text, run.face, size);
      const before = spaces(/^ */.exec(run.text)?.[0] ?? '') + signGap(runs[i - 1], run) * scale;
      const after = run.text.trim() === '' ? 0 : spaces(/ *$/.exec(run.text)?.[0] ?? '');
      const style = { face: run.face, size, leading: 0, ink: 'text' } as const;
      const set = setText(this.#typesetter, run.text, style, Number.POSITIVE_INFINITY);
      return { set, size, before, width: before + (set.lines[0]?.width ?? 0) + after };
    });
    const width = sets.reduce((sum, set) => sum + set.width, 0);
    const anchor = element.attributes['text-anchor'];
    const [left, baseline] = mapped(place.matrix, Number(element.attributes.x ?? 0), Number(element.attributes.y ?? 0));
    let x = left - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
    for (const { set, size, before, width: advance } of sets) {
      this.#others.push(...placeText(set, x + before, baseline - size * 0.33).filter(({ text }) => text.trim() !== ''));
      x += advance;
    }
  }
}

interface TextRun {
  readonly text: string;
  readonly face: Face;
  readonly size: number;
}

/** The pieces of a text with the face and size each one inherits; line breaks and indentation of the SVG are no text. */
function runsIn(element: SvgElement, place: Place): TextRun[] {
  return element.children.flatMap((child): TextRun[] => {
    if (child.name === '#text') {
      const text = /^\s*\n\s*$/.test(child.text) ? '' : child.text.replace(/[\s\u00A0]+/g, ' ');
      return text === '' ? [] : [{ text, face: place.face, size: place.size }];
    }
    const { attributes: a } = child;
    const music = MUSIC_FAMILIES.test(a['font-family'] ?? '');
    const bold = a['font-weight'] === 'bold' ? 'semibold' : a['font-weight'] === 'normal' ? 'regular' : place.face;
    const face = music
      ? 'music'
      : a['font-style'] === 'italic'
        ? 'italic'
        : a['font-style'] === 'normal'
          ? 'regular'
          : bold;
    return runsIn(child, { ...place, face, size: sizeIn(child, place.size) });
  });
}

/** White before a sign that follows words at once, such as the note of a metronome mark; units. */
function signGap(before: TextRun | undefined, { face }: TextRun): number {
  const close = face === 'music' && before !== undefined && before.face !== 'music' && /\S$/.test(before.text);
  return close ? SIGN_GAP * before.size : 0;
}

function sizeIn(element: SvgElement, inherited: number): number {
  const size = Number.parseFloat(element.attributes['font-size'] ?? '');
  return size > 0 ? size : inherited;
}
