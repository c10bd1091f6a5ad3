import type { FindingKind } from './finding-kinds.js';
import { roomEchoes } from './observed/echoes.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Observation } from './observed/observation.js';

/** What is told from where single notes begin and end, or from what else sounds there. A misread sign predicts its pitch. */
const NOTE_BY_NOTE: ReadonlySet<FindingKind> = new Set<FindingKind>([
  ...(['wrong-note', 'missed-note', 'added-note', 'late-entry', 'uneven-group', 'slur-broken'] as const),
  ...(['staccato-long', 'breath-unmarked', 'breath-missed', 'breath-short', 'note-out-of-tune'] as const),
]);

/**
 * Where the room sends notes back, they sound into the ones that follow and fill the gaps between them: what is told of single
 * notes is worth a listen there, and no more.
 *
 * @param input one take
 * @param observations all that was noticed
 * @returns the same, with watches in place of such fixes where the room echoes
 */
export function doubtByEcho(input: JudgeInput, observations: readonly Observation[]): readonly Observation[] {
  if (!roomEchoes(input)) return observations;
  return observations.map((o) =>
    o.weight === 'fix' && NOTE_BY_NOTE.has(o.kind) ? ({ ...o, weight: 'watch' } as Observation) : o,
  );
}
