import fc from 'fast-check';
import { anywhere } from './how-much.js';
import { ODD_NUMBERS, ODD_TEXTS } from './odd-words.js';

/** One thing that happens to a document: its text in, the damaged text out. It mostly stays well-formed. */
type Damage = (xml: string) => string;

/** From the first to the last character of an element, its tags included. */
interface Span {
  readonly from: number;
  readonly to: number;
}

const oneOf = <T>(all: readonly T[], at: number): T | undefined => all[Math.floor(at * all.length)];

/** Every element below the root, by counting tags; a document without any has none. */
function elementsOf(xml: string): Span[] {
  const open: { name: string; from: number }[] = [];
  const spans: Span[] = [];
  for (const tag of xml.matchAll(/<(\/?)([A-Za-z][\w-]*)(?:[^<>"]|"[^"]*")*?(\/?)>/g)) {
    const [whole, closing, name = '', empty] = tag;
    if (closing === '' && empty === '') open.push({ name, from: tag.index });
    else if (empty !== '') spans.push({ from: tag.index, to: tag.index + whole.length });
    else if (open.at(-1)?.name === name) spans.push({ from: open.pop()!.from, to: tag.index + whole.length });
  }
  return spans.filter(({ to }) => to < xml.trimEnd().length);
}

const replaced = (xml: string, { from, to }: Span, by: string): string => xml.slice(0, from) + by + xml.slice(to);

/** Changes one of the places a pattern finds; its first group is what is replaced. */
function atMatch(pattern: RegExp, at: number, by: string): Damage {
  return (xml) => {
    const match = oneOf([...xml.matchAll(pattern)], at);
    if (match?.[1] === undefined) return xml;
    const from = match.index + match[0].indexOf(match[1]);
    return replaced(xml, { from, to: from + match[1].length }, by);
  };
}

const oddWords = fc.constantFrom(...ODD_NUMBERS, ...ODD_TEXTS);
const numberInText = fc
  .tuple(anywhere, fc.constantFrom(...ODD_NUMBERS))
  .map(([at, by]) => atMatch(/>(-?[\d.]+)</g, at, by));
const textChanged = fc.tuple(anywhere, oddWords).map(([at, by]) => atMatch(/>([^<>]+)</g, at, by));
const attributeChanged = fc.tuple(anywhere, oddWords).map(([at, by]) => atMatch(/="([^"]*)"/g, at, by));
const renamed = fc
  .tuple(anywhere, fc.constantFrom('note', 'measure', 'part', 'repeat', 'ending', 'wedge', 'x', 'a:b', '-', 'valueOf'))
  .map(([at, by]) => atMatch(/<([A-Za-z][\w-]*)\/>/g, at, by));

const removed = anywhere.map(
  (at): Damage =>
    (xml) => {
      const span = oneOf(elementsOf(xml), at);
      return span === undefined ? xml : replaced(xml, span, '');
    },
);

const repeated = fc.tuple(anywhere, fc.constantFrom(1, 2, 3, 50)).map(
  ([at, times]): Damage =>
    (xml) => {
      const span = oneOf(elementsOf(xml), at);
      return span === undefined ? xml : replaced(xml, span, xml.slice(span.from, span.to).repeat(times + 1));
    },
);

const moved = fc.tuple(anywhere, anywhere).map(
  ([at, to]): Damage =>
    (xml) => {
      const [span, target] = [oneOf(elementsOf(xml), at), oneOf(elementsOf(xml), to)];
      if (span === undefined || target === undefined) return xml;
      return replaced(xml, { from: target.from, to: target.from }, xml.slice(span.from, span.to));
    },
);

const wrapped = fc.tuple(anywhere, fc.constantFrom(1, 20, 99, 300, 5000)).map(
  ([at, depth]): Damage =>
    (xml) => {
      const span = oneOf(elementsOf(xml), at);
      if (span === undefined) return xml;
      return replaced(xml, span, '<w>'.repeat(depth) + xml.slice(span.from, span.to) + '</w>'.repeat(depth));
    },
);

/** What MusicXML has to say of repeats, endings, jumps, lines and levels, put where it does not belong. */
const SIGNS = [
  '<barline location="left"><repeat direction="forward"/></barline>',
  '<barline location="right"><repeat direction="backward" times="30"/></barline>',
  '<barline location="left"><ending number="1,2, 7" type="start"/></barline>',
  '<barline location="right"><ending number="9-1" type="discontinue"/></barline>',
  '<sound dacapo="yes"/>',
  '<direction><direction-type><segno/></direction-type><sound segno="1" dalsegno="1" tocoda="1" coda="1" fine="1"/></direction>',
  '<direction><direction-type><wedge type="crescendo" number="6"/></direction-type><offset>-1e9</offset></direction>',
  '<direction><direction-type><wedge type="stop"/></direction-type></direction>',
  '<direction><direction-type><dashes type="start"/><words>dim. al niente</words></direction-type></direction>',
  '<direction><direction-type><metronome><beat-unit>long</beat-unit><per-minute>c. 0</per-minute></metronome></direction-type></direction>',
  '<direction><direction-type><octave-shift type="down" size="22"/></direction-type></direction>',
  '<attributes><divisions>0</divisions></attributes>',
  '<attributes><time><beats>3+2</beats><beat-type>0</beat-type></time></attributes>',
  '<attributes><key><fifths>99</fifths></key><transpose><chromatic>-99</chromatic><octave-change>9</octave-change></transpose></attributes>',
  '<attributes><measure-style><multiple-rest>100000000</multiple-rest></measure-style></attributes>',
  '<backup><duration>1000000</duration></backup>',
  '<forward><duration>1e300</duration></forward>',
  '<note><grace/><pitch><step>H</step><octave>4</octave></pitch></note>',
  '<note><pitch><step>C</step><alter>0.5</alter><octave>99</octave></pitch><duration>1</duration><tie type="start"/></note>',
  '<note><chord/><rest measure="yes"/><duration>-4</duration></note>',
];

const signPutIn = fc.tuple(anywhere, fc.constantFrom(...SIGNS)).map(
  ([at, sign]): Damage =>
    (xml) => {
      const places = [...xml.matchAll(/<(?:note|barline|direction|\/measure)\b/g)];
      const from = oneOf(places, at)?.index;
      return from === undefined ? xml : replaced(xml, { from, to: from }, sign);
    },
);

/**
 * @param valid documents that can be read
 * @returns one of them, damaged in one to six ways: odd numbers and texts, elements removed, repeated, moved and wrapped,
 *   signs put where they do not belong
 */
export function damagedXml(valid: readonly string[]): fc.Arbitrary<string> {
  const damage = fc.oneof(
    { arbitrary: numberInText, weight: 3 },
    { arbitrary: signPutIn, weight: 3 },
    textChanged,
    attributeChanged,
    renamed,
    removed,
    repeated,
    moved,
    wrapped,
  );
  return fc
    .tuple(fc.constantFrom(...valid), fc.array(damage, { minLength: 1, maxLength: 6 }))
    .map(([xml, damages]) => damages.reduce((text, one) => (text.length > 300_000 ? text : one(text)), xml));
}
