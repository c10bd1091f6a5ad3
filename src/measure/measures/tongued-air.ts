import { isMeasured, type NotMeasured } from '../../base/index.js';
import type { Features } from '../../features/index.js';
import type { PartNote } from '../../score/index.js';
import type { NoteContext } from '../context/context.js';
import type { RecordingMeasure, TonguedAirPlace, TransitionMeasure } from '../types.js';
import { whyHidden } from './why-hidden.js';

/** What lies between two notes: so long before the second one's onset and after it, or such a share of a note where that is less. */
const BEFORE = { seconds: 0.25, share: 1 / 2 };
const AFTER = { seconds: 0.1, share: 1 / 3 };
/** Shorter notes are hardly more than what lies between them. */
const LEAST_SECONDS = 0.12;
const SHORT = ['staccato', 'staccatissimo', 'detached-legato'] as const;

/**
 * What happens to the tone where the part asks for the tongue and for nothing else: how far it sags between the notes, a pause
 * counted with its length. Made to be held against the same places of a take that is slurred throughout.
 *
 * @param context the take with its notes measured
 * @param transitions how each note goes over into the next
 * @param recording the recording itself: a recorder that moves its level, a coding that leaves something out, or a room that
 * rings hides what lies between notes
 * @returns one entry a pair of notes of different pitch, without slur, rest, breath, dot or accent between them; or why there are none
 *
 * Source: RMS by definition; the lengths are working values: about a third of a second, in which a pause of a tongue stroke is short.
 */
export function measureTonguedAir(
  { part, alignment, features, notes }: NoteContext,
  transitions: readonly TransitionMeasure[],
  recording: RecordingMeasure,
): TonguedAirPlace[] | NotMeasured {
  const hidden = whyHidden(recording);
  if (hidden !== null) return hidden;
  return transitions.flatMap(({ index, toIndex, betweenOnsetsSeconds, dipDb }): TonguedAirPlace[] => {
    const [note, next] = [part.notes[index]!, part.notes[toIndex]!];
    const [from, to] = [alignment.notes[index]!, alignment.notes[toIndex]!];
    if (from.status !== 'as-written' || to.status !== 'as-written' || !isTongued(note, next)) return [];
    const onset = to.onsetSeconds!;
    const [before, after] = [betweenOnsetsSeconds, to.offsetSeconds! - onset];
    if (before < LEAST_SECONDS || after < LEAST_SECONDS) return [];
    const [level, nextLevel] = [notes[index]!.levelDb, notes[toIndex]!.levelDb];
    if (!isMeasured<number>(level) || !isMeasured<number>(nextLevel)) return [];
    const left = Math.min(BEFORE.seconds, BEFORE.share * before);
    const right = Math.min(AFTER.seconds, AFTER.share * after);
    const sagDb = (level + nextLevel) / 2 - levelOf(features, onset - left, onset + right);
    return [{ index, toIndex, bar: next.bar, pass: next.pass, sagDb, dipDb }];
  });
}

/** Whether a note is begun with the tongue right after another, and neither has a shape of its own. */
function isTongued(note: PartNote, next: PartNote): boolean {
  const shaped = [note, next].some(
    ({ articulations, ornament, grace, fermata }) =>
      grace ||
      fermata ||
      ornament !== null ||
      articulations.some((sign) => sign === 'accent' || sign === 'strong-accent'),
  );
  const apart =
    next.restBeforeQuarters > 0 || note.breathAfter !== null || SHORT.some((s) => note.articulations.includes(s));
  const joined = note.slurredToNext || next.slurredFromPrevious || note.soundingMidi === next.soundingMidi;
  return !shaped && !apart && !joined;
}

/** Level between two moments, dBFS. */
function levelOf({ power, levelHopSeconds: hop }: Features, from: number, to: number): number {
  const [first, last] = [Math.max(0, Math.round(from / hop)), Math.min(power.length, Math.round(to / hop))];
  let sum = 0;
  for (let f = first; f < last; f++) sum += power[f]!;
  return 10 * Math.log10(sum / Math.max(1, last - first) + 1e-12);
}
