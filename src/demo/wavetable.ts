import { midiToHz } from '../base/index.js';
import { seededRandom } from './random.js';
import type { VoiceName } from './types.js';
import { VOICES } from './voices.js';

/** Samples of one period; one more repeats the first, for interpolation. */
export const TABLE_SIZE = 2048;

/** Steps of brightness that have a table of their own. */
const BRIGHTNESS_STEPS = 12;
const MOST_HARMONICS = 48;
const HIGHEST_HARMONIC_HZ = 10000;

const SINE = Float64Array.from({ length: TABLE_SIZE }, (_, i) => Math.sin((2 * Math.PI * i) / TABLE_SIZE));

/** The harmonics start apart, always in the same way, so that tables of one pitch can be blended. */
const PHASES = phases();

function phases(): number[] {
  const random = seededRandom(1962);
  return Array.from({ length: MOST_HARMONICS + 1 }, () => Math.floor(random.uniform() * TABLE_SIZE));
}

function buildTable(voice: VoiceName, midi: number, brightness: number, sampleRateHz: number): Float32Array {
  const hz = midiToHz(midi);
  const highest = Math.min(HIGHEST_HARMONIC_HZ, sampleRateHz * 0.45);
  const count = Math.max(1, Math.min(MOST_HARMONICS, Math.floor(highest / hz)));
  const table = new Float64Array(TABLE_SIZE);
  let power = 0;
  for (let k = 1; k <= count; k++) {
    const amplitude = VOICES[voice].harmonic(k, hz, brightness);
    const phase = PHASES[k] as number;
    power += (amplitude * amplitude) / 2;
    for (let i = 0; i < TABLE_SIZE; i++) {
      table[i] = (table[i] as number) + amplitude * (SINE[(i * k + phase) & (TABLE_SIZE - 1)] as number);
    }
  }
  const scale = 1 / Math.sqrt(power);
  return Float32Array.from({ length: TABLE_SIZE + 1 }, (_, i) => (table[i % TABLE_SIZE] as number) * scale);
}

const tables = new Map<string, Float32Array>();

/**
 * @param voice which instrument
 * @param midi sounding pitch; the table of the nearest semitone serves
 * @param brightness 0 (soft) to 1 (loud)
 * @param sampleRateHz no harmonic comes near half of it
 * @returns one period of TABLE_SIZE samples and the first once more, RMS 1; kept for the next call, do not change it
 *
 * Source: additive synthesis, by definition.
 */
export function wavetable(voice: VoiceName, midi: number, brightness: number, sampleRateHz: number): Float32Array {
  const semitone = Math.round(midi);
  const step = Math.round(Math.max(0, Math.min(1, brightness)) * BRIGHTNESS_STEPS);
  const key = `${voice} ${semitone} ${step} ${sampleRateHz}`;
  const known = tables.get(key);
  if (known) return known;
  const table = buildTable(voice, semitone, step / BRIGHTNESS_STEPS, sampleRateHz);
  tables.set(key, table);
  return table;
}
