import { DEFAULT_LANGUAGE, type Language } from '../base/index.js';
import type { RangeEnd, StudyPlan, Trap } from '../study/index.js';
import { type StudyPlanWords, wordsIn } from '../words/index.js';

/**
 * The plan as data for other programs: codes, numbers, and what a player is told about them. Names of notes and sentences are
 * in the language asked for; `writtenMidi` and `printedIds` are what programs go by.
 *
 * @param plan what the étude asks for
 * @param language of names and sentences
 * @returns a plain value that JSON can hold; `language` is left out when it is English
 */
export function toStudyDocument(plan: StudyPlan, language: Language): object {
  const words = wordsIn(language).study.plan;
  const { changes, ...tempo } = plan.tempo;
  return {
    ...(language === DEFAULT_LANGUAGE ? {} : { language }),
    title: plan.title,
    partName: plan.partName,
    bars: plan.bars,
    notes: plan.notes,
    seconds: plan.seconds,
    range: { lowest: rangeEnd(plan.range?.lowest, words), highest: rangeEnd(plan.range?.highest, words) },
    tempo: { ...tempo, changes: changes.map(({ change, ...at }) => ({ ...at, words: words.tempoChange(change) })) },
    traps: plan.traps.map((trap) => trapDocument(trap, words)),
    breaths: plan.breaths,
    longPhrases: plan.longPhrases,
    levels: plan.levels,
    hairpins: plan.hairpins,
    articulation: plan.articulation.map(({ bars, groups }) => ({ bars, words: words.articulation(groups) })),
    entries: plan.entries.map((entry) => ({ bars: entry.bars, words: words.entry(entry) })),
    fermatas: plan.fermatas.map(({ short, usual, ...fermata }) => ({
      ...fermata,
      words: words.fermata({ short, usual, ...fermata }),
    })),
    demands: plan.demands.map((demand) => ({ ...demand, words: words.demand(demand) })),
    watch: plan.watch,
    practice: plan.practice.map((step) => ({ title: words.practiceTitle(step), text: words.practice(step) })),
    problems: plan.problems.map(words.problem),
    cautions: words.cautions,
  };
}

function rangeEnd(end: RangeEnd | undefined, words: StudyPlanWords): object {
  if (end === undefined) return { name: '', writtenMidi: 0, bar: '' };
  return { name: words.pitchWithOctave(end.pitch), writtenMidi: end.writtenMidi, bar: end.bar };
}

function trapDocument(trap: Trap, words: StudyPlanWords): object {
  const { kind, bar, barIndex, beats, printedIds, pitches, misread, because, rank } = trap;
  return {
    kind,
    bar,
    barIndex,
    beats,
    printedIds,
    name: words.pitches(pitches),
    misread: words.pitches(misread),
    because: because === null ? null : { barIndex: because.barIndex, printedId: because.printedId },
    rank,
    reason: words.trap(trap),
  };
}
