import { isMeasured } from '../base/index.js';
import type { JudgeInput } from './judge-input.js';
import type { Criterion, CriterionLine, Finding } from './types.js';

const CRITERIA: readonly Criterion[] = [
  'notes',
  'rhythm',
  'tempo',
  'dynamics',
  'articulation',
  'breath',
  'intonation',
  'continuity',
];

/**
 * One line a criterion for tables: counts of findings and the key figure in plain words.
 *
 * @param input one take
 * @param findings what was found
 * @returns all eight criteria, in fixed order
 *
 * Source: definition.
 */
export function criterionLines(input: JudgeInput, findings: readonly Finding[]): CriterionLine[] {
  return CRITERIA.map((criterion) => ({
    criterion,
    fix: findings.filter((f) => f.criterion === criterion && f.weight === 'fix').length,
    watch: findings.filter((f) => f.criterion === criterion && f.weight === 'watch').length,
    summary: SUMMARIES[criterion](input),
  }));
}

const SUMMARIES: Readonly<Record<Criterion, (input: JudgeInput) => string>> = {
  notes: (input) => {
    const notes = input.alignment.notes.filter((n) => input.part.notes[n.index]!.grace === false);
    const right = notes.filter((n) => n.status === 'as-written').length;
    const unclear = notes.filter((n) => n.status === 'unclear').length;
    return `${right} of ${notes.length} notes as written${unclear > 0 ? `, ${unclear} not clear enough to tell` : ''}`;
  },
  rhythm: (input) => {
    const ratios = input.measurements.fermatas.map((f) => f.ratio).filter(isMeasured<number>);
    return ratios.length === 0
      ? 'no fermata to measure'
      : `fermatas held ${ratios.map((r) => r.toFixed(1)).join(', ')} times their length`;
  },
  tempo: (input) => {
    const { tempo } = input.measurements;
    if (!isMeasured(tempo)) return `not measured: ${tempo.notMeasured}`;
    const marked = tempo.markedQuarterBpm === null ? '' : `, ${Math.round(tempo.markedQuarterBpm)} marked`;
    return `${Math.round(tempo.playedQuarterBpm)} quarter notes a minute${marked}`;
  },
  dynamics: (input) => {
    const { contrasts, hairpins, recording } = input.measurements;
    if (recording.levelRiding) return 'not judged: the recorder moved its level';
    const measured = contrasts.map((c) => c.differenceDb).filter(isMeasured<number>);
    const rises = hairpins.map((h) => h.riseDb).filter(isMeasured<number>);
    if (measured.length + rises.length === 0) return 'no change of level to measure';
    const changes = measured.map((d) => `${d > 0 ? '+' : '−'}${Math.abs(Math.round(d))}`);
    return measured.length === 0 ? `${rises.length} hairpins measured` : `changes of level ${changes.join(', ')} dB`;
  },
  articulation: () => 'not judged yet',
  breath: () => 'not judged yet',
  intonation: (input) => {
    const { tuning } = input.measurements;
    if (!isMeasured(tuning)) return `not measured: ${tuning.notMeasured}`;
    const cents = Math.round(tuning.centsFromA440);
    return `A = ${tuning.a4Hz.toFixed(1)} Hz (${cents === 0 ? '0' : `${cents > 0 ? '+' : '−'}${Math.abs(cents)}`} cents)`;
  },
  continuity: (input) => {
    const { restarts, skips } = input.alignment;
    if (restarts.length + skips.length === 0) return 'played through';
    return `begun again ${restarts.length} times, jumped ahead ${skips.length} times`;
  },
};
