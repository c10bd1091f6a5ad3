import type { AlignedNote } from '../../align/index.js';
import { isMeasured, median, type NotMeasured, notMeasured } from '../../base/index.js';
import type { PartNote } from '../../score/index.js';
import type { NoteContext } from '../context/context.js';
import { isWet } from '../is-wet.js';
import type { HeldNoteMeasure, RecordingMeasure } from '../types.js';
import { levelCourse } from './level-course.js';
import { pitchCourse } from './pitch-course.js';
import { type SplitCourse, splitVibrato } from './split-vibrato.js';
import { steadyCents } from './steady-cents.js';

/** Left out at the beginning and at the end of a note: it speaks, and it is let go. */
const BEGINNING_SECONDS = 0.12;
const ENDING_SECONDS = 0.06;
/** What is left must last so long. */
const LEAST_SECONDS = 0.36;
/** Its share in which a pitch can be heard. */
const LEAST_HEARD = 0.8;
const LEAST_CLARITY = 0.8;
/** Longer notes are looked at in pieces: nobody's vibrato keeps its turns for longer. */
const PIECE_SECONDS = 0.9;
/** A wave that takes so much of a pitch's movement away is vibrato, if it is as deep as can be heard. */
const REGULAR_SHARE = 0.65;
const LEAST_DEPTH_CENTS = 5;
/** The end of a note: what is compared with its middle. */
const END_SECONDS = 0.2;
const MIDDLE_FROM = 0.2;
const MIDDLE_TO = 0.6;

/**
 * How steadily each long note is held: how far pitch and level stray from their own slow course, with regular vibrato told
 * apart, and where they have come to at its end.
 *
 * @param context the take with its notes measured
 * @param recording the recording itself
 * @returns one entry a note that is held for about half a second or more, in order
 *
 * Source: what vibrato is, and how far a course strays: see splitVibrato. The other constants are working values; those of
 * vibrato part planted shaking from vibrato in takes of the synthesiser.
 */
export function measureHeldNotes(context: NoteContext, recording: RecordingMeasure): HeldNoteMeasure[] {
  return context.part.notes.flatMap((note) => {
    const aligned = context.alignment.notes[note.index]!;
    return held(context, recording, note, aligned) ?? [];
  });
}

function held(
  context: NoteContext,
  recording: RecordingMeasure,
  note: PartNote,
  { onsetSeconds, offsetSeconds, playedMidi }: AlignedNote,
): HeldNoteMeasure | null {
  if (onsetSeconds === undefined || offsetSeconds === undefined || note.grace || note.ornament !== null) return null;
  const [from, to] = [onsetSeconds + BEGINNING_SECONDS, offsetSeconds - ENDING_SECONDS];
  if (to - from < LEAST_SECONDS) return null;
  const { features, alignment, part } = context;
  const pitch = pitchCourse(features, playedMidi! + alignment.offsetSemitones, from, to, LEAST_CLARITY);
  if (pitch.cents.length * features.pitchHopSeconds < LEAST_HEARD * (to - from)) return null;
  if (steadyCents(pitch.cents) === null) return null;
  const level = levelCourse(features, from, to);
  const endCents = atEnd(pitch.seconds, pitch.cents, from, to);
  // a pitch that is not heard in the middle, or at the end, is not held
  if (Number.isNaN(endCents)) return null;
  const wobble = splitPieces(pitch.seconds, pitch.cents);
  const vibrato = isVibrato(wobble) ? { rateHz: wobble.rateHz, depthCents: wobble.depth } : undefined;
  const next = part.notes[note.index + 1];
  return {
    index: note.index,
    bar: note.bar,
    pass: note.pass,
    seconds: to - from,
    wobbleCents: vibrato === undefined ? wobble.spread : wobble.restSpread,
    ...(vibrato === undefined ? {} : { vibrato }),
    wobbleDb: whyNoLevel(recording) ?? splitPieces(level.seconds, level.decibels).spread,
    endCents,
    endDb: atEnd(level.seconds, level.decibels, from, to),
    beforeBreath: next === undefined || note.breathAfter !== null || next.restBeforeQuarters > 0,
  };
}

/** Whether the room, or not knowing it, keeps the level from being looked at: in a wet one every movement of the pitch moves it. */
function whyNoLevel({ reverberationSeconds }: RecordingMeasure): NotMeasured | null {
  if (!isMeasured<number>(reverberationSeconds)) return reverberationSeconds;
  return isWet({ reverberationSeconds }) ? notMeasured('room-rings') : null;
}

function isVibrato({ regularShare, depth }: SplitCourse): boolean {
  return regularShare >= REGULAR_SHARE && depth >= LEAST_DEPTH_CENTS;
}

/** Medians over the pieces of a course. */
function splitPieces(seconds: readonly number[], values: readonly number[]): SplitCourse {
  const span = seconds.at(-1)! - seconds[0]!;
  const pieces = Math.max(1, Math.round(span / PIECE_SECONDS));
  const splits = Array.from({ length: pieces }, (_, k) => {
    const [a, b] = [k, k + 1].map((n) => Math.round((n * seconds.length) / pieces));
    return splitVibrato(seconds.slice(a, b), values.slice(a, b));
  });
  const middle = (of: keyof SplitCourse): number => median(splits.map((split) => split[of]));
  return {
    spread: middle('spread'),
    restSpread: middle('restSpread'),
    regularShare: middle('regularShare'),
    rateHz: middle('rateHz'),
    depth: middle('depth'),
  };
}

/** The end of a course over its middle; NaN where either is empty. */
function atEnd(seconds: readonly number[], values: readonly number[], from: number, to: number): number {
  const within = (a: number, b: number): number => median(values.filter((_, i) => seconds[i]! >= a && seconds[i]! < b));
  const at = (share: number): number => from + share * (to - from);
  return within(Math.max(at(MIDDLE_TO), to - END_SECONDS), to + 1) - within(at(MIDDLE_FROM), at(MIDDLE_TO));
}
