import { childNamed, childNumber, childrenNamed, childText, type XmlElement } from '../source/xml-element.js';
import { isTempo } from './is-tempo.js';
import { dotted, quartersOfType } from './note-values.js';
import type { MarkContent } from './types.js';

/**
 * A metronome mark (unit = number) or a metric modulation (old unit = new unit, read from left to right).
 *
 * @param metronome `metronome` element
 * @returns one mark, none when it cannot be read
 *
 * Source: MusicXML 4.0, `metronome`, `beat-unit`, `per-minute`, `metronome-note`; left = old, right = new: common practice.
 */
export function readMetronome(metronome: XmlElement): MarkContent[] {
  const notes = metronomeNotes(metronome);
  const units = notes ?? beatUnits(metronome);
  const [left, right] = units;
  if (left === undefined) return [];
  if (right !== undefined) return [{ kind: 'modulation', factor: right / left }];
  const perMinute = numberIn(childText(metronome, 'per-minute'));
  const quarterBpm = (perMinute ?? 0) * left;
  return isTempo(quarterBpm) ? [{ kind: 'metronome', quarterBpm, unitQuarters: left }] : [];
}

/** "96", "c. 96", "ca. 60–66" (the middle). */
function numberIn(text: string): number | null {
  const numbers = (text.match(/\d+(?:[.,]\d+)?/g) ?? []).map((n) => Number(n.replace(',', '.')));
  const [low, high] = numbers;
  if (low === undefined) return null;
  return high === undefined ? low : (low + high) / 2;
}

/** Lengths of the beat units in quarters: a unit and the dots after it. */
function beatUnits(metronome: XmlElement): number[] {
  const units: { quarters: number; dots: number }[] = [];
  for (const child of metronome.children) {
    if (child.name === 'beat-unit') {
      const quarters = quartersOfType(child.text);
      if (quarters !== null) units.push({ quarters, dots: 0 });
    }
    const last = units.at(-1);
    if (child.name === 'beat-unit-dot' && last !== undefined) last.dots++;
  }
  return units.map((unit) => dotted(unit.quarters, unit.dots));
}

/** Both sides of a relation written with metronome notes, summed, in quarters; null when it is not written so. */
function metronomeNotes(metronome: XmlElement): number[] | null {
  if (childNamed(metronome, 'metronome-note') === undefined) return null;
  const sides = [0];
  for (const child of metronome.children) {
    if (child.name === 'metronome-relation') sides.push(0);
    if (child.name === 'metronome-note') sides[sides.length - 1] = (sides.at(-1) ?? 0) + metronomeNoteQuarters(child);
  }
  return sides.every((quarters) => quarters > 0) ? sides : [];
}

function metronomeNoteQuarters(note: XmlElement): number {
  const quarters = quartersOfType(childText(note, 'metronome-type')) ?? 0;
  const written = dotted(quarters, childrenNamed(note, 'metronome-dot').length);
  const tuplet = childNamed(note, 'metronome-tuplet');
  if (tuplet === undefined) return written;
  return (written * (childNumber(tuplet, 'normal-notes') ?? 1)) / (childNumber(tuplet, 'actual-notes') ?? 1);
}
