import { isMeasured, type Language } from '../base/index.js';
import { CRITERIA } from '../brief/index.js';
import type { BreathMeasure } from '../measure/index.js';
import { countPlaces } from './count-places.js';
import { dynamicsLine } from './dynamics-line.js';
import type { JudgeInput } from './judge-input.js';
import type { Observation } from './observation.js';
import { pointsFor } from './points.js';
import type { Criterion, CriterionLine, Finding } from './types.js';
import { whyNothing } from './why-nothing.js';
import type { SummaryWords } from './wording/words.js';
import { wordsIn } from './wording/words-in.js';

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
 * @param language of the words
 * @returns all eight criteria, in fixed order
 *
 * Source: definition.
 */
export function criterionLines(
  input: JudgeInput,
  findings: readonly Finding[],
  observations: readonly Observation[],
  language: Language,
): CriterionLine[] {
  const words = wordsIn(language).summaries;
  const { brief } = input;
  const tallies = countPlaces(input, observations);
  return CRITERIA.map((criterion) => {
    const found = findings.filter((f) => f.criterion === criterion);
    const left = leftOut(input, criterion, words);
    const reason = whyNothing(input, criterion);
    const judged = found.length > 0 || (left === null && hasEvidence(input, criterion));
    return {
      criterion,
      judged,
      fix: found.filter((f) => f.weight === 'fix').length,
      watch: found.filter((f) => f.weight === 'watch' && f.ledByBar === undefined).length,
      summary: left ?? SUMMARIES[criterion](input, words),
      ...(reason === null ? {} : { reason }),
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
function leftOut({ brief }: JudgeInput, criterion: Criterion, words: SummaryWords): string | null {
  if (brief === undefined || brief.criteria[criterion].judged) return null;
  if (brief.played === 'all-slurred' && criterion === 'articulation') return words.leftOut['all-slurred'];
  if (brief.played === 'under-tempo' && criterion === 'tempo') return words.leftOut['under-tempo'];
  return words.leftOut['by-brief'];
}

const SUMMARIES: Readonly<Record<Criterion, (input: JudgeInput, words: SummaryWords) => string>> = {
  notes: (input, words) => {
    const notes = input.alignment.notes.filter((n) => input.part.notes[n.index]!.grace === false);
    const right = notes.filter((n) => n.status === 'as-written').length;
    return words.notes(right, notes.length, notes.filter((n) => n.status === 'unclear').length);
  },
  rhythm: (input, words) => {
    const { groups, entries } = input.measurements;
    const even = groups.filter(
      (g) => Math.max(...g.shares.map((x, k) => Math.abs(x - g.written[k]!))) <= input.standards.groupWatch.value,
    );
    const late = entries.filter((e) => e.lateSeconds / e.secondsAQuarter > input.standards.entryWatch.value).length;
    const parts = [
      groups.length === 0 ? '' : words.groupsEven(even.length, groups.length),
      entries.length === 0 ? '' : words.entriesInTime(entries.length - late, entries.length),
    ].filter((text) => text !== '');
    return parts.length === 0 ? words.noRhythm : parts.join(', ');
  },
  tempo: (input, words) => {
    const { tempo } = input.measurements;
    if (!isMeasured(tempo)) return '';
    return words.tempo(tempo.playedQuarterBpm, tempo.markedQuarterBpm);
  },
  dynamics: dynamicsLine,
  articulation: (input, words) => {
    const slurred = input.measurements.transitions.filter((t) => input.part.notes[t.index]!.slurredToNext);
    const joined = slurred.filter((t) => t.gapSeconds <= input.standards.slurGapWatch.value).length;
    const parts = slurred.length === 0 ? [] : [words.slursJoined(joined, slurred.length)];
    return [...parts, ...lengths(input, words)].join(', ') || words.noArticulation;
  },
  breath: (input, words) => {
    const { breaths } = input.measurements;
    if (breaths.length === 0) return words.noBreathMarked;
    const reached = breaths.filter((b) => isMeasured(b.gapSeconds));
    const beyond = breaths.length - reached.length;
    if (reached.length === 0) return words.noBreathHeard;
    const taken = reached.filter((b) => (b.gapSeconds as number) > BREATH_SECONDS);
    const short = shortFullBreaths(input, taken);
    const heard = words.breathsHeard(taken.length, reached.length);
    const quick = short === 0 ? '' : `, ${words.shortBreaths(short)}`;
    return `${heard}${quick}${beyond === 0 ? '' : `; ${words.breathsBeyond(beyond)}`}`;
  },
  intonation: (input, words) => {
    const { tuning } = input.measurements;
    if (!isMeasured(tuning)) return '';
    return [words.tuning(tuning.a4Hz, tuning.centsFromA440), ...leanings(input, words)].join('; ');
  },
  continuity: (input, words) => {
    const { restarts, skips } = input.alignment;
    return restarts.length + skips.length === 0 ? words.playedThrough : words.stops(restarts.length, skips.length);
  },
};

/** How long dotted and held notes sound, in words. */
function lengths({ measurements }: JudgeInput, words: SummaryWords): string[] {
  return measurements.articulations.flatMap(({ way, count, soundedShare }) => {
    if (count < LEAST_OF_A_WAY) return [];
    if (way === 'staccato') return [words.dotted(100 * soundedShare)];
    return way === 'tenuto' ? [words.tenuto(100 * soundedShare)] : [];
  });
}

/** How many full breaths asked for by the brief were only sips. */
function shortFullBreaths({ brief }: JudgeInput, taken: readonly BreathMeasure[]): number {
  const full = new Set(brief?.breaths.filter((b) => b.kind === 'full').map((b) => b.index));
  return taken.filter((b) => full.has(b.index) && (b.gapSeconds as number) < FULL_BREATH_SECONDS).length;
}

/** Where the pitch surely leans: high or low notes, and loud ones. */
function leanings({ measurements, standards }: JudgeInput, words: SummaryWords): string[] {
  const { registers, withLoudness } = measurements.intonation;
  const least = standards.inTune.value;
  const sides = registers.flatMap(({ register, cents, intervalCents: [low, high] }) => {
    const sure = Math.abs(cents) > least && low * high > 0;
    return sure && register !== 'middle' ? [words.register(register, cents)] : [];
  });
  if (!isMeasured(withLoudness)) return sides;
  const { centsPerDb, errorCentsPerDb, reachDb } = withLoudness;
  const sure = Math.abs(centsPerDb) - 2 * errorCentsPerDb > 0 && Math.abs(centsPerDb * reachDb) > least;
  return sure ? [...sides, words.loudNotes(centsPerDb * reachDb)] : sides;
}
