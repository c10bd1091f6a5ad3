import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import type { NotePlace } from '../excerpt/finding-excerpt.js';
import type { Passage } from './find-passage.js';

/** Where the playhead stands when a note begins: seconds from the start of the clip, x, upper and lower end. */
export type PlayheadPoint = readonly [seconds: number, x: number, top: number, bottom: number];

/**
 * @param passage what is played
 * @param result the take; onsets in seconds from the first sample
 * @param part the part
 * @param placeOf where a note of the part stands in the picture; null when it does not
 * @returns a point for every note that is heard in the passage and stands in the picture, in order of time
 */
export function playheadPath(
  { fromSeconds, toSeconds }: Passage,
  result: TakeResult,
  part: Part,
  placeOf: (note: Part['notes'][number]) => NotePlace | null,
): PlayheadPoint[] {
  return result.notes
    .flatMap(({ index, onset }): PlayheadPoint[] => {
      const note = part.notes[index];
      if (note === undefined || onset === undefined || onset < fromSeconds || onset >= toSeconds) return [];
      const place = placeOf(note);
      return place === null ? [] : [[rounded(onset - fromSeconds, 3), ...pointsOf(place)]];
    })
    .sort(([a], [b]) => a - b);
}

const pointsOf = ({ x, top, bottom }: NotePlace) => [rounded(x, 1), rounded(top, 1), rounded(bottom, 1)] as const;

const rounded = (value: number, decimals: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals;
