import type { Packet } from './track.js';

/** Packets that are decoded together. */
export interface Batch {
  /** the first of them only warm the decoder up; the last batch may be longer */
  readonly packets: readonly Packet[];
  /** how many only warm up */
  readonly warming: number;
}

/**
 * Cuts a track into batches, so that a long take is never decoded all at once.
 *
 * @param packets in order
 * @param size packets in a batch
 * @param warming packets before it that its decoder has to have seen
 * @returns batches of at least `size` packets beside those that warm up, unless there are fewer in all
 */
export async function* batches(packets: AsyncIterable<Packet>, size: number, warming: number): AsyncGenerator<Batch> {
  let before: readonly Packet[] = [];
  let held: Packet[] = [];
  for await (const packet of packets) {
    held.push(packet);
    // One batch stays behind, so that the last one is never too short to be recognised.
    if (held.length < size * 2) continue;
    const now = held.slice(0, size);
    yield { packets: [...before, ...now], warming: before.length };
    before = now.slice(now.length - warming);
    held = held.slice(size);
  }
  if (held.length > 0) yield { packets: [...before, ...held], warming: before.length };
}

/**
 * @param packets any
 * @returns their bytes one behind the other
 */
export function joined(packets: readonly { readonly data: Uint8Array }[]): Uint8Array {
  const whole = new Uint8Array(packets.reduce((sum, { data }) => sum + data.length, 0));
  let at = 0;
  for (const { data } of packets) {
    whole.set(data, at);
    at += data.length;
  }
  return whole;
}
