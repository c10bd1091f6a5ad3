import { childNamed, childNumber, childrenNamed, type XmlElement } from '../source/xml-element.js';
import type { Articulation } from '../types.js';
import type { NoteSigns, SpanEnd, TupletEnd } from './types.js';

const ARTICULATIONS: ReadonlySet<string> = new Set([
  'staccato',
  'staccatissimo',
  'tenuto',
  'accent',
  'strong-accent',
  'detached-legato',
] satisfies Articulation[]);

/** Signs that only go with an ornament, and the ones that sound like the plain note. */
const NOT_ORNAMENTS: ReadonlySet<string> = new Set(['accidental-mark', 'other-ornament']);

const NO_SIGNS: NoteSigns = {
  slurs: [],
  tuplets: [],
  articulations: [],
  fermata: false,
  breathAfter: null,
  ornament: null,
  dynamics: [],
};

/**
 * @param note `note` element
 * @returns everything its `notations` say
 *
 * Source: MusicXML 4.0, `notations`.
 */
export function readNoteSigns(note: XmlElement): NoteSigns {
  const notations = childrenNamed(note, 'notations');
  if (notations.length === 0) return NO_SIGNS;
  const signs = notations.flatMap((group) => group.children);
  const articulations = signs.filter((sign) => sign.name === 'articulations').flatMap((group) => group.children);
  const ornaments = signs.filter((sign) => sign.name === 'ornaments').flatMap((group) => group.children);
  return {
    slurs: signs.filter((sign) => sign.name === 'slur').flatMap(spanEnd),
    tuplets: signs.filter((sign) => sign.name === 'tuplet').flatMap(tupletEnd),
    articulations: [...new Set(articulations.map((sign) => sign.name))].filter(isArticulation),
    fermata: signs.some((sign) => sign.name === 'fermata'),
    breathAfter: breathIn(articulations),
    ornament: ornaments.find((sign) => !NOT_ORNAMENTS.has(sign.name))?.name ?? null,
    dynamics: signs.filter((sign) => sign.name === 'dynamics').map(dynamicName),
  };
}

/**
 * @param dynamics `dynamics` element
 * @returns the mark it prints: its children side by side, `<f/><p/>` being fp
 *
 * Source: MusicXML 4.0, `dynamics`: "combinations such as sffz can be created by multiple elements".
 */
export function dynamicName(dynamics: XmlElement): string {
  return dynamics.children
    .map((child) => (child.name === 'other-dynamics' ? child.text : child.name))
    .join('')
    .trim();
}

function isArticulation(name: string): name is Articulation {
  return ARTICULATIONS.has(name);
}

function breathIn(articulations: readonly XmlElement[]): 'breath' | 'caesura' | null {
  if (articulations.some((sign) => sign.name === 'caesura')) return 'caesura';
  return articulations.some((sign) => sign.name === 'breath-mark') ? 'breath' : null;
}

function spanEnd(sign: XmlElement): SpanEnd[] {
  const { type, number = '1' } = sign.attributes;
  return type === 'start' || type === 'stop' ? [{ type, number }] : [];
}

function tupletEnd(sign: XmlElement): TupletEnd[] {
  return spanEnd(sign).map((end) => ({
    ...end,
    actualNotes: tupletNumber(sign, 'tuplet-actual'),
    normalNotes: tupletNumber(sign, 'tuplet-normal'),
  }));
}

function tupletNumber(sign: XmlElement, name: string): number | null {
  const side = childNamed(sign, name);
  return side === undefined ? null : childNumber(side, 'tuplet-number');
}
