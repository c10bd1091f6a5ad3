import type { Face, PathItem } from '../page/index.js';
import type { TextRun, Words } from './draw-words.js';
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
  /** pieces of the same look may share one; where it stands is said beside it */
  readonly item: PathItem | Words;
  /** how far to the right and down of its own place the item stands, points */
  readonly x: number;
  readonly y: number;
  readonly role: Role;
  /** bar it stands in, counted from 0; −1 for what stands outside of bars */
  readonly bar: number;
  readonly isBarline: boolean;
  /** a mark of loudness or a wedge; the engraver puts all of a line at one height */
  readonly isLoudness: boolean;
  /** the notes it belongs to, by their ids */
  readonly noteIds: readonly string[];
  /** a sign of the music face */
  readonly sign: Sign | null;
}

/** A sign of the music face. */
export interface Sign {
  /** SMuFL code point, e.g. `E0A4` */
  readonly code: string;
  /** name of the group it stands in: `notehead`, `accid`, … */
  readonly group: string;
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
  reh: ['hung', 'hung'],
  tempo: ['hung', 'hung'],
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
 * @param root the SVG
 * @param matrix from the units of the SVG to points
 * @returns its pieces as they stand in the file, and how many bars there are
 *
 * Source: SVG 2.
 */
export function svgPieces(
  root: SvgElement,
  matrix: Matrix,
): { readonly pieces: readonly Piece[]; readonly bars: number } {
  const reader = new SvgReader(definitionsIn(root));
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
  readonly #definitions: ReadonlyMap<string, SvgElement>;
  readonly #outlines = new Map<string, PathItem>();

  constructor(definitions: ReadonlyMap<string, SvgElement>) {
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

  #add(item: PathItem | Words, role: Role, place: Place, more: Pick<Partial<Piece>, 'sign' | 'x' | 'y'> = {}): void {
    const { bar, isLoudness, noteIds } = place;
    this.pieces.push({
      ...{ item, x: 0, y: 0, role, bar, isLoudness, noteIds, sign: null, ...more },
      isBarline: place.group === 'barLine',
    });
  }

  /** The outlines of a sign are one piece. */
  #use(a: SvgElement['attributes'], place: Place): void {
    const href = (a.href ?? a['xlink:href'] ?? '').slice(1);
    const [p, q, r, s, x, y] = place.matrix;
    const key = `${href} ${p} ${q} ${r} ${s}`;
    const item = this.#outlines.get(key) ?? this.#outline(href, [p, q, r, s, 0, 0]);
    this.#outlines.set(key, item);
    const sign = { code: href.slice(0, 4), group: place.group, space: scaleOf(place.matrix) * 250 };
    this.#add(item, place.signs, place, { sign, x, y });
  }

  #outline(href: string, matrix: Matrix): PathItem {
    const parts = this.#definitions.get(href)?.children ?? [];
    const d = parts.map(({ attributes: { d = '', transform } }) =>
      mapPath(d, combined(matrix, readTransform(transform))),
    );
    return { kind: 'path', d: d.join(''), fill: 'text' };
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
    const scale = scaleOf(place.matrix);
    const runs = runsIn(element, { ...place, size: sizeIn(element, place.size) });
    const { x = '0', y = '0', 'text-anchor': anchored = '' } = element.attributes;
    const [left, baseline] = mapped(place.matrix, Number(x), Number(y));
    const align = anchored === 'middle' || anchored === 'end' ? anchored : 'start';
    const sized = runs.map((run) => ({ ...run, size: run.size * scale }));
    this.#add({ kind: 'words', runs: sized, x: left, baseline, align }, place.signs, place);
  }
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

function sizeIn(element: SvgElement, inherited: number): number {
  const size = Number.parseFloat(element.attributes['font-size'] ?? '');
  return size > 0 ? size : inherited;
}
