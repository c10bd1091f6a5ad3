import { applyBrief, type Brief, secondsBetween } from '../brief/index.js';
import type { Part, PartNote } from '../score/index.js';
import { articulationPlan } from './articulation-plan.js';
import { breathPlan } from './breath-plan.js';
import { dynamicsPlan } from './dynamics-plan.js';
import { entryPlan } from './entry-plan.js';
import { fermataPlan } from './fermata-plan.js';
import { findTraps } from './find-traps.js';
import { firstPasses } from './first-passes.js';
import { signedName } from './names.js';
import { practicePlan } from './practice-plan.js';
import { tempoPlan } from './tempo-plan.js';
import type { RangeEnd, StudyPlan } from './types.js';

/** Source: common practice (playing-related strain, hearing and over-breathing: advice given to wind players). */
const CAUTIONS = [
  'Rest as long as you play. Tired lips, fingers and breath learn nothing; two short times a day beat one long one.',
  'Stop when something hurts, and tell your teacher. Pain is no sign of good practice.',
  'If you get dizzy you are breathing too much: put the instrument down and breathe quietly until it has passed.',
  'Loud playing in a small room tires the ears. If they ring, stop for the day.',
];

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
    watch: brief.watch,
    practice: practicePlan(learnt, brief),
    problems: wanted.remarks,
    cautions: CAUTIONS,
  };
}

function rangeOf(notes: readonly PartNote[]): StudyPlan['range'] {
  const byHeight = [...notes].sort((a, b) => a.writtenMidi - b.writtenMidi);
  return { lowest: rangeEnd(byHeight[0]), highest: rangeEnd(byHeight.at(-1)) };
}

function rangeEnd(note: PartNote | undefined): RangeEnd {
  if (note === undefined) return { name: '', writtenMidi: 0, bar: '' };
  const { written, writtenMidi, bar } = note;
  const name = written.alter === 0 ? written.step : signedName(written);
  return { name: `${name}${written.octave}`, writtenMidi, bar };
}
