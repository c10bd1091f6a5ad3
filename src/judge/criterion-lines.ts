import { isMeasured } from '../base/index.js';
import { CRITERIA } from '../brief/index.js';
import type { BreathMeasure } from '../measure/index.js';
import { countPlaces } from './count-places.js';
import type { JudgeInput } from './judge-input.js';
import type { Observation } from './observation.js';
import { pointsFor } from './points.js';
import type { Criterion, CriterionLine, Finding } from './types.js';

/** A gap this long at a mark is a breath taken. Source: a quick breath takes 0.2 to 0.5 s (from memory), less the room. */
const BREATH_SECONDS = 0.12;
/** A shorter gap is a sip and no full breath. Source: a quick breath takes 0.2 to 0.5 s, a full one up to 1 s (from memory). */
const FULL_BREATH_SECONDS = 0.3;
/** Fewer notes of one way of playing say nothing of a habit. */
const LEAST_OF_A_WAY = 3;

/**
 * One line a criterion for tables: counts of findings, the key figure in plain words, and points where there is a brief.
 *
 * @param input one take
 * @param findings what was found
 * @param observations all that was noticed, before anything is grouped
 * @returns all eight criteria, in fixed order
 *
 * Source: definition.
 */
export function criterionLines(
  input: JudgeInput,
  findings: readonly Finding[],
  observations: readonly Observation[],
): CriterionLine[] {
  const { brief } = input;
  const tallies = countPlaces(input, observations);
  return CRITERIA.map((criterion) => {
    const found = findings.filter((f) => f.criterion === criterion);
    const reason = leftOut(input, criterion);
    const judged = found.length > 0 || (reason === null && hasEvidence(input, criterion));
    return {
      criterion,
      judged,
      fix: found.filter((f) => f.weight === 'fix').length,
      watch: found.filter((f) => f.weight === 'watch' && f.ledByBar === undefined).length,
      summary: reason ?? SUMMARIES[criterion](input),
      ...tallies[criterion],
      ...(brief === undefined ? {} : { points: pointsFor(brief, criterion, judged, tallies[criterion]) }),
    };
  });
}

/** Whether there was anything to judge by: without it, no finding does not mean that all is well. */
function hasEvidence({ measurements, part }: JudgeInput, criterion: Criterion): boolean {
  const { groups, entries, tempo, tuning, contrasts, hairpins, recording, transitions } = measurements;
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
    const what =
      measured.length === 0 ? `${rises.length} hairpins measured` : `changes of level ${changes.join(', ')} dB`;
    const wrong = input.measurements.markOrder.reversed[0];
    return wrong === undefined ? what : `${what}; over the whole take ${wrong.softer} is louder than ${wrong.louder}`;
  },
  articulation: (input) => {
    const slurred = input.measurements.transitions.filter((t) => input.part.notes[t.index]!.slurredToNext);
    const joined = slurred.filter((t) => t.gapSeconds <= input.standards.slurGapWatch.value).length;
    const parts = slurred.length === 0 ? [] : [`${joined} of ${slurred.length} slurred notes joined`];
    return [...parts, ...lengths(input)].join(', ') || 'no slur or dot to measure';
  },
  breath: (input) => {
    const { breaths } = input.measurements;
    if (breaths.length === 0) return 'no breath marked';
    const reached = breaths.filter((b) => isMeasured(b.gapSeconds));
    const beyond = breaths.length - reached.length;
    if (reached.length === 0) return 'no marked breath could be heard: the notes around them were not all played';
    const taken = reached.filter((b) => (b.gapSeconds as number) > BREATH_SECONDS);
    const heard = `${taken.length} of ${reached.length} marked ${reached.length === 1 ? 'breath' : 'breaths'} heard`;
    const rest = beyond === 0 ? '' : `; ${beyond} more ${beyond === 1 ? 'stands' : 'stand'} where not all was played`;
    return heard + shortFullBreaths(input, taken) + rest;
  },
  intonation: (input) => {
    const { tuning } = input.measurements;
    if (!isMeasured(tuning)) return `not measured: ${tuning.notMeasured}`;
    const cents = Math.round(tuning.centsFromA440);
    const own = `A = ${tuning.a4Hz.toFixed(1)} Hz (${cents === 0 ? '0' : `${cents > 0 ? '+' : '−'}${Math.abs(cents)}`} cents)`;
    return [own, ...leanings(input)].join('; ');
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

/** How long dotted and held notes sound, in words. */
function lengths({ measurements }: JudgeInput): string[] {
  return measurements.articulations.flatMap(({ way, count, soundedShare }) => {
    const percent = `${Math.round(100 * soundedShare)} percent of their time`;
    if (count < LEAST_OF_A_WAY) return [];
    if (way === 'staccato') return [`dotted notes sound for ${percent}`];
    return way === 'tenuto' ? [`notes with a line sound for ${percent}`] : [];
  });
}

/** Full breaths asked for by the brief that were only sips. */
function shortFullBreaths({ brief }: JudgeInput, taken: readonly BreathMeasure[]): string {
  const full = new Set(brief?.breaths.filter((b) => b.kind === 'full').map((b) => b.index));
  const short = taken.filter((b) => full.has(b.index) && (b.gapSeconds as number) < FULL_BREATH_SECONDS).length;
  if (short === 0) return '';
  return short === 1 ? ', one full breath was only a quick one' : `, ${short} full breaths were only quick ones`;
}

/** Where the pitch surely leans: high or low notes, and loud ones. */
function leanings({ measurements, standards }: JudgeInput): string[] {
  const { registers, withLoudness } = measurements.intonation;
  const least = standards.inTune.value;
  const sides = registers.flatMap(({ register, cents, intervalCents: [low, high] }) => {
    const sure = Math.abs(cents) > least && low * high > 0;
    return sure && register !== 'middle' ? [`${register} notes ${lean(cents)}`] : [];
  });
  if (!isMeasured(withLoudness)) return sides;
  const { centsPerDb, errorCentsPerDb, reachDb } = withLoudness;
  const sure = Math.abs(centsPerDb) - 2 * errorCentsPerDb > 0 && Math.abs(centsPerDb * reachDb) > least;
  return sure ? [...sides, `loud notes ${lean(centsPerDb * reachDb)} of soft ones`] : sides;
}

function lean(cents: number): string {
  return `${Math.abs(Math.round(cents))} cents ${cents > 0 ? 'sharp' : 'flat'}`;
}
