import { chooseVoice } from '../printed/choose-voice.js';
import { readBars } from '../printed/read-bars.js';
import { readSigns } from '../printed/read-signs.js';
import type { PrintedBar, PrintedNote } from '../printed/types.js';
import type { ReadPartOptions } from '../read-part.js';
import { choosePart } from '../source/choose-part.js';
import { documentIn } from '../source/document-in.js';
import { writeXml } from '../source/write-xml.js';
import { childNamed, type XmlElement } from '../source/xml-element.js';
import { type BeamState, beamsOfBar } from './beams.js';
import { engravable } from './engravable.js';
import { noteTypeOf } from './note-type.js';

/** What stands in a bar but belongs to the page or to playback, and what would merge bars that are counted one by one. */
const LEFT_OUT: ReadonlySet<string> = new Set(['print', 'sound', 'measure-style', 'listening', 'grouping', 'link']);
/** Children of `note` that come before its accidental. */
const BEFORE_ACCIDENTAL: ReadonlySet<string> = new Set(
  'grace cue chord pitch rest unpitched duration tie instrument footnote level voice type dot'.split(' '),
);

/** What the copy writes at notes where the file leaves it to the reader. */
interface Additions {
  readonly notes: ReadonlyMap<string, PrintedNote>;
  readonly signs: ReadonlyMap<string, string>;
  readonly beams: ReadonlyMap<string, BeamState>;
}

/**
 * The part alone as a MusicXML document for an engraver: partwise, each `note` with its `printedId` as id, in written
 * pitch, with the beams, accidentals and note values that a sparse file leaves to the reader, without page layout,
 * credits, lyrics and the part's name. Nothing in it asks for more than a part has, see {@link engravable}.
 *
 * @param bytes whole file, as for `readPart`
 * @param options which part
 * @returns MusicXML text; bar k of it is the printed bar with `barIndex` k
 * @throws InputError as `readPart`
 *
 * Source: MusicXML 4.0 (W3C Community Group final report, 2021).
 */
export function engravingCopy(bytes: Uint8Array, options: ReadPartOptions = {}): string {
  const root = documentIn(bytes);
  const source = choosePart(root, options.part);
  const concertScore = childNamed(childNamed(root, 'defaults') ?? root, 'concert-score') !== undefined;
  const bars = readBars(source.measures, concertScore);
  const additions = additionsTo(bars, source.measures, chooseVoice(bars, options.voice).staff);
  let notesSeen = 0;
  const measures = source.measures.map((measure) => {
    const children = measure.children
      .filter((child) => !LEFT_OUT.has(child.name))
      .map((child) => {
        if (child.name === 'note') return copyOfNote(child, `n${++notesSeen}`, additions);
        return child.name === 'attributes' ? withoutStyles(child) : child;
      })
      .map(engravable)
      .filter((child) => child !== null);
    return { ...measure, children };
  });
  return documentOf(measures);
}

/** A style may draw several bars of rest as one. */
function withoutStyles(attributes: XmlElement): XmlElement {
  return { ...attributes, children: attributes.children.filter(({ name }) => !LEFT_OUT.has(name)) };
}

function documentOf(measures: readonly XmlElement[]): string {
  const bare = (name: string, children: readonly XmlElement[], attributes = {}): XmlElement => {
    return { name, attributes, children, text: '' };
  };
  const partName = bare('part-name', [], { 'print-object': 'no' });
  const list = bare('part-list', [bare('score-part', [partName], { id: 'P1' })]);
  const part = bare('part', measures, { id: 'P1' });
  const score = bare('score-partwise', [list, part], { version: '4.0' });
  return `<?xml version="1.0" encoding="UTF-8"?>\n${writeXml(score)}\n`;
}

function additionsTo(bars: readonly PrintedBar[], measures: readonly XmlElement[], staff: string): Additions {
  const readings = readSigns(bars, staff);
  const signs = [...readings].flatMap(([id, { sign }]) =>
    sign === null || sign === 'other' ? [] : ([[id, sign]] as const),
  );
  const beamed = measures.some((bar) => bar.children.some((note) => childNamed(note, 'beam') !== undefined));
  return {
    notes: new Map(bars.flatMap((bar) => bar.notes.map((note) => [note.id, note] as const))),
    signs: new Map(signs),
    beams: new Map(beamed ? [] : bars.flatMap((bar) => [...beamsOfBar(bar)])),
  };
}

function copyOfNote(element: XmlElement, id: string, { notes, signs, beams }: Additions): XmlElement {
  const has = (name: string): boolean => childNamed(element, name) !== undefined;
  const made = (name: string, text = ''): XmlElement => ({ name, text, attributes: {}, children: [] });
  const printed = notes.get(id);
  const value = printed === undefined || has('type') || has('grace') ? null : noteTypeOf(printed.duration);
  const sign = has('accidental') ? undefined : signs.get(id);
  const beam = beams.get(id);
  const children = element.children.filter((child) => child.name !== 'lyric' && child.name !== 'listen');
  const before = children.filter((child) => BEFORE_ACCIDENTAL.has(child.name));
  const after = children.filter((child) => !BEFORE_ACCIDENTAL.has(child.name));
  const notationsAt = after.findIndex((child) => child.name === 'notations');
  const split = notationsAt < 0 ? after.length : notationsAt;
  return {
    ...element,
    attributes: { ...element.attributes, id },
    children: [
      ...before,
      ...(value === null ? [] : [made('type', value.type), ...Array.from({ length: value.dots }, () => made('dot'))]),
      ...(sign === undefined ? [] : [made('accidental', sign)]),
      ...after.slice(0, split),
      ...(beam === undefined ? [] : [{ ...made('beam', beam), attributes: { number: '1' } }]),
      ...after.slice(split),
    ],
  };
}
