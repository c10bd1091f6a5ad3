import { isMeasured, type MaybeNumber } from '../base/index.js';
import { type AskedPlaces, askedPlaces, asksHowToLeave, type LevelMeasure } from '../measure/index.js';
import type { Criterion } from './finding-kinds.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Observation } from './observed/observation.js';
import { whySoundIsOut } from './sound-judged.js';

/** How much of a criterion is asked for and can be told, and how much of that is as asked for. */
export interface Tally {
  /** places measured, and places that were not played: notes, groups and entries, bars … */
  readonly of: number;
  readonly met: number;
  /** those of them that were not played */
  readonly notPlayed: number;
}

/**
 * Counts the places of each criterion that the part asks for, and those of them that are as asked for. What was not played is
 * not as asked for; what was played and could not be measured is left out of both. What is only to be watched counts as met:
 * doubt costs nothing.
 *
 * @param input one take
 * @param observations all that was noticed, before anything is grouped
 * @param notPlayed indexes of the notes that were passed over or not come to
 * @returns a tally a criterion; `of` 0 where nothing could be measured
 *
 * Printed with the points it is used for.
 */
export function countPlaces(
  input: JudgeInput,
  observations: readonly Observation[],
  notPlayed: ReadonlySet<number>,
): Record<Criterion, Tally> {
  const { measurements, alignment, part } = input;
  const asked = askedPlaces(part);
  const out = outIn(input, asked, notPlayed);
  const tally = (criterion: Criterion, measured: number, missed = surely(observations, criterion)): Tally => {
    const places = { of: measured + out[criterion], notPlayed: out[criterion] };
    return { ...places, met: Math.max(0, measured - missed) };
  };
  const heard = alignment.notes.filter(
    (n) => n.status !== 'unclear' && !part.notes[n.index]!.grace && !notPlayed.has(n.index),
  );
  const extra = observations.filter((o) => o.kind === 'added-note' && o.weight === 'fix').length;
  const { groups, entries, fermatas, contrasts, hairpins, transitions, accents, breaths, notes, heldNotes } =
    measurements;
  const left = transitions.filter((t) => asksHowToLeave(part.notes[t.index]!)).length + accents.length;
  const inTempo = tempoTally(input);
  return {
    notes: tally('notes', heard.length + extra),
    rhythm: tally('rhythm', groups.length + entries.length + count(fermatas.map((f) => f.ratio))),
    tempo: tally('tempo', inTempo.of, inTempo.of - inTempo.met),
    dynamics: measurements.recording.levelRiding
      ? { of: 0, met: 0, notPlayed: 0 }
      : tally('dynamics', count(contrasts.map((c) => c.differenceDb)) + count(hairpins.map((h) => h.riseDb))),
    articulation: tally('articulation', left),
    breath: tally('breath', count(breaths.map((b) => b.gapSeconds)) + unasked(observations)),
    intonation: tally('intonation', count(notes.map((n) => n.centsFromOwnTuning))),
    sound: whySoundIsOut(measurements) === null ? tally('sound', heldNotes.length) : { of: 0, met: 0, notPlayed: 0 },
    continuity: tally('continuity', part.bars.length - out.continuity, stopped(observations)),
  };
}

/** How many places of each criterion were not played. */
function outIn(input: JudgeInput, asked: AskedPlaces, notPlayed: ReadonlySet<number>): Record<Criterion, number> {
  const { part, measurements } = input;
  const { fermatas, contrasts, hairpins, breaths, levels } = measurements;
  const some = (places: readonly (readonly number[])[]) => {
    return places.filter((indexes) => indexes.some((index) => notPlayed.has(index))).length;
  };
  const timed = fermatas.every(({ ratio }) => isMeasured(ratio) || ratio.notMeasured.code !== 'fermatas-close-phrases');
  const left = part.notes.filter(({ index, grace }) => notPlayed.has(index) && !grace);
  const isOut = (value: MaybeNumber, from: number, to: number) => {
    return !isMeasured(value) && mostly(notPlayed, from, to);
  };
  const under = (index: number): LevelMeasure | undefined => levels.find((level) => level.index === index);
  const outContrasts = contrasts.filter(({ index, differenceDb }) => {
    const to = under(index);
    const from = levels[levels.findIndex((level) => level.index === index) - 1];
    return [from, to].some((mark) => isOut(differenceDb, mark?.index ?? index, mark?.toIndex ?? index));
  });
  return {
    notes: left.length,
    rhythm: some(asked.groups) + some(asked.entries) + (timed ? some(fermatas.map(({ index }) => [index])) : 0),
    tempo: asked.tempoBars.filter((bar) => bar.every((index) => notPlayed.has(index))).length,
    dynamics: outContrasts.length + hairpins.filter((h) => isOut(h.riseDb, h.index, h.toIndex)).length,
    articulation: some(asked.slursAndDots) + some(asked.accents),
    breath: breaths.filter((b) => notPlayed.has(b.index) || notPlayed.has(b.index + 1)).length,
    intonation: left.filter((note) => note.durationQuarters >= shortestMeasured(input)).length,
    sound: left.filter((note) => note.durationQuarters >= shortestHeld(input)).length,
    continuity: barsOut(input, notPlayed),
  };
}

/** Whether at least half of the notes of a stretch were not played. */
function mostly(notPlayed: ReadonlySet<number>, from: number, to: number): boolean {
  const length = to - from + 1;
  return 2 * Array.from({ length }, (_, k) => from + k).filter((index) => notPlayed.has(index)).length >= length;
}

/** Quarters of the shortest note of which this take tells the pitch: a shorter one would not have told it either. */
function shortestMeasured({ part, measurements }: JudgeInput): number {
  const told = measurements.notes.filter((n) => isMeasured(n.centsFromOwnTuning) && !part.notes[n.index]!.grace);
  return told.reduce((least, n) => Math.min(least, part.notes[n.index]!.durationQuarters), Number.POSITIVE_INFINITY);
}

/** Quarters of the shortest note that was held long enough to be looked at. */
function shortestHeld({ part, measurements }: JudgeInput): number {
  return measurements.heldNotes.reduce(
    (least, { index }) => Math.min(least, part.notes[index]!.durationQuarters),
    Number.POSITIVE_INFINITY,
  );
}

function surely(observations: readonly Observation[], criterion: Criterion): number {
  return observations.filter((o) => o.criterion === criterion && o.weight === 'fix').length;
}

/** Breaths where none is asked for: each is a place of its own. */
function unasked(observations: readonly Observation[]): number {
  return observations.filter((o) => o.kind === 'breath-unmarked' && o.weight === 'fix').length;
}

/** What was passed over costs its bars; what was begun again costs the bar in which it falls. */
function stopped(observations: readonly Observation[]): number {
  return observations.filter((o) => o.kind === 'restart' && o.weight === 'fix').length;
}

function count(values: readonly MaybeNumber[]): number {
  return values.filter(isMeasured).length;
}

/** Bars within the range asked for, or near the player's own tempo where none is asked for. */
function tempoTally({ measurements, brief, standards }: JudgeInput): Pick<Tally, 'of' | 'met'> {
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

/** Performed bars of which any note was not played. */
function barsOut({ part }: JudgeInput, notPlayed: ReadonlySet<number>): number {
  const out = part.notes.filter(({ index }) => notPlayed.has(index));
  return new Set(out.map((n) => `${n.barIndex} ${n.pass}`)).size;
}
