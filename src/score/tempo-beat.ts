import type { Part } from './types.js';

/** Quarters of each note that documents count the tempo in. */
export const QUARTERS_OF_BEAT = { quarter: 1, 'dotted-quarter': 1.5, half: 2 } as const;

/** The note that a metronome counts. */
export type TempoBeat = keyof typeof QUARTERS_OF_BEAT;

const BEATS = Object.keys(QUARTERS_OF_BEAT) as TempoBeat[];

/**
 * @param part its metres and tempos
 * @returns what its tempo is counted in on pages: the note of the metronome mark at the beginning; where none of these is
 *   printed, dotted quarters when every bar is of a compound metre in eighths (6/8, 9/8, 12/8), halves when every bar counts
 *   them (2/2, 3/2), else quarters
 *
 * Source: common practice: in a compound metre three eighths are one beat; a metronome mark names the note to be counted.
 */
export function tempoBeat({ bars, tempos }: PartBeats): TempoBeat {
  const printed = BEATS.find((beat) => QUARTERS_OF_BEAT[beat] === tempos[0]?.unitQuarters);
  if (printed !== undefined) return printed;
  const each = (of: (metre: Metre) => boolean): boolean => bars.length > 0 && bars.every(of);
  if (each(({ beats, beatType }) => beatType === 8 && beats > 3 && beats % 3 === 0)) return 'dotted-quarter';
  return each(({ beatType }) => beatType === 2) ? 'half' : 'quarter';
}

type Metre = Pick<Part['bars'][number], 'beats' | 'beatType'>;

interface PartBeats {
  readonly bars: readonly Metre[];
  readonly tempos: Part['tempos'];
}
