import type { Face, Item, Typesetter } from '../layout/drawing.js';
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

/**
 * How a piece behaves when bars are taken out of the line and spread to a width:
 * `staff` lines go from end to end, `opening` signs (clef, key) stand at the beginning, the `number` of a bar over it;
 * `solid` pieces move whole and take room, `hung` ones move whole and take none, `elastic` ones spread with the notes, and
 * `spanner`s spread as well and may reach into other bars.
 */
type Role = 'staff' | 'opening' | 'number' | 'solid' | 'hung' | 'elastic' | 'spanner';

/** The smallest things an engraving is made of. */
export interface Piece {
  readonly item: Item;
  readonly role: Role;
  /** bar it stands in, counted from 0; −1 for what stands outside of bars */
  readonly bar: number;
  readonly isBarline: boolean;
  /** a mark of loudness or a wedge; the engraver puts all of a line at one height */
  readonly isLoudness: boolean;
  /** words move with the beginning of what they belong to, points */
  readonly anchor: number | null;
  /** the notes it belongs to, by their ids */
  readonly noteIds: readonly string[];
  /** a sign of the music face */
  readonly sign: Sign | null;
}

/** A sign of the music face where it was drawn. */
export interface Sign {
  /** SMuFL code point, e.g. `E0A4` */
  readonly code: string;
  /** name of the group it stands in: `notehead`, `accid`, … */
  readonly group: string;
  readonly x: number;
  readonly y: number;
  /** points a staff space at this sign; grace notes are smaller */
  readonly space: number;
}

/** What is known on the way down the tree. */
interface Place {
  readonly matrix: Matrix;
  readonly face: Face;
  /** font size, units of the innermost text */
  readonly size: number;
  /** what shapes and what signs and words are here */
  readonly shapes: Role;
  readonly signs: Role;
  readonly bar: number;
  readonly group: string;
  readonly isLoudness: boolean;
  readonly noteIds: readonly string[];
}

/** Roles by the name of the group; the others are as what they stand in. Source: the groups of the engraver's SVG. */
const ROLES: Readonly<Record<string, readonly [shapes: Role, signs: Role]>> = {
  measure: ['spanner', 'hung'],
  staff: ['staff', 'hung'],
  mNum: ['number', 'number'],
  clef: ['opening', 'opening'],
  keySig: ['opening', 'opening'],
  barLine: ['solid', 'solid'],
  meterSig: ['solid', 'solid'],
  ledgerLines: ['solid', 'solid'],
  layer: ['solid', 'solid'],
  beam: ['elastic', 'hung'],
  tuplet: ['elastic', 'hung'],
  tupletBracket: ['elastic', 'hung'],
  tupletNum: ['elastic', 'hung'],
  fTrem: ['elastic', 'hung'],
  note: ['solid', 'solid'],
  chord: ['solid', 'solid'],
  rest: ['solid', 'solid'],
};

/**
 * Reads the SVG subset of the engraver (groups, use, path, rect, polygon, polyline, ellipse, text).
 *
 * @param typesetter widths and coverage of the faces
 * @param root the SVG
 * @param matrix from the units of the SVG to points
 * @returns its pieces as they stand in the file, and how many bars there are
 *
 * Source: SVG 2.
 */
export function svgPieces(
  typesetter: Typesetter,
  root: SvgElement,
  matrix: Matrix,
): { readonly pieces: readonly Piece[]; readonly bars: number } {
  const reader = new SvgReader(typesetter, definitionsIn(root));
  const score = root.children.find(({ name }) => name === 'svg') ?? root;
  const nowhere = { bar: -1, group: '', isLoudness: false, noteIds: [], shapes: 'spanner', signs: 'hung' } as const;
  reader.read(score, { matrix, face: 'regular', size: 0, ...nowhere });
  return reader;
}

function definitionsIn(root: SvgElement): ReadonlyMap<string, SvgElement> {
  const definitions = root.children.find(({ name }) => name === 'defs')?.children ?? [];
  return new Map(definitions.map((one) => [one.attributes.id ?? '', one]));
}

class SvgReader {
  readonly pieces: Piece[] = [];
  bars = 0;
  readonly #typesetter: Typesetter;
  readonly #definitions: ReadonlyMap<string, SvgElement>;

  constructor(typesetter: Typesetter, definitions: ReadonlyMap<string, SvgElement>) {
    this.#typesetter = typesetter;
    this.#definitions = definitions;
  }

  read(element: SvgElement, place: Place): void {
    const { attributes: a } = element;
    const names = (a.class ?? '').split(' ');
    const name = names[0] ?? '';
    const [shapes, signs] = ROLES[name] ?? [place.shapes, place.signs];
    const inner: Place = {
      ...place,
      ...{ shapes, signs },
      matrix: combined(place.matrix, readTransform(a.transform)),
      face: names.map((one) => FACE_OF_CLASS[one]).find(Boolean) ?? place.face,
      bar: name === 'measure' ? this.bars++ : place.bar,
      group: name || place.group,
      isLoudness: place.isLoudness || name === 'dynam' || name === 'hairpin',
      noteIds: NOTE_ID.test(a.id ?? '') ? [...place.noteIds, a.id as string] : place.noteIds,
    };
    if (element.name === 'text') this.#text(element, inner);
    else if (element.name === 'use') this.#use(a, inner);
    else if (element.name === 'g' || element.name === 'svg')
      for (const child of element.children) this.read(child, inner);
    else this.#shape(element, inner);
  }

  #add(item: Item, role: Role, place: Place, more: Pick<Partial<Piece>, 'sign' | 'anchor'> = {}): void {
    const { bar, isLoudness, noteIds } = place;
    this.pieces.push({
      ...{ item, role, bar, isLoudness, noteIds, sign: null, anchor: null, ...more },
      isBarline: place.group === 'barLine',
    });
  }

  /** The outlines of a sign are one piece. */
  #use(a: SvgElement['attributes'], place: Place): void {
    const href = (a.href ?? a['xlink:href'] ?? '').slice(1);
    const [x, y] = mapped(place.matrix, 0, 0);
    const sign = { code: href.slice(0, 4), group: place.group, x, y, space: scaleOf(place.matrix) * 250 };
    const outlines = this.#definitions.get(href)?.children ?? [];
    const d = outlines
      .map(({ attributes: { d = '', transform } }) => mapPath(d, combined(place.matrix, readTransform(transform))))
      .join('');
    this.#add({ kind: 'path', d, fill: 'text' }, place.signs, place, { sign });
  }

  #shape({ name, attributes: a }: SvgElement, place: Place): void {
    const { matrix } = place;
    const number = (key: string): number => Number(a[key] ?? 0);
    const width = Math.round(number('stroke-width') * scaleOf(matrix) * 1000) / 1000;
    const line = (d: string): void => {
      if (width > 0) this.#add({ kind: 'path', d, stroke: 'text', width, cap: 'butt' }, place.shapes, place);
    };
    const area = (d: string): void => this.#add({ kind: 'path', d, fill: 'text' }, place.shapes, place);
    if (name === 'path' && a.d !== undefined) {
      const d = mapPath(a.d, matrix);
      const closed = /[CcSsQqZz]/.test(a.d) && a.fill !== 'none';
      if (a['stroke-dasharray'] !== undefined) {
        const [on = 100, off = on] = a['stroke-dasharray']
          .split(/[\s,]+/)
          .map((part) => Number(part) * scaleOf(matrix));
        this.#add({ kind: 'path', d, stroke: 'text', width, dash: [on, off] }, place.shapes, place);
      } else if (!closed) line(d);
      else if (width > 0) this.#add({ kind: 'path', d, fill: 'text', stroke: 'text', width }, place.shapes, place);
      else area(d);
    } else if (name === 'polygon') area(mapPath(`M${a.points ?? ''}Z`, matrix));
    else if (name === 'polyline') line(mapPath(`M${a.points ?? ''}`, matrix));
    else if (name === 'ellipse' || name === 'circle') {
      const [rx, ry] = name === 'circle' ? [number('r'), number('r')] : [number('rx'), number('ry')];
      area(mapPath(ellipse(number('cx'), number('cy'), rx, ry), matrix));
    } else if (name === 'rect') {
      const [x, y, w, h] = ['x', 'y', 'width', 'height'].map(number) as [number, number, number, number];
      const d = mapPath(`M${x} ${y}H${x + w}V${y + h}H${x}Z`, matrix);
      if (a['fill-opacity'] === '0' || a.fill === 'none') line(d);
      else area(d);
    }
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
      const items = placeText(set, x + before, baseline - size * 0.33).filter(({ text }) => text.trim() !== '');
      for (const item of items) this.#add(item, place.signs, place, { anchor: left });
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
