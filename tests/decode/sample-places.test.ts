import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { samplePlaces } from '../../src/decode/readers/sample-places.js';

const ascii = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const u32 = (...values: readonly number[]): number[] =>
  values.flatMap((value) => [24, 16, 8, 0].map((shift) => (value >>> shift) & 255));
/** Source of the boxes: ISO/IEC 14496-12, 4.2 and 8.7. */
const box = (type: string, ...parts: readonly number[][]): number[] => {
  const inside = parts.flat();
  return [...u32(inside.length + 8), ...ascii(type), ...inside];
};
const full = (type: string, ...values: readonly number[]): number[] => box(type, u32(0, ...values));

/** Packets of these sizes, so many to a chunk, each chunk behind three bytes of something else; the index last. */
function file(sizes: readonly number[], chunks: readonly number[], more: readonly number[][] = []) {
  const data: number[] = [];
  const offsets: number[] = [];
  const packets: Uint8Array[] = [];
  let next = 0;
  for (const count of chunks) {
    data.push(1, 2, 3);
    offsets.push(8 + data.length);
    for (const size of sizes.slice(next, next + count)) {
      const packet = Array.from({ length: size }, (_, i) => (37 * packets.length + i) & 255);
      packets.push(Uint8Array.from(packet));
      data.push(...packet);
    }
    next += count;
  }
  const runs = chunks.flatMap((count, i) => [i + 1, count, 1]);
  const table = box(
    'stbl',
    full('stsz', 0, sizes.length, ...sizes),
    full('stsc', chunks.length, ...runs),
    full('stco', offsets.length, ...offsets),
  );
  const film = box('trak', box('mdia', box('minf', box('stbl', full('stsz', 0, 0)))));
  const moov = box('moov', full('mvhd', 0), film, box('trak', box('mdia', box('minf', table))), ...more);
  return { bytes: Uint8Array.from([...box('mdat', data), ...moov]), packets };
}

const found = ({ bytes, packets }: ReturnType<typeof file>, first = packets[0]!, last = packets.at(-1)!) =>
  samplePlaces(bytes, first, last)?.map(({ at, size }) => bytes.slice(at, at + size)) ?? null;

describe('the places of packets in a file with an index', () => {
  it('are those of its chunks, in order', () => {
    const cut = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(cut, fc.infiniteStream(fc.integer({ min: 1, max: 40 })), (chunks, stream) => {
        const sizes = [...stream.take(chunks.reduce((sum, count) => sum + count, 0))];
        const made = file(sizes, chunks);
        expect(found(made)).toEqual(made.packets);
      }),
    );
  });

  it('are left to others where the index says something else than the reader of the container', () => {
    const made = file([5, 6, 7, 8], [3, 1]);
    expect(found(made, made.packets[1])).toBeNull();
    expect(found(made, made.packets[0], made.packets[2])).toBeNull();
    expect(found(file([5, 6, 7], [3], [box('mvex')]))).toBeNull();
  });

  it('are never beyond the file, whatever is cut off or turned round', () => {
    const made = file([5, 6, 7, 8], [3, 1]);
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 0, max: 255 }), fc.nat(), (at, byte, length) => {
        const bytes = made.bytes.slice(0, 1 + (length % made.bytes.length));
        bytes[at % bytes.length] = byte;
        for (const place of samplePlaces(bytes, made.packets[0]!, made.packets[3]!) ?? []) {
          expect(place.at + place.size).toBeLessThanOrEqual(bytes.length);
        }
      }),
    );
  });
});
