import { isMeasured, type Reason } from '../base/index.js';
import type { JudgeInput } from './judge-input.js';
import { changeOf } from './judges/dynamics.js';
import type { Criterion } from './types.js';

/** Ways of playing that say something of articulation. */
const TOLD_WAYS: readonly string[] = ['staccato', 'tenuto'];
/** Fewer notes of one way of playing say nothing of a habit. */
const LEAST_OF_A_WAY = 3;

/**
 * @param input one take
 * @param criterion one of the eight
 * @returns why there is nothing to tell of it: left out by the brief, not measured, or nothing of the kind in the part;
 * null when there is something
 *
 * Source: definition.
 */
export function whyNothing(input: JudgeInput, criterion: Criterion): Reason | null {
  return leftOut(input, criterion) ?? WHY[criterion](input);
}

/** Why the brief keeps a criterion from being judged, null when it does not. */
function leftOut({ brief }: JudgeInput, criterion: Criterion): Reason | null {
  if (brief === undefined || brief.criteria[criterion].judged) return null;
  if (brief.played === 'all-slurred' && criterion === 'articulation') return { code: 'brief-all-slurred', facts: {} };
  if (brief.played === 'under-tempo' && criterion === 'tempo') return { code: 'brief-under-tempo', facts: {} };
  return { code: 'brief-leaves-out', facts: {} };
}

const never = (): null => null;

const WHY: Readonly<Record<Criterion, (input: JudgeInput) => Reason | null>> = {
  notes: never,
  rhythm: ({ measurements: { groups, entries } }) =>
    groups.length + entries.length > 0 ? null : { code: 'no-groups-or-rests', facts: {} },
  tempo: ({ measurements: { tempo } }) => (isMeasured(tempo) ? null : tempo.notMeasured),
  dynamics: ({ measurements: { recording, contrasts, hairpins } }) => {
    if (recording.levelRiding) return { code: 'level-moved', facts: {} };
    const isChange = (change: Parameters<typeof changeOf>[0]): boolean => changeOf(change) !== null;
    return contrasts.some(isChange) || hairpins.some(isChange) ? null : { code: 'no-level-change', facts: {} };
  },
  articulation: ({ part, measurements: { transitions, articulations } }) => {
    const slurred = transitions.some(({ index }) => part.notes[index]!.slurredToNext);
    const told = articulations.some(({ way, count }) => TOLD_WAYS.includes(way) && count >= LEAST_OF_A_WAY);
    return slurred || told ? null : { code: 'no-slur-or-staccato', facts: {} };
  },
  breath: ({ measurements: { breaths } }) => {
    if (breaths.length === 0) return { code: 'no-breath-marked', facts: {} };
    return breaths.some(({ gapSeconds }) => isMeasured(gapSeconds)) ? null : { code: 'no-breath-heard', facts: {} };
  },
  intonation: ({ measurements: { tuning } }) => (isMeasured(tuning) ? null : tuning.notMeasured),
  continuity: never,
};
