import { applyBrief, type Brief, secondsBetween } from '../brief/index.js';
import type { Part, PartNote } from '../score/index.js';
import { articulationPlan } from './articulation-plan.js';
import { breathPlan } from './breath-plan.js';
import { demandsOf } from './demands.js';
import { dynamicsPlan } from './dynamics-plan.js';
import { entryPlan } from './entry-plan.js';
import { fermataPlan } from './fermata-plan.js';
import { findTraps } from './find-traps.js';
import { firstPasses } from './first-passes.js';
import { practicePlan } from './practice-plan.js';
import { tempoPlan } from './tempo-plan.js';
import type { RangeEnd, StudyPlan } from './types.js';

/**
 * Everything a study sheet says about an étude.
 *
 * @param part the part as written
 * @param brief the teacher's brief for it
 * @returns the plan; a part with problems has one, too
 *
 * Source: the room's files name theirs.
 */
export function studyPlan(part: Part, brief: Brief): StudyPlan {
  const wanted = applyBrief(part, brief);
  const printed = firstPasses(wanted);
  const last = wanted.notes.at(-1);
  const end = last === undefined ? 0 : last.onsetQuarters + last.durationQuarters;
  const learnt = {
    tempo: tempoPlan(wanted, brief),
    traps: findTraps(wanted),
    ...breathPlan(wanted, brief),
    ...dynamicsPlan(wanted),
    articulation: brief.played === 'all-slurred' ? [] : articulationPlan(wanted),
    entries: entryPlan(wanted),
    fermatas: fermataPlan(wanted, brief),
  };
  return {
    title: wanted.title,
    partName: wanted.partName,
    bars: wanted.printedBars,
    notes: printed.length,
    seconds: secondsBetween(wanted.tempos, wanted.notes[0]?.onsetQuarters ?? 0, end),
    range: rangeOf(printed),
    ...learnt,
    demands: demandsOf(wanted, brief),
    watch: brief.watch,
    practice: practicePlan(learnt, brief),
    problems: wanted.remarks,
  };
}

function rangeOf(notes: readonly PartNote[]): StudyPlan['range'] {
  const byHeight = [...notes].sort((a, b) => a.writtenMidi - b.writtenMidi);
  const [lowest, highest] = [byHeight[0], byHeight.at(-1)];
  if (lowest === undefined || highest === undefined) return null;
  return { lowest: rangeEnd(lowest), highest: rangeEnd(highest) };
}

function rangeEnd({ written, writtenMidi, bar }: PartNote): RangeEnd {
  return { pitch: written, writtenMidi, bar };
}
