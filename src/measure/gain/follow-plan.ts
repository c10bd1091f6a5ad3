import { isMeasured, robustSpread } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import { fitHuberModel } from './fit-huber-model.js';
import { type GainKind, planCourse } from './plan-course.js';
import { writtenPlan } from './written-plan.js';

/** How the levels of the notes follow the marks. */
export interface PlanFollowing {
  /** dB played for each dB written */
  readonly followed: number;
  /** share of what a mark changes at once that is gone again once a gain has come after it; 0 for none */
  readonly undone: number;
  /** how many standard errors that is away from 0 */
  readonly sureness: number;
}

const LEAST_NOTES = 30;
const KINDS: readonly GainKind[] = [0.3, 0.6, 1.2, 2.5, 5].flatMap((seconds) => [
  { looksAhead: false, seconds },
  { looksAhead: true, seconds },
]);
const SHORTEST_SECONDS = 0.03;
/** Notes all of one length say nothing about lengths. */
const LEAST_SPREAD_OF_LENGTHS = 0.02;

/**
 * Whether what the marks change is taken back again: a player who follows a mark stays with it, and one who does not has
 * no change at all; an automatic gain lets the change through and then levels it.
 *
 * @param context the take with its notes measured
 * @param mostFollowed where more than so many dB for each dB written are played, no gain is looked for
 * @returns how the levels follow the marks, by the kind of gain that explains them best; null when the part has no two marks
 *   or too few notes were heard
 *
 * Source: levels as register + length + plan as written + plan as a gain of that kind has seen it, fitted together.
 */
export function followPlan(context: NoteContext, mostFollowed: number): PlanFollowing | null {
  const written = writtenPlan(context.part);
  if (written === null) return null;
  const heard = context.alignment.notes.flatMap((note) => {
    const level = context.notes[note.index]!.levelDb;
    const { onsetSeconds: onset, offsetSeconds: offset } = note;
    if (onset === undefined || offset === undefined || !isMeasured(level)) return [];
    if (!Number.isFinite(written[note.index]!) || context.part.notes[note.index]!.grace) return [];
    return [{ onset, offset, level, midi: note.playedMidi ?? 0, plan: written[note.index]! }];
  });
  heard.sort((a, b) => a.onset - b.onset);
  if (heard.length < LEAST_NOTES) return null;
  const column = (of: (note: (typeof heard)[number]) => number) => Float64Array.from(heard, of);
  const centre = heard.reduce((sum, note) => sum + note.midi, 0) / heard.length;
  const octaves = (note: { midi: number }) => (note.midi - centre) / 12;
  const pitches = new Set(heard.map((note) => note.midi)).size;
  const lengths = column((note) => Math.log2(Math.max(SHORTEST_SECONDS, note.offset - note.onset)));
  const columns = [
    column(() => 1),
    ...[1, 2, 3].slice(0, pitches - 1).map((power) => column((note) => octaves(note) ** power)),
    ...(robustSpread(lengths) > LEAST_SPREAD_OF_LENGTHS ? [lengths] : []),
    column((note) => note.plan),
  ];
  const onsets = column((note) => note.onset);
  const levels = column((note) => note.level);
  const plain = fitHuberModel(columns, levels);
  if (plain === null) return null;
  const place = columns.length - 1;
  let best: PlanFollowing = { followed: plain.coefficients[place]!, undone: 0, sureness: 0 };
  if (best.followed > mostFollowed) return best;
  for (const kind of KINDS) {
    const fitted = fitHuberModel([...columns, planCourse(onsets, columns[place]!, kind)], levels);
    if (fitted === null) continue;
    const atOnce = fitted.coefficients[place]!;
    const later = fitted.coefficients[place + 1]!;
    const sureness = -later / Math.max(1e-9, fitted.errors[place + 1]!);
    if (atOnce > 0 && sureness > best.sureness) best = { ...best, undone: -later / atOnce, sureness };
  }
  return best;
}
