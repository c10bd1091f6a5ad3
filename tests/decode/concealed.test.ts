import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { concealing } from '../../src/decode/readers/concealed.js';
import { stretchOf } from '../../src/decode/readers/stretch.js';

const FRAMES = 4;

/** A coding invented for this test: a packet is a number, its sound that number four times; negative ones are damaged. */
function coding(asked: number[] = []) {
  return {
    frames: FRAMES,
    channels: 1,
    warming: 2,
    decode: async (packets: readonly number[]) => {
      asked.push(packets.length);
      if (packets.some((packet) => packet === -1)) throw new Error('damaged');
      // some decoders leave out what they cannot follow
      const sound = packets.filter((packet) => packet >= 0).flatMap((packet) => Array(FRAMES).fill(packet));
      return stretchOf([Float32Array.from(sound)]);
    },
  };
}

async function heard(batches: readonly (readonly number[])[]) {
  const samples: number[] = [];
  const lostAt: number[] = [];
  const decoded = concealing(coding(), () => lostAt.push(samples.length / FRAMES));
  for (const packets of batches) {
    for await (const stretch of decoded(packets)) {
      const out = new Float32Array(stretch.frames);
      stretch.read(0, 0, out);
      samples.push(...out);
    }
  }
  const packets = samples.filter((_, i) => i % FRAMES === 0);
  expect(samples).toEqual(packets.flatMap((packet) => Array(FRAMES).fill(packet)));
  return { packets, lostAt };
}

describe('damaged packets', () => {
  it('are none in a sound file, which is decoded in one go, warmed up by what came before', async () => {
    const asked: number[] = [];
    const decoded = concealing(coding(asked), () => expect.unreachable());
    for (const packets of [
      [1, 2, 3, 4],
      [5, 6, 7],
    ])
      for await (const _ of decoded(packets));
    expect(asked).toEqual([4, 2 + 3]);
  });

  it.each([-1, -2])('become silence of their own length, and all others stay (%i)', async (bad) => {
    expect(await heard([[1, 2, 3, bad, 5, 6, 7, 8], [9, bad, bad, 12], [13]])).toEqual({
      packets: [1, 2, 3, 0, 5, 6, 7, 8, 9, 0, 0, 12, 13],
      lostAt: [3, 9, 10],
    });
    expect((await heard([[bad, 2, 3]])).packets).toEqual([0, 2, 3]);
    expect((await heard([[1, 2, bad]])).packets).toEqual([1, 2, 0]);
  });

  it('are too many from the thirteenth on', async () => {
    const sick = (count: number) => Array.from({ length: 40 }, (_, i) => (i % 3 === 0 && i < 3 * count ? -1 : i));
    expect((await heard([sick(12)])).lostAt).toHaveLength(12);
    await expect(heard([sick(13)])).rejects.toThrow('too many');
  });

  it('are not looked for where the decoder itself cannot work', async () => {
    const broken = { ...coding(), decode: () => Promise.reject(new InputError('sound-library-missing')) };
    await expect(concealing(broken, () => {})([1, 2]).next()).rejects.toMatchObject({ code: 'sound-library-missing' });
  });
});
