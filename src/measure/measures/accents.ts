import { median, quantile } from '../../base/index.js';
import type { Part } from '../../score/index.js';
import type { LevelContext, NoteContext } from '../context/context.js';
import type { AccentMeasure, TransitionMeasure } from '../types.js';

/** The attack: so long after the onset, in frames of so long. */
const ATTACK_SECONDS = 0.1;
const FRAME_SECONDS = 0.01;
/** Notes on each side with which an accented one is compared. */
const SIDE_NOTES = 3;
const LEAST_NEIGHBOURS = 3;
/** A shorter note has no time to fall. */
const LEAST_FALL_SECONDS = 0.3;

/**
 * How far accented notes stand out: loudest moment of the attack over those of the unaccented notes around it, what the
 * notes do by themselves taken out.
 *
 * @param context the take with its notes measured
 * @param transitions how each note goes over into the next
 * @returns one entry an accented note that was played and has enough neighbours
 */
export function measureAccents(context: LevelContext, transitions: readonly TransitionMeasure[]): AccentMeasure[] {
  const { part, alignment } = context;
  const own = context.ownLoudness;
  const attacks = alignment.notes.map((n) => attackDb(context, n.index) - (own?.of(n.index) ?? 0));
  const markOf = (index: number) => accentOf(part, index);
  const accented = (index: number) => markOf(index) !== undefined;
  return part.notes.flatMap((note): AccentMeasure[] => {
    const mark = markOf(note.index);
    if (mark === undefined || !Number.isFinite(attacks[note.index]!)) return [];
    const around = part.notes
      .slice(Math.max(0, note.index - SIDE_NOTES), note.index + SIDE_NOTES + 1)
      .filter((n) => !accented(n.index) && !n.grace && Number.isFinite(attacks[n.index]!))
      .map((n) => attacks[n.index]!);
    if (around.length < LEAST_NEIGHBOURS) return [];
    const place = { mark, index: note.index, bar: note.bar, pass: note.pass };
    const spreadDb = quantile(around, 0.75) - quantile(around, 0.25);
    const fallDb = attackDb(context, note.index) - endDb(context, note.index);
    const fall = Number.isFinite(fallDb) ? { fallDb } : {};
    const share = soundedShareOf(part, note.index, transitions);
    return [{ ...place, overDb: attacks[note.index]! - median(around), spreadDb, ...fall, ...share }];
  });
}

/** What is known of a note's length; nothing where it is slurred on, or a rest follows, whose length is not the note's. */
function soundedShareOf(
  part: Part,
  index: number,
  transitions: readonly TransitionMeasure[],
): Pick<AccentMeasure, 'soundedShare'> {
  const into = transitions.find((t) => t.index === index);
  if (into === undefined || part.notes[index]!.slurredToNext || part.notes[into.toIndex]!.restBeforeQuarters > 0)
    return {};
  return { soundedShare: into.soundedShare };
}

/**
 * @param part the part
 * @param index of a note
 * @returns the mark that asks for an accent there; undefined without one
 */
export function accentOf(part: Part, index: number): string | undefined {
  return (
    part.dynamicEvents.find((e) => e.index === index)?.mark ??
    part.notes[index]!.articulations.find((a) => a === 'accent' || a === 'strong-accent')
  );
}

/** Loudest moment of a note's attack, dBFS; NaN when it was not played. */
function attackDb(context: NoteContext, index: number): number {
  const { onsetSeconds, offsetSeconds } = context.alignment.notes[index]!;
  if (onsetSeconds === undefined || offsetSeconds === undefined) return Number.NaN;
  return loudestDb(context, onsetSeconds, Math.min(offsetSeconds, onsetSeconds + ATTACK_SECONDS));
}

/** Loudest moment of a note's last third, dBFS; NaN when it is too short to have one. */
function endDb(context: NoteContext, index: number): number {
  const { onsetSeconds, offsetSeconds } = context.alignment.notes[index]!;
  if (onsetSeconds === undefined || offsetSeconds === undefined) return Number.NaN;
  const seconds = offsetSeconds - onsetSeconds;
  return seconds < LEAST_FALL_SECONDS ? Number.NaN : loudestDb(context, offsetSeconds - seconds / 3, offsetSeconds);
}

function loudestDb(context: NoteContext, fromSeconds: number, toSeconds: number): number {
  const { power, levelHopSeconds: hop } = context.features;
  const length = Math.max(1, Math.round(FRAME_SECONDS / hop));
  const from = Math.max(0, Math.round(fromSeconds / hop));
  const to = Math.min(power.length, Math.round(toSeconds / hop));
  let loudest = 0;
  for (let f = from; f + length <= to; f++) {
    let sum = 0;
    for (let k = f; k < f + length; k++) sum += power[k]!;
    loudest = Math.max(loudest, sum / length);
  }
  return loudest > 0 ? 10 * Math.log10(loudest) : Number.NaN;
}
