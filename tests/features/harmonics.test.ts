import { describe, expect, it } from 'vitest';
import { HarmonicsReader, listen } from '../../src/features/index.js';
import { join, silence, sum, takeOf, tone } from '../helpers/tones.js';

const LOWEST = 50;
const PITCHES = 45;

/** Evidence of every semitone from LOWEST on at a time. */
function evidenceAt(samples: Float32Array, seconds: number, tuningCents = 0): Float32Array {
  const features = listen(takeOf(samples), { lowestMidi: 60, highestMidi: 84 });
  const reader = new HarmonicsReader(features, LOWEST + tuningCents / 100, PITCHES);
  return Float32Array.from(reader.read(Math.round(seconds / features.pitchHopSeconds)));
}

function strongest(evidence: Float32Array): number {
  return LOWEST + evidence.indexOf(Math.max(...evidence));
}

describe('the ear for harmonics', () => {
  it.each([60, 64, 69, 76, 81, 84])(
    'hears a tone of MIDI %d at its own semitone, surer than at its octaves',
    (midi) => {
      const evidence = evidenceAt(tone(midi, 0.5, 'all-harmonics', 0.2), 0.25);
      expect(strongest(evidence)).toBe(midi);
      expect(evidence[midi - LOWEST]).toBeCloseTo(1, 5);
      for (const octave of [midi - 12, midi + 12]) expect(evidence[octave - LOWEST] ?? 0).toBeLessThan(0.7);
    },
  );

  it('hears tones of odd harmonics, as of a clarinet, at their own octave', () => {
    for (const midi of [62, 70, 79]) {
      expect(strongest(evidenceAt(tone(midi, 0.5, 'odd-harmonics', 0.2), 0.25))).toBe(midi);
    }
  });

  it('hears a new tone over a softer one that is left in the room, a whole tone away', () => {
    // common practice: in a church a note rings on under the next
    const left = tone(74, 0.8, 'all-harmonics', 0.05);
    const next = join(silence(0.3), tone(76, 0.5, 'all-harmonics', 0.2));
    const evidence = evidenceAt(sum(left, next), 0.55);
    expect(strongest(evidence)).toBe(76);
    expect(evidence[74 - LOWEST]!).toBeLessThan(evidence[76 - LOWEST]!);
  });

  it('follows the tuning of the player', () => {
    const sharp = tone(69.4, 0.5, 'all-harmonics', 0.2);
    expect(strongest(evidenceAt(sharp, 0.25, 40))).toBe(69);
  });

  it('gives the same numbers in whatever order frames are asked for', () => {
    const samples = join(tone(69, 0.3), tone(73, 0.3));
    const features = listen(takeOf(samples), { lowestMidi: 60, highestMidi: 84 });
    const inOrder = new HarmonicsReader(features, LOWEST, PITCHES);
    const frames = [3, 8, 13, 40, 77];
    const rows = frames.map((f) => Array.from(inOrder.read(f)));
    const anyOrder = new HarmonicsReader(features, LOWEST, PITCHES);
    for (const k of [4, 0, 2, 1, 3]) expect(Array.from(anyOrder.read(frames[k]!))).toEqual(rows[k]);
  });
});
