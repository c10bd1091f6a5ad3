import type { DecodedSegment } from './fine/types.js';

/**
 * One sound that is in no note, right where one note is missing, is that note at a wrong pitch.
 *
 * @param segments what was found, in order of time; `index` null for what is in no note
 * @param indexes of the notes that were looked for, in order
 * @param pitchOf the semitone of a segment
 * @returns the same with such sounds given to their notes; what repeats a neighbour's pitch may be its other half, and stays
 *
 * Source: definition.
 */
export function nameWrongNotes(
  segments: readonly DecodedSegment[],
  indexes: readonly number[],
  pitchOf: (segment: DecodedSegment) => number,
): DecodedSegment[] {
  const placeOf = new Map(indexes.map((index, place) => [index, place]));
  return segments.map((segment, k) => {
    const previous = segments[k - 1];
    const next = segments[k + 1];
    if (segment.index !== null || previous === undefined || next === undefined) return segment;
    if (previous.index === null || next.index === null) return segment;
    const place = placeOf.get(previous.index)! + 1;
    if (placeOf.get(next.index) !== place + 1) return segment;
    const pitch = pitchOf(segment);
    return pitch === pitchOf(previous) || pitch === pitchOf(next) ? segment : { ...segment, index: indexes[place]! };
  });
}
