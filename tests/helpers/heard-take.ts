import { type Alignment, alignTake } from '../../src/align/index.js';
import type { Take } from '../../src/decode/index.js';
import { type PlayedNote, performTake, readDemoScore, type TakePlan } from '../../src/demo/index.js';
import { type Features, listen } from '../../src/features/index.js';
import { type Part, readPart } from '../../src/score/index.js';
import { takeOf } from './tones.js';

/** A take with known truth, as the listening rooms hear it. */
export interface HeardTake {
  readonly part: Part;
  readonly take: Take;
  readonly features: Features;
  readonly alignment: Alignment;
  /** every note as it was really played, in time order */
  readonly truth: readonly PlayedNote[];
  /** the truth of each note of the part that counts, by its index: what was abandoned or left out is not there */
  readonly meant: ReadonlyMap<number, PlayedNote>;
}

/** The étude of the demo: 102 notes with slurs, triplets, repeated notes, rests and fermatas. */
export const demoPart = (): Part => readPart(readDemoScore());

/** A clarinet at half the usual rate, as in the demo; the rest is up to the test. */
export const PLAIN: TakePlan = { seed: 11, voice: 'clarinet', sampleRateHz: 22050 };

/** Plays a part with the demo's synthesiser and listens to it. */
export function hearTake(part: Part, plan: Partial<TakePlan> = {}): HeardTake {
  const { samples, sampleRateHz, truth } = performTake(part, { ...PLAIN, ...plan });
  const meant = new Map(
    truth.flatMap((note) => (note.index === null || note.abandoned ? [] : [[note.index, note] as const])),
  );
  return { ...hearSamples(part, samples, sampleRateHz, plan.transposeSemitones), truth, meant };
}

/** Listens to samples, to the part's own range and around it, wherever the player has moved it. */
export function hearSamples(
  part: Part,
  samples: Float32Array,
  sampleRateHz: number,
  transposed = 0,
): Pick<HeardTake, 'part' | 'take' | 'features' | 'alignment'> {
  const take = takeOf(samples, sampleRateHz);
  const pitches = part.notes.map((note) => note.soundingMidi);
  const lowestMidi = Math.min(...pitches) + Math.min(0, transposed) - 3;
  const highestMidi = Math.max(...pitches) + Math.max(0, transposed) + 4;
  const features = listen(take, { lowestMidi, highestMidi });
  return { part, take, features, alignment: alignTake(features, part) };
}

/** How far found onsets are from the true ones, seconds, note by note where both are known. */
export function onsetErrors({ alignment, meant }: HeardTake): number[] {
  return alignment.notes.flatMap(({ index, onsetSeconds }) => {
    const truth = meant.get(index);
    return truth === undefined || onsetSeconds === undefined ? [] : [Math.abs(onsetSeconds - truth.onsetSeconds)];
  });
}

export const shareWithin = (errors: readonly number[], bound: number): number =>
  errors.filter((error) => error <= bound).length / errors.length;

/** Median, by sorting. */
export function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(half)] ?? Number.NaN) + (sorted[Math.ceil(half)] ?? Number.NaN)) / 2;
}

/** Notes whose status is not what was really played, in words a failing test can show. */
export function wrongStatuses({ part, alignment, meant }: HeardTake): string[] {
  return alignment.notes.flatMap((note) => {
    const truth = meant.get(note.index);
    const sounding = part.notes[note.index]!.soundingMidi + alignment.offsetSemitones;
    const status = truth === undefined ? 'left-out' : truth.playedMidi === sounding ? 'as-written' : 'other-pitch';
    const played = truth === undefined ? undefined : truth.playedMidi - alignment.offsetSemitones;
    if (note.status === status && note.playedMidi === played) return [];
    return [`note ${note.index}: ${status} ${played ?? ''} found ${note.status} ${note.playedMidi ?? ''}`];
  });
}
