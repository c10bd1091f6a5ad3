import { isMeasured, median } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';

/** How much of the end is looked at, and how much before it, for its loudest moment. */
const END_SECONDS = 0.04;
const BEFORE_SECONDS = 0.5;
/** A coding may fill up its last block with silence: so much of it at the very end says nothing. */
const PADDING_SECONDS = 0.1;
const PADDING_POWER = 1e-9;
/** A tone that is let go falls by 60 dB in the time a room rings: in 40 ms by 6 dB even where that is 0.4 s. */
const MOST_FALL_DB = 6;
const LEAST_OVER_FLOOR_DB = 15;
const MOST_UNDER_NOTES_DB = 20;

/**
 * Whether the recording stops while a tone still sounds at its full level: a recorder was stopped, or a file cut off, in the
 * middle of the playing. Who breaks off by himself leaves at least the end of the tone, the room and the hand to the recorder.
 *
 * @param context the take with its notes measured
 * @returns whether the last 40 ms are within 6 dB of the loudest of the half second before, and well over the floor
 */
export function endsInSound({ features, notes }: NoteContext): boolean {
  const { power, levelHopSeconds: hop, noiseFloorDb } = features;
  const levels = notes.map((n) => n.levelDb).filter(isMeasured<number>);
  if (levels.length === 0) return false;
  const end = power.length - paddingAt(power, Math.round(PADDING_SECONDS / hop));
  const frames = Math.max(1, Math.round(END_SECONDS / hop));
  const atEnd = meanDb(power, end - frames, end);
  const before = Array.from({ length: Math.floor(BEFORE_SECONDS / END_SECONDS) }, (_, k) => {
    return meanDb(power, end - (k + 2) * frames, end - (k + 1) * frames);
  });
  return (
    atEnd >= Math.max(...before) - MOST_FALL_DB &&
    atEnd >= noiseFloorDb + LEAST_OVER_FLOOR_DB &&
    atEnd >= median(levels) - MOST_UNDER_NOTES_DB
  );
}

/** How many of the last frames are digital silence; none where there are more than a coding leaves. */
function paddingAt(power: Float32Array, most: number): number {
  let silent = 0;
  while (silent < power.length && power[power.length - 1 - silent]! <= PADDING_POWER) silent++;
  return silent > most ? 0 : silent;
}

/** dBFS; minus infinity before the beginning and where there is silence. */
function meanDb(power: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let f = Math.max(0, from); f < to; f++) sum += power[f]!;
  return 10 * Math.log10(sum / Math.max(1, to - from));
}
