import type { Criterion } from '../judge/index.js';
import { type MeasureId, STANDARDS } from '../standards/index.js';

/** Where a number is meant to lie; null is open. */
export interface Wanted {
  readonly low: number | null;
  readonly high: number | null;
}

/** What is taken for the scatter of one take until the takes themselves tell more. */
export interface WorkingNoise {
  /** standard deviation of the measuring alone */
  readonly measuring: number;
  readonly measuringSource: string;
  /** standard deviation of a player from one take to the next on one day: a working value */
  readonly playing: number;
}

/** One measure. */
export interface Measure {
  readonly id: MeasureId;
  readonly criterion: Criterion;
  readonly unit: string;
  readonly wanted: Wanted;
  /** the usual standards, drawn as dashed lines */
  readonly usual: readonly number[];
  readonly noise: WorkingNoise;
}

/** A median of absolute errors times this is the standard deviation of normal errors. Source: Rousseeuw & Croux 1993. */
const FROM_MEDIAN = 1.4826;
const ON_TRUTH = 'on takes with known truth, see tests/measure/README.md';
const MOST = (high: number) => ({ low: null, high });
const LEAST = (low: number) => ({ low, high: null });
const AT = (value: number) => ({ low: value, high: value });

/** The measures in the order of every page. Source of each working noise: beside it; players' scatter: working values. */
export const MEASURES: readonly Measure[] = [
  {
    ...{ id: 'as-written', criterion: 'notes', unit: '%', wanted: LEAST(100), usual: [] },
    noise: { measuring: 0.8, measuringSource: `99.2 % of notes called rightly ${ON_TRUTH}`, playing: 1 },
  },
  {
    ...{ id: 'evenness', criterion: 'rhythm', unit: '%', wanted: MOST(0), usual: [100 * STANDARDS.groupWatch.value] },
    noise: { measuring: 1, measuringSource: `onsets within 2 to 7 ms (median) ${ON_TRUTH}`, playing: 1.5 },
  },
  {
    ...{ id: 'entries', criterion: 'rhythm', unit: 'ms', wanted: MOST(0), usual: [1000 * STANDARDS.entryLeast.value] },
    noise: { measuring: 7 * FROM_MEDIAN, measuringSource: `onsets within 7 ms (median) ${ON_TRUTH}`, playing: 20 },
  },
  {
    ...{ id: 'fermatas', criterion: 'rhythm', unit: 'times', usual: fermataRange() },
    wanted: { low: STANDARDS.fermataLeast.value, high: STANDARDS.fermataMost.value },
    noise: { measuring: 0.03, measuringSource: `within 1 % (median) of a ratio of two ${ON_TRUTH}`, playing: 0.25 },
  },
  {
    ...{ id: 'tempo', criterion: 'tempo', unit: '%', wanted: AT(100), usual: [100] },
    noise: { measuring: 0.3, measuringSource: 'two onsets a minute apart', playing: 1.5 },
  },
  {
    ...{ id: 'steadiness', criterion: 'tempo', unit: '%', wanted: MOST(0), usual: [100 * STANDARDS.tempoSteady.value] },
    noise: { measuring: 0.5, measuringSource: `onsets within 2 to 7 ms (median) ${ON_TRUTH}, bar by bar`, playing: 1 },
  },
  {
    ...{ id: 'contrast', criterion: 'dynamics', unit: 'dB', usual: [STANDARDS.contrastLeast.value] },
    wanted: LEAST(STANDARDS.contrastLeast.value),
    noise: { measuring: 0.35 * FROM_MEDIAN, measuringSource: `within 0.35 dB (median) ${ON_TRUTH}`, playing: 1 },
  },
  {
    ...{ id: 'hairpins', criterion: 'dynamics', unit: 'dB', usual: [STANDARDS.hairpinLeast.value] },
    wanted: LEAST(STANDARDS.hairpinLeast.value),
    noise: {
      measuring: 0.5 * FROM_MEDIAN * Math.SQRT2,
      measuringSource: `two levels within 0.5 dB (median) ${ON_TRUTH}`,
      playing: 1.2,
    },
  },
  {
    ...{ id: 'slurs', criterion: 'articulation', unit: '%', wanted: LEAST(100), usual: [] },
    noise: { measuring: 1, measuringSource: `offsets within 12 ms (median) ${ON_TRUTH}`, playing: 3 },
  },
  {
    ...{ id: 'staccato', criterion: 'articulation', unit: '%', usual: [100 * STANDARDS.staccatoWatch.value] },
    wanted: MOST(100 * STANDARDS.staccatoWatch.value),
    noise: {
      measuring: 5,
      measuringSource: `offsets within 12 ms (median) of a third of a second ${ON_TRUTH}`,
      playing: 4,
    },
  },
  {
    ...{ id: 'breaths', criterion: 'breath', unit: '%', wanted: LEAST(100), usual: [] },
    noise: { measuring: 3, measuringSource: `offsets within 12 ms (median) ${ON_TRUTH}`, playing: 10 },
  },
  {
    ...{
      id: 'own-tuning',
      criterion: 'intonation',
      unit: 'cents',
      wanted: MOST(0),
      usual: [STANDARDS.noteWatch.value],
    },
    noise: { measuring: 0.7 * FROM_MEDIAN, measuringSource: `within 0.7 cents (median) ${ON_TRUTH}`, playing: 3 },
  },
  {
    ...{ id: 'tuning', criterion: 'intonation', unit: 'cents', wanted: AT(0), usual: [0] },
    noise: { measuring: 0.7 * FROM_MEDIAN, measuringSource: `within 0.7 cents (median) ${ON_TRUTH}`, playing: 5 },
  },
  {
    ...{ id: 'long-notes', criterion: 'sound', unit: 'cents', wanted: MOST(0), usual: [STANDARDS.wobbleWatch.value] },
    noise: { measuring: 0.6, measuringSource: `notes held still come out at 0 to 2 cents ${ON_TRUTH}`, playing: 1 },
  },
  {
    // breath belongs to a tone: a change is told, and that it is for better or worse is not
    ...{ id: 'breath-noise', criterion: 'sound', unit: 'dB', wanted: { low: null, high: null }, usual: [] },
    noise: { measuring: 0.7, measuringSource: `within 1 dB ${ON_TRUTH}`, playing: 1.5 },
  },
  {
    // a description: neither brighter nor darker is asked for
    ...{ id: 'brightness', criterion: 'sound', unit: 'harmonics', wanted: { low: null, high: null }, usual: [] },
    noise: { measuring: 0.05, measuringSource: `within 0.05 harmonics ${ON_TRUTH}`, playing: 0.3 },
  },
  {
    ...{ id: 'stops', criterion: 'continuity', unit: 'stops', wanted: MOST(0), usual: [] },
    noise: { measuring: 0.2, measuringSource: 'working value', playing: 0.7 },
  },
];

function fermataRange(): readonly number[] {
  return [STANDARDS.fermataLeast.value, STANDARDS.fermataMost.value];
}
