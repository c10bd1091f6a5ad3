import { type Loops, openLoops } from '../simd/index.js';

/** Frames read at a time. */
const BLOCK_FRAMES = 8192;
const SAMPLE_BYTES = 2;

interface Opened {
  readonly loops: Loops;
  readonly numbers: Uint8Array;
  readonly samples: Float32Array;
}

/** Opened when the first recording is read. */
let opened: Opened | null = null;

/**
 * One channel of numbers of 16 bits, as most recordings have them.
 *
 * @param view the whole file
 * @param at byte of the first sample of the channel
 * @param stride bytes from one sample of it to the next
 * @param out is filled, full scale = ±1
 */
export function readInt16(view: DataView, at: number, stride: number, out: Float32Array): void {
  if (stride > 2 * SAMPLE_BYTES) {
    for (let i = 0, p = at; i < out.length; i++, p += stride) out[i] = view.getInt16(p, true) / 0x8000;
    return;
  }
  opened ??= open();
  const { loops, numbers, samples } = opened;
  for (let from = 0; from < out.length; from += BLOCK_FRAMES) {
    const count = Math.min(BLOCK_FRAMES, out.length - from);
    // the last sample may be the last of the file, whatever channels there are
    const bytes = (count - 1) * stride + SAMPLE_BYTES;
    numbers.set(new Uint8Array(view.buffer, view.byteOffset + at + from * stride, bytes));
    if (stride === SAMPLE_BYTES) loops.fromInt16(numbers.byteOffset, count, samples.byteOffset);
    else loops.fromEveryOtherInt16(numbers.byteOffset, count, samples.byteOffset);
    out.set(samples.subarray(0, count), from);
  }
}

function open(): Opened {
  const { loops, memory } = openLoops({ numbers: BLOCK_FRAMES, samples: BLOCK_FRAMES });
  const { buffer, byteOffset } = memory.numbers;
  return {
    loops,
    numbers: new Uint8Array(buffer, byteOffset, 2 * SAMPLE_BYTES * BLOCK_FRAMES),
    samples: memory.samples,
  };
}
