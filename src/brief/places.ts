import type { Part, PartNote } from '../score/index.js';
import type { BriefNode } from './brief-node.js';

/** Bars without a time signature have as many beats as they need. */
const LAST_BEAT = 1_000_000;

/** A beat written with a few decimals is the beat. */
const BEAT_TOLERANCE = 0.04;

/**
 * @param node number of a bar as printed
 * @param part the part
 * @returns the number, when the part has such a bar
 * @throws InputError `bad-brief` when it has none
 */
export function readBar(node: BriefNode, part: Part): string {
  const bar = node.text();
  if (part.bars.some((one) => one.bar === bar)) return bar;
  const [first, last] = [part.bars[0]?.bar, part.bars.reduce((a, b) => (b.barIndex > a.barIndex ? b : a)).bar];
  return node.fail('brief-no-such-bar', { bar, first: first ?? '', last });
}

/**
 * @param node fields `bar`, `beat` and perhaps `pass`
 * @param part the part
 * @returns the notes that begin there, one for every pass unless one is named
 * @throws InputError `bad-brief` when no note begins there
 */
export function readNotePlace(node: BriefNode, part: Part): PartNote[] {
  const fields = node.fields(['bar', 'beat', 'pass']);
  if (fields.bar === undefined || fields.beat === undefined) return node.fail('brief-half-a-place', {});
  const bar = readBar(fields.bar, part);
  const beat = fields.beat.number(0, LAST_BEAT);
  const inBar = part.notes.filter((note) => note.bar === bar && !note.grace);
  const there = inBar.filter((note) => Math.abs(note.beat - beat) < BEAT_TOLERANCE);
  if (there.length === 0) {
    const beats = [...new Set(inBar.map((note) => String(roundBeat(note.beat))))];
    fields.beat.fail('brief-no-note-there', { bar, beat, beats });
  }
  if (fields.pass === undefined) return there;
  const pass = fields.pass.number(1, 1000);
  const passed = there.filter((note) => note.pass === pass);
  if (passed.length > 0) return passed;
  return fields.pass.fail('brief-no-such-pass', { bar, pass, times: there.length });
}

/**
 * @param beat 1-based, fractional
 * @returns the beat with at most two decimals, as a brief writes it
 */
export function roundBeat(beat: number): number {
  return Math.round(beat * 100) / 100;
}
