import { isMeasured } from '../base/index.js';
import type { Criterion } from './finding-kinds.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Observation } from './observed/observation.js';

/** How much of a criterion could be measured, and how much of that is as asked for. */
export interface Tally {
  /** places measured: notes, groups and entries, bars … */
  readonly of: number;
  readonly met: number;
}

/**
 * Counts the places of each criterion that could be measured, and those of them that are as asked for. What is only to
 * be watched counts as met: doubt costs nothing.
 *
 * @param input one take
 * @param observations all that was noticed, before anything is grouped
 * @returns a tally a criterion; `of` 0 where nothing could be measured
 *
 * Printed with the points it is used for.
 */
export function countPlaces(input: JudgeInput, observations: readonly Observation[]): Record<Criterion, Tally> {
  const tally = (criterion: Criterion, of: number, missed = surely(observations, criterion)): Tally => {
    return { of, met: Math.max(0, of - missed) };
  };
  const { measurements, alignment, part } = input;
  const heard = alignment.notes.filter((n) => n.status !== 'unclear' && !part.notes[n.index]!.grace);
  const extra = observations.filter((o) => o.kind === 'added-note' && o.weight === 'fix').length;
  const measured = <T>(values: readonly (T | { readonly notMeasured: string })[]) => values.filter(isMeasured).length;
  const { groups, entries, fermatas, contrasts, hairpins, transitions, accents, breaths, notes } = measurements;
  const asked = transitions.filter((t) => isAsked(input, t.index)).length + accents.length;
  return {
    notes: tally('notes', heard.length + extra),
    rhythm: tally('rhythm', groups.length + entries.length + measured(fermatas.map((f) => f.ratio))),
    tempo: tempoTally(input),
    dynamics: measurements.recording.levelRiding
      ? { of: 0, met: 0 }
      : tally('dynamics', measured(contrasts.map((c) => c.differenceDb)) + measured(hairpins.map((h) => h.riseDb))),
    articulation: tally('articulation', asked),
    breath: tally('breath', measured(breaths.map((b) => b.gapSeconds)) + surely(observations, 'breath')),
    intonation: tally('intonation', measured(notes.map((n) => n.centsFromOwnTuning))),
    continuity: tally('continuity', part.bars.length, barsLost(input)),
  };
}

function surely(observations: readonly Observation[], criterion: Criterion): number {
  return observations.filter((o) => o.criterion === criterion && o.weight === 'fix').length;
}

/** Whether the part asks for a slur or a dot here. */
function isAsked({ part }: JudgeInput, index: number): boolean {
  const note = part.notes[index]!;
  return note.slurredToNext || note.articulations.some((a) => a === 'staccato' || a === 'staccatissimo');
}

/** Bars within the range asked for, or near the player's own tempo where none is asked for. */
function tempoTally({ measurements, brief, standards }: JudgeInput): Tally {
  const { tempo } = measurements;
  if (!isMeasured(tempo)) return { of: 0, met: 0 };
  const own = tempo.playedQuarterBpm;
  const range = brief?.tempo ?? null;
  const lowest = range?.lowestQuarterBpm ?? own * (1 - standards.drift.value);
  const highest = range?.highestQuarterBpm ?? own * (1 + standards.drift.value);
  // a bar may breathe as much as is not called drifting
  const within = tempo.bars.filter(({ quarterBpm }) => {
    return quarterBpm >= lowest * (1 - standards.drift.value) && quarterBpm <= highest * (1 + standards.drift.value);
  });
  return { of: tempo.bars.length, met: within.length };
}

/** A restart costs the bar in which it falls, a jump all bars it leaves out. */
function barsLost({ part, alignment }: JudgeInput): number {
  const skipped = alignment.skips.flatMap((s) => part.notes.slice(s.fromIndex, s.toIndex + 1));
  return new Set(skipped.map((n) => `${n.barIndex} ${n.pass}`)).size + alignment.restarts.length;
}
