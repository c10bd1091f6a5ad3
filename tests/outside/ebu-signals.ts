/**
 * Minimum requirements test signals of EBU Tech 3341 (2016), table 1, synthesised from their description: a stereo sine of
 * 1000 Hz at 48 kHz, the same in both channels, at levels given as peaks in dBFS, one stretch after the other.
 */
export interface EbuSignal {
  /** number of the test case in the table */
  readonly number: number;
  readonly stretches: readonly (readonly [dbfs: number, seconds: number])[];
  /** programme loudness the table expects, LUFS ± 0.1; null where it expects another measure */
  readonly integratedLufs: number | null;
}

const tenfold = Array.from({ length: 5 }, () => [[-20, 1.34] as const, [-30, 1.66] as const]).flat();

/** Cases 1, 2, 3, 4, 5 and 9; the others need more channels, programme material or true peaks. */
export const EBU_SIGNALS: readonly EbuSignal[] = [
  { number: 1, stretches: [[-23, 20]], integratedLufs: -23 },
  { number: 2, stretches: [[-33, 20]], integratedLufs: -33 },
  {
    number: 3,
    stretches: [
      [-36, 10],
      [-23, 60],
      [-36, 10],
    ],
    integratedLufs: -23,
  },
  {
    number: 4,
    stretches: [
      [-72, 10],
      [-36, 10],
      [-23, 60],
      [-36, 10],
      [-72, 10],
    ],
    integratedLufs: -23,
  },
  {
    number: 5,
    stretches: [
      [-26, 20],
      [-20, 20.1],
      [-26, 20],
    ],
    integratedLufs: -23,
  },
  { number: 9, stretches: tenfold, integratedLufs: null },
];

const EBU_RATE = 48_000;

/** Frames of one period of the sine. */
const PERIOD_FRAMES = EBU_RATE / 1000;

function onePeriod(peak: number, channels: 1 | 2): Buffer {
  const period = Buffer.alloc(PERIOD_FRAMES * 3 * channels);
  for (let sample = 0; sample < PERIOD_FRAMES * channels; sample++) {
    const frame = Math.floor(sample / channels);
    period.writeIntLE(Math.round(peak * Math.sin((2 * Math.PI * frame) / PERIOD_FRAMES)), 3 * sample, 3);
  }
  return period;
}

/**
 * @param signal one of the table
 * @param channels 2 as the table asks, or 1
 * @returns a WAV file of 24 bit PCM; header after Microsoft & IBM (1991)
 */
export function ebuWav({ stretches }: EbuSignal, channels: 1 | 2): Uint8Array {
  const frames = stretches.map(([, seconds]) => Math.round(seconds * EBU_RATE));
  const bytes = Buffer.alloc(44 + frames.reduce((sum, count) => sum + count, 0) * 3 * channels);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(channels, 22);
  bytes.writeUInt32LE(EBU_RATE, 24);
  bytes.writeUInt32LE(EBU_RATE * 3 * channels, 28);
  bytes.writeUInt16LE(3 * channels, 32);
  bytes.writeUInt16LE(24, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(bytes.length - 44, 40);
  let at = 44;
  stretches.forEach(([dbfs], k) => {
    // every stretch is a whole number of periods of 48 frames, so it is one period again and again
    const end = at + frames[k]! * 3 * channels;
    bytes.fill(onePeriod(0x7fffff * 10 ** (dbfs / 20), channels), at, end);
    at = end;
  });
  return bytes;
}
