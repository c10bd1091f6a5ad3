import { isMeasured } from '../base/index.js';
import { CRITERIA } from '../brief/index.js';
import type { JudgeInput } from './judge-input.js';
import type { Criterion, CriterionLine, Finding } from './types.js';

/** A gap this long at a mark is a breath taken. Source: a quick breath takes 0.2 to 0.5 s (from memory), less the room. */
const BREATH_SECONDS = 0.12;

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
  const riding = input.measurements.recording.levelRiding;
  return CRITERIA.map((criterion) => ({
    criterion,
    judged: leftOut(input, criterion) === null && !(criterion === 'dynamics' && riding),
    fix: findings.filter((f) => f.criterion === criterion && f.weight === 'fix').length,
    watch: findings.filter((f) => f.criterion === criterion && f.weight === 'watch' && f.ledByBar === undefined).length,
    summary: leftOut(input, criterion) ?? SUMMARIES[criterion](input),
  }));
}

/** Why the brief keeps a criterion from being judged, null when it does not. */
function leftOut({ brief }: JudgeInput, criterion: Criterion): string | null {
  if (brief === undefined || brief.criteria[criterion].judged) return null;
  if (brief.played === 'all-slurred' && criterion === 'articulation') return 'not judged: all slurred for practice';
  if (brief.played === 'under-tempo' && criterion === 'tempo') return 'not judged: below the tempo for practice';
  return 'not judged: the brief leaves it out';
}

const SUMMARIES: Readonly<Record<Criterion, (input: JudgeInput) => string>> = {
  notes: (input) => {
    const notes = input.alignment.notes.filter((n) => input.part.notes[n.index]!.grace === false);
    const right = notes.filter((n) => n.status === 'as-written').length;
    const unclear = notes.filter((n) => n.status === 'unclear').length;
    return `${right} of ${notes.length} notes as written${unclear > 0 ? `, ${unclear} not clear enough to tell` : ''}`;
  },
  rhythm: (input) => {
    const { groups, entries } = input.measurements;
    const even = groups.filter(
      (g) => Math.max(...g.shares.map((x, k) => Math.abs(x - g.written[k]!))) <= input.standards.groupWatch.value,
    );
    const late = entries.filter((e) => e.lateSeconds / e.secondsAQuarter > input.standards.entryWatch.value).length;
    const parts = [
      groups.length === 0 ? '' : `${even.length} of ${groups.length} groups even`,
      entries.length === 0 ? '' : `${entries.length - late} of ${entries.length} entries after rests in time`,
    ].filter((text) => text !== '');
    return parts.length === 0 ? 'no groups or rests to measure' : parts.join(', ');
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
  articulation: (input) => {
    const slurred = input.measurements.transitions.filter((t) => input.part.notes[t.index]!.slurredToNext);
    const joined = slurred.filter((t) => t.gapSeconds <= input.standards.slurGapWatch.value).length;
    return slurred.length === 0 ? 'no slur to measure' : `${joined} of ${slurred.length} slurred notes joined`;
  },
  breath: (input) => {
    const marked = input.part.notes.filter((n) => n.breathAfter !== null).map((n) => n.index);
    const taken = input.measurements.transitions.filter(
      (t) => marked.includes(t.index) && t.gapSeconds > BREATH_SECONDS,
    );
    if (marked.length === 0) return 'no breath marked';
    const reached = marked.filter((index) => input.measurements.transitions.some((t) => t.index === index)).length;
    const beyond = marked.length - reached;
    if (reached === 0) return 'no marked breath could be heard: the notes around them were not all played';
    const heard = `${taken.length} of ${reached} marked ${reached === 1 ? 'breath' : 'breaths'} heard`;
    return beyond === 0
      ? heard
      : `${heard}; ${beyond} more ${beyond === 1 ? 'stands' : 'stand'} where not all was played`;
  },
  intonation: (input) => {
    const { tuning } = input.measurements;
    if (!isMeasured(tuning)) return `not measured: ${tuning.notMeasured}`;
    const cents = Math.round(tuning.centsFromA440);
    return `A = ${tuning.a4Hz.toFixed(1)} Hz (${cents === 0 ? '0' : `${cents > 0 ? '+' : '−'}${Math.abs(cents)}`} cents)`;
  },
  continuity: (input) => {
    const { restarts, skips } = input.alignment;
    if (restarts.length + skips.length === 0) return 'played through';
    return `begun again ${times(restarts.length)}, jumped ahead ${times(skips.length)}`;
  },
};

function times(count: number): string {
  return count === 0 ? 'never' : count === 1 ? 'once' : `${count} times`;
}
