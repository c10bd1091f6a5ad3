import { isMeasured } from '../base/index.js';
import { type Brief, CRITERIA, WITHOUT_POINTS } from '../brief/index.js';
import type { BreathMeasure } from '../measure/index.js';
import { tempoBeat } from '../score/index.js';
import { articulationSayings } from './articulation-sayings.js';
import { countPlaces } from './count-places.js';
import type { Saying } from './criterion-sayings.js';
import { dynamicsSayings } from './dynamics-sayings.js';
import type { Criterion } from './finding-kinds.js';
import { leaningsOf } from './leanings.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Observation } from './observed/observation.js';
import { tempoSaying, tuningSaying } from './pitch-and-tempo-sayings.js';
import { pointsFor } from './points.js';
import { whySoundIsOut } from './sound-judged.js';
import { soundSayings } from './sound-sayings.js';
import type { CriterionLine, Finding } from './types.js';
import type { WhatWasPlayed } from './what-was-played.js';
import { isLeftOut, whyNothing } from './why-nothing.js';

/** Of a criterion of which nothing was played. */
const NOT_PLAYED = { code: 'not-played', facts: {} } as const;

/**
 * One line a criterion for tables: counts of findings, what can be said in one line, and points where there is a brief.
 *
 * @param input one take
 * @param findings what was found
 * @param observations all that was noticed, before anything is grouped
 * @param played what was played of the part
 * @returns all nine criteria, in fixed order
 */
export function criterionLines(
  input: JudgeInput,
  findings: readonly Finding[],
  observations: readonly Observation[],
  { notPlayed, bars }: WhatWasPlayed,
): CriterionLine[] {
  const { brief } = input;
  const tallies = countPlaces(input, observations, notPlayed);
  const whole = input.alignment.fit === 'this-part' && bars.ending !== 'cut-off';
  return CRITERIA.map((criterion) => {
    const found = findings.filter((f) => f.criterion === criterion);
    const leftOut = isLeftOut(input, criterion);
    const tally = tallies[criterion];
    const nothing = tally.of > 0 && tally.notPlayed === tally.of;
    const sayings = leftOut || nothing ? [] : SAYINGS[criterion](input);
    const reason = sayings.length > 0 ? null : !leftOut && nothing ? NOT_PLAYED : whyNothing(input, criterion);
    const judged = found.length > 0 || (!leftOut && !nothing && hasEvidence(input, criterion));
    const counts = whole && !leftOut && (judged || nothing);
    return {
      criterion,
      judged,
      fix: found.filter((f) => f.weight === 'fix').length,
      watch: found.filter((f) => f.weight === 'watch' && f.ledByBar === undefined).length,
      sayings,
      ...(reason === null ? {} : { reason }),
      ...tally,
      ...(brief === undefined || isWithoutPoints(brief, criterion)
        ? {}
        : { points: pointsFor(brief, criterion, tally, counts) }),
    };
  });
}

/** Whether a criterion earns nothing unless the brief says so, and it does not: then it alters no sum and no error of one. */
function isWithoutPoints({ criteria }: Brief, criterion: Criterion): boolean {
  return WITHOUT_POINTS.has(criterion) && criteria[criterion].points === 0;
}

/** Whether there was anything to judge by: without it, no finding does not mean that all is well. */
function hasEvidence({ measurements, part }: JudgeInput, criterion: Criterion): boolean {
  const { groups, entries, tempo, tuning, contrasts, hairpins, recording, transitions } = measurements;
  if (criterion === 'sound') return whySoundIsOut(measurements) === null;
  if (criterion === 'rhythm') return groups.length + entries.length > 0;
  if (criterion === 'tempo') return isMeasured(tempo);
  if (criterion === 'intonation') return isMeasured(tuning);
  if (criterion === 'breath') return transitions.length > 0;
  if (criterion === 'articulation') {
    return transitions.length > 0 && part.notes.some((note) => note.slurredToNext || note.articulations.length > 0);
  }
  if (criterion !== 'dynamics') return true;
  const changes = [...contrasts.map((c) => c.differenceDb), ...hairpins.map((h) => h.riseDb)];
  return !recording.levelRiding && changes.some(isMeasured<number>);
}

/** What can be said of each criterion; empty where there is nothing to tell. */
const SAYINGS: Readonly<Record<Criterion, (input: JudgeInput) => Saying[]>> = {
  notes: (input) => {
    const notes = input.alignment.notes.filter((n) => input.part.notes[n.index]!.grace === false);
    const right = notes.filter((n) => n.status === 'as-written').length;
    const unclear = notes.filter((n) => n.status === 'unclear').length;
    return [{ code: 'notes-as-written', facts: { right, of: notes.length, unclear } }];
  },
  rhythm: (input) => {
    const { groups, entries } = input.measurements;
    const even = groups.filter(
      (g) => Math.max(...g.shares.map((x, k) => Math.abs(x - g.written[k]!))) <= input.standards.groupWatch.value,
    );
    const late = entries.filter((e) => e.lateSeconds / e.secondsAQuarter > input.standards.entryWatch.value).length;
    const [evenOf, inTimeOf] = [groups.length, entries.length];
    const sayings: Saying[] = [];
    if (evenOf > 0) sayings.push({ code: 'groups-even', facts: { even: even.length, of: evenOf } });
    if (inTimeOf > 0) sayings.push({ code: 'entries-in-time', facts: { inTime: inTimeOf - late, of: inTimeOf } });
    for (const leaning of leaningsOf(input)) sayings.push({ code: 'groups-lean', facts: leaning });
    return sayings;
  },
  tempo: ({ part, measurements: { tempo } }) =>
    isMeasured(tempo) ? [tempoSaying(tempo.playedQuarterBpm, tempo.markedQuarterBpm, tempoBeat(part))] : [],
  dynamics: dynamicsSayings,
  articulation: articulationSayings,
  breath: (input) => {
    const { breaths } = input.measurements;
    const reached = breaths.filter((b) => isMeasured(b.gapSeconds));
    const beyond = breaths.length - reached.length;
    if (reached.length === 0) return [];
    const taken = reached.filter((b) => (b.gapSeconds as number) > input.standards.breathTaken.value);
    const short = shortFullBreaths(input, taken);
    const sayings: Saying[] = [{ code: 'breaths-heard', facts: { heard: taken.length, of: reached.length } }];
    if (short > 0) sayings.push({ code: 'short-breaths', facts: { count: short } });
    if (beyond > 0) sayings.push({ code: 'breaths-beyond', facts: { count: beyond } });
    return sayings;
  },
  intonation: (input) => {
    const { tuning } = input.measurements;
    return isMeasured(tuning) ? [tuningSaying(tuning.a4Hz, tuning.centsFromA440), ...leanings(input)] : [];
  },
  sound: soundSayings,
  continuity: ({ alignment: { restarts, skips } }) => {
    const sayings: Saying[] = [];
    if (restarts.length > 0) sayings.push({ code: 'restarts', facts: { count: restarts.length } });
    if (skips.length > 0) sayings.push({ code: 'skips', facts: { count: skips.length } });
    return sayings.length === 0 ? [{ code: 'played-through', facts: {} }] : sayings;
  },
};

/** How many full breaths asked for by the brief were only sips. */
function shortFullBreaths({ brief, standards }: JudgeInput, taken: readonly BreathMeasure[]): number {
  const full = new Set(brief?.breaths.filter((b) => b.kind === 'full').map((b) => b.index));
  return taken.filter((b) => full.has(b.index) && (b.gapSeconds as number) < standards.breathFull.value).length;
}

/** Where the pitch surely leans: high or low notes, and loud ones. */
function leanings({ measurements, standards }: JudgeInput): Saying[] {
  const { registers, withLoudness } = measurements.intonation;
  const least = standards.inTune.value;
  const sides = registers.flatMap(({ register, cents, intervalCents: [low, high] }): Saying[] => {
    const sure = Math.abs(cents) > least && low * high > 0;
    return sure && register !== 'middle' ? [{ code: 'register', facts: { register, cents } }] : [];
  });
  if (!isMeasured(withLoudness)) return sides;
  const { centsPerDb, errorCentsPerDb, reachDb } = withLoudness;
  const sure = Math.abs(centsPerDb) - 2 * errorCentsPerDb > 0 && Math.abs(centsPerDb * reachDb) > least;
  return sure ? [...sides, { code: 'loud-notes', facts: { cents: centsPerDb * reachDb } }] : sides;
}
