import { lowerBound } from './lower-bound.js';
import type { DecodedSegment, DecodeInput } from './types.js';

/** A lead-in lasts at least as long as a quick grace note, and no longer than this, nor than this share of its note. */
const LEAST_SECONDS = 0.05;
const MOST_SECONDS = 0.25;
const MOST_SHARE = 0.5;
/** It lies no further from its note than ornaments do. */
const FURTHEST_SEMITONES = 4;
/** Its own pitch fills this much of it, that of its note hardly any; behind it, the note's pitch fills this much. */
const LEAST_OWN_SHARE = 0.6;
const MOST_OF_NOTE = 0.2;
const LEAST_OF_NOTE = 0.7;
const LEAST_CHANGE = 0.5;

/**
 * Parts a note from a short sound of another pitch that leads into it: a grace note that is not written, or a tone that
 * slips. It costs the search too little to pass over such a sound within a note. What lies at the end of the note before
 * is left there: on real players that is mostly a release.
 *
 * @param input what was asked of the search
 * @param segments what it found, in order of time
 * @returns the same with lead-ins as segments of their own, which belong to no note
 *
 * Source: definition; the length of grace notes is common practice.
 */
export function splitLeadIns(input: DecodeInput, segments: readonly DecodedSegment[]): DecodedSegment[] {
  const midiOf = new Map(input.notes.map((n) => [n.index, n.soundingMidi + input.offsetSemitones]));
  return segments.flatMap((segment, k): DecodedSegment[] => {
    const midi = midiOf.get(segment.index ?? -1);
    const end = midi === undefined ? null : leadInEnd(input, segment, midi, segments[k - 1]);
    if (end === null) return [segment];
    return [
      { index: null, fromFrame: segment.fromFrame, toFrame: end, leadsIn: true },
      { ...segment, fromFrame: end },
    ];
  });
}

/** The boundary at which a lead-in ends and its note begins, null where there is none. */
function leadInEnd(
  { boundaries, evidence, hopSeconds }: DecodeInput,
  { fromFrame, toFrame }: DecodedSegment,
  midi: number,
  previous: DecodedSegment | undefined,
): number | null {
  const { frame, pitchChange } = boundaries;
  const most = fromFrame + Math.min(MOST_SECONDS / hopSeconds, MOST_SHARE * (toFrame - fromFrame));
  for (let b = lowerBound(frame, fromFrame + LEAST_SECONDS / hopSeconds); b < frame.length && frame[b]! <= most; b++) {
    const at = frame[b]!;
    if (pitchChange[b]! < LEAST_CHANGE || evidence.share(midi, fromFrame, at) > MOST_OF_NOTE) continue;
    if (evidence.share(midi, at, toFrame) < LEAST_OF_NOTE) continue;
    const lead = evidence.strongest(fromFrame, at);
    const goesOn =
      previous !== undefined && evidence.strongest(previous.fromFrame, previous.toFrame).midi === lead.midi;
    if (!goesOn && lead.share >= LEAST_OWN_SHARE && Math.abs(lead.midi - midi) <= FURTHEST_SEMITONES) return at;
  }
  return null;
}
