import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/judge/observed/observation.js';
import { shareCauses } from '../../src/judge/share-causes.js';

const group = (bar: string, index: number, weight: 'fix' | 'watch' = 'fix'): Observation => ({
  kind: 'uneven-group',
  criterion: 'rhythm',
  weight,
  size: 1,
  bar,
  pass: 1,
  index,
  facts: { notes: 3, tuplet: true, which: 0, share: 0.46, written: 1 / 3 },
});

const wrong = (bar: string, index: number): Observation => ({
  kind: 'wrong-note',
  criterion: 'notes',
  weight: 'fix',
  size: 1,
  bar,
  pass: 1,
  index,
  facts: { written: 'C', played: 'D', octave: null },
});

// Source: definition (a habit is one thing to work on; a wrong note is a matter of its own)
describe('findings that share a cause', () => {
  it('are led by the most useful one, which names the other bars in the order of the music', () => {
    const led = shareCauses([group('9', 40), group('14', 60), group('6', 20)]);
    expect(led.map((l) => l.observation.weight)).toEqual(['fix', 'watch', 'watch']);
    expect(led[0]!.alsoInBars).toEqual(['6', '14']);
    expect(led[1]!.alsoInBars).toEqual([]);
  });

  it('keep what each of them would weigh by itself', () => {
    const led = shareCauses([group('9', 40), group('14', 60), group('6', 20, 'watch')]);
    expect(led.map((l) => l.ownWeight)).toEqual([undefined, 'fix', 'watch']);
  });

  it('keep what was only watched as it is, and out of the sentence', () => {
    const led = shareCauses([group('9', 40), group('6', 20, 'watch')]);
    expect(led.map((l) => l.observation.weight)).toEqual(['fix', 'watch']);
    expect(led[0]!.alsoInBars).toEqual([]);
  });

  it('leave wrong notes alone', () => {
    const led = shareCauses([wrong('3', 4), wrong('5', 9)]);
    expect(led.every((l) => l.observation.weight === 'fix' && l.alsoInBars.length === 0)).toBe(true);
  });

  it('name a bar once, and never the leader’s own', () => {
    const led = shareCauses([group('9', 40), group('9', 44), group('6', 20), group('6', 24)]);
    expect(led[0]!.alsoInBars).toEqual(['6']);
  });
});
