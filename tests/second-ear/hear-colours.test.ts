import { describe, expect, it } from 'vitest';
import { isMeasured } from '../../src/base/index.js';
import { type Colour, hearColours } from '../../src/second-ear/index.js';

const RATE = 44100;

/** A tone of these amplitudes, harmonic by harmonic. */
function tone(hz: number, amplitudes: readonly number[], rate = RATE): Float32Array {
  return Float32Array.from({ length: rate }, (_, i) =>
    amplitudes.reduce(
      (sum, part, k) => sum + 0.3 * part * Math.sin((2 * Math.PI * hz * (k + 1) * i) / rate + k * k),
      0,
    ),
  );
}

async function colourOf(hz: number, amplitudes: readonly number[], rate = RATE): Promise<Colour> {
  const midi = 69 + 12 * Math.log2(hz / 440);
  const [colour] = await hearColours(tone(hz, amplitudes, rate), rate, [{ onset: 0, offset: 1, midi }]);
  if (colour === undefined || !isMeasured<Colour>(colour)) throw new Error('no colour');
  return colour;
}

describe('the colour of a tone', () => {
  // by hand: centroid (1·1 + 2·½ + 3·¼ + 4·⅛) / 1.875; odd 1 + 1/16 over even 1/4 + 1/64
  it('of halves has its numbers by definition', async () => {
    for (const [hz, rate] of [
      [220, RATE],
      [440, 48_000],
      [660, 22_050],
      [440, 96_000],
    ] as const) {
      const colour = await colourOf(hz, [1, 0.5, 0.25, 0.125], rate);
      expect(Math.abs(colour.centroidHarmonics - 3.25 / 1.875)).toBeLessThan(0.05);
      // a harmonic between two bins is read up to 0.2 dB too soft or too loud, and so is another
      expect(Math.abs(colour.oddOverEvenDb - 10 * Math.log10(1.0625 / 0.265625))).toBeLessThan(0.5);
      // Pollard & Jansson 1982: shares of the first, of the second to fourth, of the others
      expect(Math.abs(colour.tristimulus[0] - 1 / 1.875)).toBeLessThan(0.03);
      expect(Math.abs(colour.tristimulus[1] - 0.875 / 1.875)).toBeLessThan(0.03);
      expect(colour.tristimulus[2]).toBeLessThan(0.03);
    }
  });

  it('of more upper harmonics is brighter, and does not depend on loudness', async () => {
    const [dull, bright] = [
      await colourOf(330, [1, 0.3, 0.1, 0.03]),
      await colourOf(330, [1, 0.8, 0.6, 0.5, 0.4, 0.3]),
    ];
    expect(bright.centroidHarmonics).toBeGreaterThan(dull.centroidHarmonics + 1);
    const soft = await colourOf(330, [0.01, 0.003, 0.001, 0.0003]);
    expect(Math.abs(soft.centroidHarmonics - dull.centroidHarmonics)).toBeLessThan(0.05);
  });

  it('is not told of a moment, of silence, of the lowest and of the highest notes', async () => {
    const codes = async (samples: Float32Array, midi: number, offset: number) => {
      const [colour] = await hearColours(samples, RATE, [{ onset: 0, offset, midi }]);
      return colour !== undefined && !isMeasured<Colour>(colour) ? colour.notMeasured.code : 'told';
    };
    const samples = tone(440, [1, 0.5, 0.25]);
    expect(await codes(samples, 69, 0.2)).toBe('second-ear-too-short');
    expect(await codes(new Float32Array(RATE), 69, 1)).toBe('second-ear-unclear');
    expect(await codes(samples, 30, 1)).toBe('second-ear-too-low');
    expect(await codes(samples, 122, 1)).toBe('second-ear-unclear');
  });
});
