import { childNamed, childNumber, childrenNamed, type XmlElement } from '../source/xml-element.js';
import { isTempo } from './is-tempo.js';
import { readMetronome } from './read-metronome.js';
import { dynamicName } from './read-note-signs.js';
import { type DraftRoute, routeOfDirection, routeOfSound } from './read-route.js';
import type { MarkContent } from './types.js';

/** What one direction says: marks at its place, and signs that send the player elsewhere. */
export interface DirectionContent {
  readonly marks: readonly MarkContent[];
  readonly route: Partial<DraftRoute>;
  /** distance from the place where it stands in the file to the place meant, in divisions */
  readonly offsetDivisions: number;
}

/** Dynamics that were typed as plain text. */
const DYNAMIC_IN_WORDS = /^(p{1,4}|mp|mf|f{1,4}|sfz?|fp|fz|rfz?)$/;

/**
 * @param element `direction`, or a `sound` that stands by itself in a bar
 * @returns its content
 *
 * Source: MusicXML 4.0, `direction`, `direction-type`, `sound`, `offset`.
 */
export function readDirection(element: XmlElement): DirectionContent {
  if (element.name === 'sound') {
    return { marks: soundMarks(element, true), route: routeOfSound(element), offsetDivisions: 0 };
  }
  const types = childrenNamed(element, 'direction-type').flatMap((type) => type.children);
  const words = types
    .filter((type) => type.name === 'words')
    .map((type) => type.text)
    .join(' ')
    .replace(/\s+/g, ' ')
    .trim();
  const marks = types.flatMap(markOf);
  if (DYNAMIC_IN_WORDS.test(words)) marks.unshift({ kind: 'dynamic', name: words });
  else if (words !== '') marks.unshift({ kind: 'words', text: words });
  const sound = childNamed(element, 'sound');
  const hidden = words === '' && !marks.some((mark) => mark.kind === 'metronome' || mark.kind === 'modulation');
  if (sound !== undefined) marks.push(...soundMarks(sound, hidden));
  return { marks, route: routeOfDirection(types, words, sound), offsetDivisions: childNumber(element, 'offset') ?? 0 };
}

function soundMarks(sound: XmlElement, hidden: boolean): MarkContent[] {
  const quarterBpm = Number(sound.attributes.tempo ?? Number.NaN);
  return isTempo(quarterBpm) ? [{ kind: 'sound-tempo', quarterBpm, hidden }] : [];
}

function markOf(type: XmlElement): MarkContent[] {
  const { type: kind = '', number = '1' } = type.attributes;
  if (type.name === 'dynamics') return [{ kind: 'dynamic', name: dynamicName(type) }];
  if (type.name === 'metronome') return readMetronome(type);
  if (type.name === 'wedge' && (kind === 'crescendo' || kind === 'diminuendo' || kind === 'stop')) {
    return [{ kind: 'wedge', type: kind, number }];
  }
  if (type.name === 'dashes' && (kind === 'start' || kind === 'stop')) return [{ kind: 'dashes', type: kind, number }];
  return [];
}
