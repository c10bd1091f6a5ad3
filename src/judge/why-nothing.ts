import { isMeasured, type Reason } from '../base/index.js';
import type { Criterion } from './finding-kinds.js';
import type { JudgeInput } from './observed/judge-input.js';
import { whySoundIsOut } from './sound-judged.js';

/**
 * @param input one take
 * @param criterion one of all
 * @returns whether the brief keeps it from being judged
 */
export function isLeftOut({ brief }: JudgeInput, criterion: Criterion): boolean {
  return brief !== undefined && !brief.criteria[criterion].judged;
}

/**
 * @param input one take of which nothing can be said in this criterion
 * @param criterion one of all
 * @returns why: left out by the brief, not measured, or nothing of the kind in the part; null when no reason is known
 */
export function whyNothing(input: JudgeInput, criterion: Criterion): Reason | null {
  return isLeftOut(input, criterion) ? whyLeftOut(input, criterion) : WHY[criterion](input);
}

function whyLeftOut({ brief }: JudgeInput, criterion: Criterion): Reason {
  if (brief?.played === 'all-slurred' && criterion === 'articulation') return { code: 'brief-all-slurred', facts: {} };
  if (brief?.played === 'under-tempo' && criterion === 'tempo') return { code: 'brief-under-tempo', facts: {} };
  return { code: 'brief-leaves-out', facts: {} };
}

const WHY: Readonly<Record<Criterion, (input: JudgeInput) => Reason | null>> = {
  notes: () => null,
  rhythm: () => ({ code: 'no-groups-or-rests', facts: {} }),
  tempo: ({ measurements: { tempo } }) => (isMeasured(tempo) ? null : tempo.notMeasured),
  dynamics: ({ measurements: { recording } }) => ({
    code: recording.levelRiding ? 'level-moved' : 'no-level-change',
    facts: {},
  }),
  articulation: () => ({ code: 'no-slur-or-staccato', facts: {} }),
  breath: ({ measurements: { breaths } }) => ({
    code: breaths.length === 0 ? 'no-breath-marked' : 'no-breath-heard',
    facts: {},
  }),
  intonation: ({ measurements: { tuning } }) => (isMeasured(tuning) ? null : tuning.notMeasured),
  continuity: () => null,
  sound: ({ measurements }) => whySoundIsOut(measurements),
};
