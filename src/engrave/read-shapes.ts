import {
  type AffineMap,
  areaOf,
  combined,
  ellipse,
  type Face,
  joinPaths,
  mapPath,
  mapped,
  type Path,
  type PathItem,
  scaleOf,
} from '../page/index.js';
import type { TextRun, Words } from './place-words.js';
import { readPath } from './read-path.js';
import type { SvgElement } from './read-svg.js';
import { readTransform } from './read-transform.js';

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
 * How a shape behaves when bars are taken out of the line and spread to a width:
 * `staff` lines go from end to end, `opening` signs (clef, key) stand at the beginning, the `number` of a bar over it;
 * `solid` shapes move whole and take room, `hung` ones move whole and take none, `elastic` ones spread with the notes, and
 * `spanner`s spread as well and may reach into other bars.
 */
type Role = 'staff' | 'opening' | 'number' | 'solid' | 'hung' | 'elastic' | 'spanner';

/** One sign, line, area or text: the smallest things an engraving is made of. */
export interface Shape {
  /** shapes of the same look may share one; where it stands is said beside it */
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
  readonly toPoints: AffineMap;
  readonly face: Face;
  /** font size, units of the innermost text */
  readonly size: number;
  /** what lines and areas, and what signs and words are here */
  readonly lineRole: Role;
  readonly signRole: Role;
  readonly bar: number;
  readonly group: string;
  readonly isLoudness: boolean;
  readonly noteIds: readonly string[];
}

/** Roles by the name of the group; the others are as what they stand in. Source: the groups of the engraver's SVG. */
const ROLES: Readonly<Record<string, readonly [lineRole: Role, signRole: Role]>> = {
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
 * @param toPoints from the units of the SVG to points
 * @returns its shapes as they stand in the file, and how many bars there are
 *
 * Source: SVG 2.
 */
export function readShapes(
  root: SvgElement,
  toPoints: AffineMap,
): { readonly shapes: readonly Shape[]; readonly bars: number } {
  const reader = new ShapeReader(definitionsIn(root));
  const score = root.children.find(({ name }) => name === 'svg') ?? root;
  reader.read(score, {
    toPoints,
    face: 'regular',
    size: 0,
    bar: -1,
    group: '',
    isLoudness: false,
    noteIds: [],
    lineRole: 'spanner',
    signRole: 'hung',
  });
  return reader;
}

function definitionsIn(root: SvgElement): ReadonlyMap<string, SvgElement> {
  const definitions = root.children.find(({ name }) => name === 'defs')?.children ?? [];
  return new Map(definitions.map((one) => [one.attributes.id ?? '', one]));
}

class ShapeReader {
  readonly shapes: Shape[] = [];
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
    const [lineRole, signRole] = ROLES[name] ?? [place.lineRole, place.signRole];
    const inner: Place = {
      lineRole,
      signRole,
      toPoints: combined(place.toPoints, readTransform(a.transform)),
      size: place.size,
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
    else this.#lineOrArea(element, inner);
  }

  #add(item: PathItem | Words, role: Role, place: Place, more: Pick<Partial<Shape>, 'sign' | 'x' | 'y'> = {}): void {
    this.shapes.push({
      item,
      x: more.x ?? 0,
      y: more.y ?? 0,
      role,
      bar: place.bar,
      isBarline: place.group === 'barLine',
      isLoudness: place.isLoudness,
      noteIds: place.noteIds,
      sign: more.sign ?? null,
    });
  }

  /** The outlines of a sign are one shape. */
  #use(a: SvgElement['attributes'], place: Place): void {
    const href = (a.href ?? a['xlink:href'] ?? '').slice(1);
    const [p, q, r, s, x, y] = place.toPoints;
    const key = `${href} ${p} ${q} ${r} ${s}`;
    const item = this.#outlines.get(key) ?? this.#outline(href, [p, q, r, s, 0, 0]);
    this.#outlines.set(key, item);
    const sign = { code: href.slice(0, 4), group: place.group, space: scaleOf(place.toPoints) * 250 };
    this.#add(item, place.signRole, place, { sign, x, y });
  }

  #outline(href: string, toPoints: AffineMap): PathItem {
    const outlines = this.#definitions.get(href)?.children ?? [];
    const paths = outlines.map(({ attributes: { d = '', transform } }) =>
      mapPath(readPath(d), combined(toPoints, readTransform(transform))),
    );
    return { kind: 'path', path: joinPaths(paths), fill: 'text' };
  }

  #lineOrArea({ name, attributes: a }: SvgElement, place: Place): void {
    const { toPoints } = place;
    const number = (key: string): number => Number(a[key] ?? 0);
    const width = Math.round(number('stroke-width') * scaleOf(toPoints) * 1000) / 1000;
    const line = (path: Path): void => {
      if (width > 0) this.#add({ kind: 'path', path, stroke: 'text', width, cap: 'butt' }, place.lineRole, place);
    };
    const area = (path: Path): void => this.#add({ kind: 'path', path, fill: 'text' }, place.lineRole, place);
    if (name === 'path' && a.d !== undefined) {
      const read = readPath(a.d);
      const path = mapPath(read, toPoints);
      const isArea = read.steps.some((step) => step !== 'M' && step !== 'L') && a.fill !== 'none';
      if (a['stroke-dasharray'] !== undefined) {
        const [on = 100, off = on] = a['stroke-dasharray']
          .split(/[\s,]+/)
          .map((length) => Number(length) * scaleOf(toPoints));
        this.#add({ kind: 'path', path, stroke: 'text', width, dash: [on, off] }, place.lineRole, place);
      } else if (!isArea) line(path);
      else if (width > 0) this.#add({ kind: 'path', path, fill: 'text', stroke: 'text', width }, place.lineRole, place);
      else area(path);
    } else if (name === 'polygon') area(mapPath(readPath(`M${a.points ?? ''}Z`), toPoints));
    else if (name === 'polyline') line(mapPath(readPath(`M${a.points ?? ''}`), toPoints));
    else if (name === 'ellipse' || name === 'circle') {
      const [rx, ry] = name === 'circle' ? [number('r'), number('r')] : [number('rx'), number('ry')];
      area(mapPath(ellipse(number('cx'), number('cy'), rx, ry), toPoints));
    } else if (name === 'rect') {
      const [left, top] = [number('x'), number('y')];
      const [right, bottom] = [left + number('width'), top + number('height')];
      const corners = [mapped(toPoints, left, top), mapped(toPoints, right, top)];
      corners.push(mapped(toPoints, right, bottom), mapped(toPoints, left, bottom));
      if (a['fill-opacity'] === '0' || a.fill === 'none') line(areaOf(corners));
      else area(areaOf(corners));
    }
  }

  #text(element: SvgElement, place: Place): void {
    const scale = scaleOf(place.toPoints);
    const runs = runsIn(element, { ...place, size: sizeIn(element, place.size) });
    const { x = '0', y = '0', 'text-anchor': anchored = '' } = element.attributes;
    const [left, baseline] = mapped(place.toPoints, Number(x), Number(y));
    const align = anchored === 'middle' || anchored === 'end' ? anchored : 'start';
    const sized = runs.map((run) => ({ ...run, size: run.size * scale }));
    this.#add({ kind: 'words', runs: sized, x: left, baseline, align }, place.signRole, place);
  }
}

/** The stretches of a text with the face and size each one inherits; line breaks and indentation of the SVG are no text. */
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
