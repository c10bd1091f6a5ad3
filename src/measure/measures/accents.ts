import { median, quantile } from '../../base/index.js';
import type { LevelContext, NoteContext } from '../context.js';
import type { AccentMeasure } from '../types.js';

/** The attack: so long after the onset, in frames of so long. */
const ATTACK_SECONDS = 0.1;
const FRAME_SECONDS = 0.01;
/** Notes on each side with which an accented one is compared. */
const SIDE_NOTES = 3;
const LEAST_NEIGHBOURS = 3;

/**
 * How far accented notes stand out: loudest moment of the attack over those of the unaccented notes around it, what the
 * notes do by themselves taken out.
 *
 * @param context the take with its notes measured
 * @returns one entry an accented note that was played and has enough neighbours
 *
 * Source: definition.
 */
export function measureAccents(context: LevelContext): AccentMeasure[] {
  const { part, alignment } = context;
  const own = context.ownLoudness;
  const attacks = alignment.notes.map((n) => attackDb(context, n.index) - (own?.of(n.index) ?? 0));
  const accented = (index: number) =>
    part.notes[index]!.articulations.some((a) => a === 'accent' || a === 'strong-accent') ||
    part.dynamicEvents.some((e) => e.index === index);
  return part.notes.flatMap((note): AccentMeasure[] => {
    if (!accented(note.index) || !Number.isFinite(attacks[note.index]!)) return [];
    const around = part.notes
      .slice(Math.max(0, note.index - SIDE_NOTES), note.index + SIDE_NOTES + 1)
      .filter((n) => !accented(n.index) && !n.grace && Number.isFinite(attacks[n.index]!))
      .map((n) => attacks[n.index]!);
    if (around.length < LEAST_NEIGHBOURS) return [];
    const place = { index: note.index, bar: note.bar, pass: note.pass };
    const spreadDb = quantile(around, 0.75) - quantile(around, 0.25);
    return [{ ...place, overDb: attacks[note.index]! - median(around), spreadDb }];
  });
}

/** Loudest moment of a note's attack, dBFS; NaN when it was not played. */
function attackDb(context: NoteContext, index: number): number {
  const { onsetSeconds, offsetSeconds } = context.alignment.notes[index]!;
  if (onsetSeconds === undefined || offsetSeconds === undefined) return Number.NaN;
  const { power, levelHopSeconds: hop } = context.features;
  const length = Math.max(1, Math.round(FRAME_SECONDS / hop));
  const from = Math.max(0, Math.round(onsetSeconds / hop));
  const to = Math.min(power.length, Math.round(Math.min(offsetSeconds, onsetSeconds + ATTACK_SECONDS) / hop));
  let loudest = 0;
  for (let f = from; f + length <= to; f++) {
    let sum = 0;
    for (let k = f; k < f + length; k++) sum += power[k]!;
    loudest = Math.max(loudest, sum / length);
  }
  return loudest > 0 ? 10 * Math.log10(loudest) : Number.NaN;
}
