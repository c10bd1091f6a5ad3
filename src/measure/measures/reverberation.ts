import { fitHuberLine, type MaybeNumber, median, notMeasured, quantile } from '../../base/index.js';
import type { MeasureContext } from '../context/context.js';

const FRAME_SECONDS = 0.01;
/** Silence must last so long after a note for its decay to be read, and no more of it than this is read. */
const LEAST_SILENCE_SECONDS = 0.25;
const MOST_SILENCE_SECONDS = 2.5;
/** A microphone near the player hears the instrument itself fall silent first: the room is alone only after this. */
const RELEASE_SECONDS = 0.06;
/** The line begins so far below the note and goes on for so much, as far as the noise lets it go. */
const FROM_DB = 5;
const SPAN_DB = 25;
const ABOVE_FLOOR_DB = 8;
/** A line through less than this says nothing; shorter in time it may still be the instrument's release. */
const LEAST_FALL_DB = 5;
const LEAST_LINE_SECONDS = 0.1;
const LEAST_DECAYS = 2;
/** A player's own release only ever makes a decay longer: the quicker decays are the room's. */
const SHARE = 0.25;

/**
 * How long the room rings: time in which the sound would fall by 60 dB, read from what follows the last note before a
 * rest, a breath or the end.
 *
 * @param context part and alignment
 * @returns seconds, or why there is no number
 *
 * Source: ISO 3382-2:2008, decay rate by a line from 5 dB below the start, extended to 60 dB.
 *
 * Differs: the line begins only when the instrument itself is silent, and may be shorter than the 20 dB of the standard.
 * Played notes end gradually and need not excite all frequencies: below about 0.4 s it is the instrument's release that
 * is read. The limits are working values chosen on the demo's étude in synthesised rooms; on other performances of it
 * most numbers are within a fifth and nearly all within three tenths, slow or noisy takes reading shortest.
 */
export function measureReverberation(context: MeasureContext): MaybeNumber {
  const { alignment, part } = context;
  const onsets = alignment.notes.flatMap((n) => n.onsetSeconds ?? []);
  const others = [...onsets, ...alignment.added.map((a) => a.onsetSeconds)].sort((a, b) => a - b);
  const beforeSilence = part.notes.flatMap((note) => {
    const { onsetSeconds, offsetSeconds } = alignment.notes[note.index]!;
    if (onsetSeconds === undefined || offsetSeconds === undefined) return [];
    const next = others.find((t) => t > onsetSeconds) ?? Number.POSITIVE_INFINITY;
    return next - offsetSeconds < LEAST_SILENCE_SECONDS ? [] : [{ onsetSeconds, offsetSeconds, next }];
  });
  if (beforeSilence.length < LEAST_DECAYS) return notMeasured('too-few-silences');
  const decays = beforeSilence.flatMap((n) => decaySeconds(context, n.onsetSeconds, n.offsetSeconds, n.next));
  if (decays.length < LEAST_DECAYS) return notMeasured('decay-hidden');
  return quantile(decays, SHARE);
}

/** Time to fall by 60 dB after one note; empty when too little of the fall can be seen. */
function decaySeconds(context: MeasureContext, onset: number, offset: number, next: number): number[] {
  const { power, levelHopSeconds: hop, noiseFloorDb } = context.features;
  const length = Math.max(1, Math.round(FRAME_SECONDS / hop));
  const level = (f: number): number => {
    let sum = 0;
    for (let k = f; k < f + length; k++) sum += power[k] ?? 0;
    return 10 * Math.log10(sum / length + 1e-12);
  };
  const middle = Math.round((onset + offset) / 2 / hop);
  const held = median(Array.from({ length: 5 }, (_, k) => level(middle + (k - 2) * length)));
  const end = Math.min(Math.round((Math.min(next, offset + MOST_SILENCE_SECONDS) - FRAME_SECONDS) / hop), power.length);
  const seconds: number[] = [];
  const levels: number[] = [];
  for (let f = Math.round((offset + RELEASE_SECONDS) / hop); f + length <= end; f += length) {
    const here = level(f);
    if (here > held - FROM_DB) continue;
    if (here < Math.max((levels[0] ?? here) - SPAN_DB, noiseFloorDb + ABOVE_FLOOR_DB)) break;
    seconds.push(f * hop);
    levels.push(here);
  }
  if (levels.length * FRAME_SECONDS < LEAST_LINE_SECONDS || levels[0]! - levels.at(-1)! < LEAST_FALL_DB) return [];
  const { slope } = fitHuberLine(seconds, levels);
  return slope < 0 ? [-60 / slope] : [];
}
