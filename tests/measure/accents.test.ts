import { describe, expect, it } from 'vitest';
import { judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import { demoPart, hearTake, middle } from '../helpers/heard-take.js';

/**
 * Accents of the demo's étude, performed with a known strength.
 *
 * Source: the strength the synthesiser was told to give its accents; the law of gain is one of decibels.
 */
const PART = demoPart();

function accentsOf(accentDb: number, gainDb = 0) {
  const heard = hearTake(PART, { roomSeconds: 0, accentDb, gainDb });
  const measured = measureTake(heard);
  return { heard, measured, over: measured.accents.map((a) => a.overDb) };
}

describe('how far accents stand out', () => {
  const plain = accentsOf(3.5);

  it('is told for the accented notes only', () => {
    const accented = PART.notes.filter((n) => n.articulations.includes('accent')).map((n) => n.index);
    expect(accented.length).toBeGreaterThan(2);
    for (const { index } of plain.measured.accents) expect(accented).toContain(index);
  });

  it('grows with the strength they are given, decibel by decibel', () => {
    const more = middle(accentsOf(6.5).over) - middle(plain.over);
    expect(more).toBeGreaterThan(1.5);
    expect(more).toBeLessThan(4);
    expect(middle(plain.over)).toBeGreaterThan(1);
  });

  it('does not depend on the gain of the recording', () => {
    const louder = accentsOf(3.5, 6);
    louder.over.forEach((value, k) => {
      expect(Math.abs(value - plain.over[k]!)).toBeLessThan(0.3);
    });
  });

  it('is worth a listen when nothing stands out, and not mentioned when it does', () => {
    const flat = accentsOf(-3);
    const told = (take: ReturnType<typeof accentsOf>) =>
      judgeTake({ part: PART, alignment: take.heard.alignment, measurements: take.measured }).findings.filter(
        (f) => f.kind === 'accent-weak',
      );
    expect(told(plain)).toEqual([]);
    expect(told(flat).length).toBeGreaterThan(0);
    expect(told(flat).every((f) => f.weight === 'watch')).toBe(true);
  });
});
