import type { Features } from '../features/index.js';
import type { Part, PartNote } from '../score/index.js';
import { chooseOctave } from './choose-octave.js';
import type { Run } from './coarse/types.js';
import { dropMisplaced, localPace } from './expected-timing.js';
import { findTrough } from './find-trough.js';
import { decodePiece } from './fine/decode-piece.js';
import { fillGaps } from './fine/fill-gaps.js';
import { splitLeadIns } from './fine/split-lead-ins.js';
import type { DecodedSegment, DecodeInput } from './fine/types.js';
import type { Boundaries } from './grid/find-boundaries.js';
import type { PitchGrid } from './grid/pitch-grid.js';
import type { SegmentEvidence } from './grid/segment-evidence.js';
import { isJoined } from './is-joined.js';
import { judgeSegment, type SegmentVerdict } from './judge-segment.js';
import { nameWrongNotes } from './name-wrong-notes.js';
import { notMadeOut } from './not-made-out.js';
import { refineOffset } from './refine-offset.js';
import { refineOnset } from './refine-onset.js';
import type { AddedNote, AlignedNote } from './types.js';

/** What was heard, prepared once for a take. */
export interface Heard {
  readonly features: Features;
  readonly grid: PitchGrid;
  readonly evidence: SegmentEvidence;
  readonly boundaries: Boundaries;
  readonly tuningCents: number;
  readonly offsetSemitones: number;
}

/** Notes found in one piece. */
export interface PieceNotes {
  readonly notes: readonly AlignedNote[];
  readonly added: readonly AddedNote[];
}

interface TimedSegment extends DecodedSegment {
  /** null for a segment that is no note of the part */
  readonly verdict: SegmentVerdict | null;
  readonly onsetSeconds: number;
  readonly playedMidi: number;
}

/** An added note must have this much of its time at one pitch. */
const ADDED_SHARE = 0.5;
const LEAST_ADDED_SECONDS = 0.05;
/** So far back from the rough onset its attack is looked for, and no further than this share of the note before. */
const LOOK_BACK_SECONDS = 0.055;
const LOOK_BACK_SHARE = 0.5;
/** So far ahead of the rough onset, and no further than this share of the note, a break is still the one before it. */
const LOOK_AHEAD_SECONDS = 0.05;
const LOOK_AHEAD_SHARE = 0.4;
/** The old sound falls by so much until the break. */
const LEAST_FALL_DB = 8;
/** The new sound may begin so long before the lowest level. */
const TROUGH_MARGIN_SECONDS = 0.012;
/** A note that was only found when its gap was looked at again is never surer than this. */
const MOST_CONFIDENCE_AGAIN = 0.3;
const WEAK_ATTACK = 0.3;
const HARDLY_ANY_SHARE = 0.3;
const ECHOES = new Set([12, 19, 24]);

/**
 * Finds the notes of one uninterrupted piece of playing and times them.
 *
 * @param heard the take
 * @param part the part
 * @param piece which notes, and roughly when
 * @returns notes found, in order, and notes that are not in the part
 *
 * Source: the functions called here name theirs.
 */
export function alignPiece(heard: Heard, part: Part, piece: Run): PieceNotes {
  const { grid, evidence, boundaries, offsetSemitones } = heard;
  const notes = part.notes.slice(piece.firstNote, piece.lastNote + 1).filter((n) => !n.grace);
  const rough = notes.map((n) => piece.onsets[n.index - piece.firstNote]!);
  const first = notes[0];
  const last = notes.at(-1);
  if (first === undefined || last === undefined) return { notes: [], added: [] };
  const quarters = last.onsetQuarters + last.durationQuarters - first.onsetQuarters;
  const pace = localPace(notes, rough, (piece.endSeconds - piece.startSeconds) / quarters);
  const onsets = dropMisplaced(notes, rough, pace);
  const graceAfter = notes.map((n) => part.notes[n.index + 1]?.grace === true);
  const input: DecodeInput = {
    notes,
    graceAfter,
    roughOnsets: onsets,
    startSeconds: piece.startSeconds,
    endSeconds: piece.endSeconds,
    pace,
    boundaries,
    evidence,
    hopSeconds: grid.hopSeconds,
    offsetSemitones,
  };
  const segments = nameWrongNotes(
    splitLeadIns(input, fillGaps(input, decodePiece(input))),
    notes.map((n) => n.index),
    ({ fromFrame, toFrame }) => evidence.strongest(fromFrame, toFrame).midi,
  );
  const named = nameSegments(heard, part, timeSegments(heard, part, segments), piece.endSeconds);
  const unsure = notMadeOut(input, segments);
  for (const { index } of named.notes) unsure.delete(index);
  return { ...named, notes: [...named.notes, ...[...unsure].map(unclear)] };
}

function unclear(index: number): AlignedNote {
  return { index, status: 'unclear', confidence: 0 };
}

/** Exact onsets: at the crossing of pitches where the sound goes on, at the new attack where it does not. */
function timeSegments(heard: Heard, part: Part, segments: readonly DecodedSegment[]): TimedSegment[] {
  const { features, grid, evidence, tuningCents, offsetSemitones } = heard;
  const timed: TimedSegment[] = [];
  for (const segment of segments) {
    const { index, fromFrame, toFrame } = segment;
    const rough = fromFrame * grid.hopSeconds;
    const previous = timed.at(-1);
    const verdict =
      index === null ? null : judgeSegment(part.notes[index]!, fromFrame, toFrame, evidence, offsetSemitones);
    const playedMidi =
      verdict?.playedMidi ??
      chooseOctave(
        evidence,
        fromFrame,
        toFrame,
        (previous?.playedMidi ?? part.notes[0]!.soundingMidi) + offsetSemitones,
      ).midi - offsetSemitones;
    const back = Math.min(LOOK_BACK_SECONDS, LOOK_BACK_SHARE * (rough - (previous?.onsetSeconds ?? 0)));
    const joined = previous !== undefined && previous.playedMidi !== playedMidi && isJoined(grid, fromFrame, back);
    const before = previous === undefined ? null : previous.playedMidi + offsetSemitones + tuningCents / 100;
    const refined = joined ? rough : Math.max(0, refineOnset(features, rough, before, back));
    const onsetSeconds = previous === undefined ? refined : afterBreak(heard, refined, segment, before!);
    const least = previous === undefined ? 0 : previous.onsetSeconds + grid.hopSeconds;
    timed.push({ ...segment, verdict, playedMidi, onsetSeconds: Math.max(least, onsetSeconds) });
  }
  return timed;
}

/**
 * A new sound cannot begin where the old one is still to fall far below: as a note is let go its pitch may bend, which looks
 * like one. Then the attack after the lowest level is the onset.
 */
function afterBreak({ features, grid }: Heard, onset: number, segment: DecodedSegment, before: number): number {
  const { levelDb, hopSeconds } = grid;
  const { fromFrame, toFrame } = segment;
  const at = Math.min(levelDb.length - 1, Math.round(onset / hopSeconds));
  const ahead = Math.min(LOOK_AHEAD_SECONDS / hopSeconds, LOOK_AHEAD_SHARE * (toFrame - fromFrame));
  const trough = findTrough(grid, at, Math.max(at, fromFrame) + Math.round(ahead), toFrame);
  if (trough === null || levelDb[at]! - levelDb[trough]! < LEAST_FALL_DB) return onset;
  const lowest = trough * hopSeconds;
  return Math.max(onset, lowest - TROUGH_MARGIN_SECONDS, refineOnset(features, lowest, before, TROUGH_MARGIN_SECONDS));
}

function nameSegments(heard: Heard, part: Part, segments: readonly TimedSegment[], endSeconds: number): PieceNotes {
  const { features, evidence } = heard;
  const notes: AlignedNote[] = [];
  const added: AddedNote[] = [];
  let lastIndex = -1;
  segments.forEach((segment, s) => {
    const next = segments[s + 1]?.onsetSeconds ?? Math.max(endSeconds, segment.onsetSeconds + 0.02);
    const { index, verdict, fromFrame, toFrame, onsetSeconds, leadsIn } = segment;
    const offsetSeconds = refineOffset(features, onsetSeconds, next);
    if (index !== null && verdict !== null) {
      if (vanishes(heard, segments[s - 1], segment, offsetSeconds, next)) return;
      const most = segment.lookedAtAgain === true ? MOST_CONFIDENCE_AGAIN : 1;
      const confidence = Math.min(most, verdict.confidence);
      notes.push({ index, ...verdict, confidence, onsetSeconds, offsetSeconds });
      lastIndex = index;
      return;
    }
    const sure = evidence.strongest(fromFrame, toFrame).share >= ADDED_SHARE;
    const midi = segment.playedMidi;
    const meant = noteMeant(part.notes, lastIndex + 1, midi, segments[s + 1]?.index ?? part.notes.length);
    const found = meant ?? graceMeant(part.notes, lastIndex + 1, midi, notes);
    if (found !== null) {
      const confidence = meant === null ? 0.6 : 0.5;
      notes.push({ index: found, status: 'as-written', playedMidi: midi, onsetSeconds, offsetSeconds, confidence });
      lastIndex = found;
    } else if (sure && !echoes(segments[s - 1], midi) && offsetSeconds - onsetSeconds >= LEAST_ADDED_SECONDS) {
      added.push({ onsetSeconds, offsetSeconds, midi, afterIndex: lastIndex, ...(leadsIn && { leadsIn }) });
    }
  });
  return { notes, added };
}

/** A repeated note without an attack of its own, and with hardly any sound, is only the end of the note before it. */
function vanishes(
  heard: Heard,
  previous: TimedSegment | undefined,
  segment: TimedSegment,
  offsetSeconds: number,
  nextSeconds: number,
): boolean {
  if (previous === undefined || previous.playedMidi !== segment.playedMidi) return false;
  const at = heard.boundaries.frame.indexOf(segment.fromFrame);
  const sounding = (offsetSeconds - segment.onsetSeconds) / (nextSeconds - segment.onsetSeconds);
  return (heard.boundaries.attack[at] ?? 1) < WEAK_ATTACK && sounding < HARDLY_ANY_SHARE;
}

/** Whether an extra sound is only an octave, a twelfth or two octaves of the note before it, rung on or misheard. */
function echoes(previous: TimedSegment | undefined, midi: number): boolean {
  return previous !== undefined && ECHOES.has(Math.abs(midi - previous.playedMidi));
}

/** The note passed over here that an extra sound of its pitch must be. */
function noteMeant(notes: readonly PartNote[], from: number, midi: number, to: number): number | null {
  for (let i = from; i < to && i < from + 2; i++) if (!notes[i]!.grace && notes[i]!.soundingMidi === midi) return i;
  return null;
}

/** The written grace note that an extra sound is, if there is one of its pitch right here. */
function graceMeant(
  notes: readonly PartNote[],
  from: number,
  midi: number,
  found: readonly AlignedNote[],
): number | null {
  for (let i = from; notes[i]?.grace === true; i++) {
    if (notes[i]!.soundingMidi === midi && !found.some((n) => n.index === i)) return i;
  }
  return null;
}
