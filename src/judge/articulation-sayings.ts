import { isWet } from '../measure/index.js';
import type { Saying } from './criterion-sayings.js';
import type { JudgeInput } from './observed/judge-input.js';

/** Fewer notes of one way of playing say nothing of a habit. */
const LEAST_OF_A_WAY = 3;
/** Of fewer notes the middle half is no half. */
const LEAST_TO_DIFFER = 6;

/**
 * The articulation of a take in one line: slurs that are joined, how long dotted and held notes sound and how alike they are,
 * and the two kinds of accent.
 *
 * @param input one take
 * @returns what is said of it; empty where there is nothing to tell
 *
 * Source: standards slurGapWatch, accentDetached, accentHeld.
 */
export function articulationSayings(input: JudgeInput): Saying[] {
  const { measurements, part, standards } = input;
  const slurred = measurements.transitions.filter((t) => part.notes[t.index]!.slurredToNext);
  const joined = slurred.filter((t) => t.gapSeconds <= standards.slurGapWatch.value).length;
  const sayings = [...lengths(input), ...accentKinds(input)];
  if (slurred.length > 0) sayings.unshift({ code: 'slurs-joined', facts: { joined, of: slurred.length } });
  return sayings;
}

/** How long dotted and held notes sound, and how alike dotted ones are. */
function lengths({ measurements }: JudgeInput): Saying[] {
  return measurements.articulations.flatMap(({ way, count, soundedShare, middleHalf }): Saying[] => {
    if (count < LEAST_OF_A_WAY) return [];
    if (way === 'tenuto') return [{ code: 'tenuto-sounds', facts: { percent: 100 * soundedShare } }];
    if (way !== 'staccato') return [];
    const sounds: Saying = { code: 'staccato-sounds', facts: { percent: 100 * soundedShare } };
    const [from, to] = middleHalf.map((share) => 100 * share) as [number, number];
    return count < LEAST_TO_DIFFER ? [sounds] : [sounds, { code: 'staccato-half', facts: { from, to } }];
  });
}

/** Accents that are short, with a space behind them, and accents that go on; in a room that rings nobody can tell. */
function accentKinds({ measurements, standards }: JudgeInput): Saying[] {
  if (isWet(measurements.recording)) return [];
  const shares = measurements.accents.flatMap(({ soundedShare }) => soundedShare ?? []);
  if (shares.length < LEAST_OF_A_WAY) return [];
  const short = shares.filter((share) => share <= standards.accentDetached.value).length;
  const long = shares.filter((share) => share >= standards.accentHeld.value).length;
  return [{ code: 'accent-kinds', facts: { short, long, of: shares.length } }];
}
