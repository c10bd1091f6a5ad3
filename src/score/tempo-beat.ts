import type { PerformedBar } from './types.js';

/** The note that a metronome counts. */
export type TempoBeat = 'quarter' | 'dotted-quarter';

/** Quarters of each. */
export const QUARTERS_OF_BEAT: Readonly<Record<TempoBeat, number>> = { quarter: 1, 'dotted-quarter': 1.5 };

/**
 * @param bars of a part
 * @returns what its tempo is counted in: dotted quarters where every bar is of a compound metre in eighths (6/8, 9/8, 12/8),
 *   else quarters, as in all documents
 *
 * Source: common practice: in a compound metre three eighths are one beat.
 */
export function tempoBeat(bars: readonly Pick<PerformedBar, 'beats' | 'beatType'>[]): TempoBeat {
  const isCompound = ({ beats, beatType }: Pick<PerformedBar, 'beats' | 'beatType'>): boolean =>
    beatType === 8 && beats > 3 && beats % 3 === 0;
  return bars.length > 0 && bars.every(isCompound) ? 'dotted-quarter' : 'quarter';
}
