import type { VoiceName } from './types.js';

/** How an instrument sounds. */
export interface Voice {
  /** amplitude of a harmonic relative to the first, at a fundamental in Hz and a brightness of 0 (soft) to 1 (loud) */
  readonly harmonic: (number: number, hz: number, brightness: number) => number;
  /** the instrument's own loud and soft registers, dB at a sounding MIDI number */
  readonly registerDb: (midi: number) => number;
  readonly attackSeconds: number;
  readonly releaseSeconds: number;
  /** breath noise under the tone, dB */
  readonly breathDb: number;
}

const fromDb = (db: number): number => 10 ** (db / 20);
const bell = (x: number, centre: number, width: number): number => Math.exp(-(((x - centre) / width) ** 2));

/** Odd harmonics stand out in the low register, less and less above it; throat tones are weak. */
const clarinet: Voice = {
  harmonic: (k, hz, brightness) => {
    const evenDb = k % 2 === 0 ? -26 + 14 * Math.min(1, Math.max(0, (hz - 180) / 500)) : 0;
    const fallDb = (13 - 6 * brightness) * Math.log2(k);
    const cutDb = 9 * Math.max(0, Math.log2((k * hz) / 2500));
    return fromDb(evenDb - fallDb - cutDb);
  },
  registerDb: (midi) => -2.5 * bell(midi, 66.5, 2.5) + 1.5 * bell(midi, 79, 5),
  attackSeconds: 0.02,
  releaseSeconds: 0.035,
  breathDb: -42,
};

/** Nearly a sine when soft; louder with every step upwards. */
const flute: Voice = {
  harmonic: (k, hz, brightness) =>
    fromDb(-(15 - 7 * brightness) * Math.log2(k) - 6 * Math.max(0, Math.log2((k * hz) / 3500))),
  registerDb: (midi) => Math.max(-4, Math.min(4, 0.25 * (midi - 77))),
  attackSeconds: 0.04,
  releaseSeconds: 0.05,
  breathDb: -34,
};

/** A broad formant near 1 kHz that moves up and opens when loud. */
function formantDb(hz: number, brightness: number): number {
  const octaves = Math.log2(hz / (800 + 900 * brightness));
  return octaves > 0 ? -(16 - 8 * brightness) * octaves : 2 * octaves;
}

const brass: Voice = {
  harmonic: (k, hz, brightness) => fromDb(formantDb(k * hz, brightness) - formantDb(hz, brightness)),
  registerDb: (midi) => Math.max(-3, Math.min(3, 0.12 * (midi - 60))),
  attackSeconds: 0.028,
  releaseSeconds: 0.04,
  breathDb: -46,
};

/**
 * Spectra of the kind the instruments have, not of any one instrument.
 *
 * Source: Fletcher & Rossing, The Physics of Musical Instruments, for the shapes (odd harmonics, formant, brightening
 * with level), from memory; the numbers are the project's own.
 */
export const VOICES: Readonly<Record<VoiceName, Voice>> = { clarinet, flute, brass };
