import type { AddedNote } from '../../align/index.js';
import { mayBeEcho, roomEchoes } from '../observed/echoes.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import { noteName, playedName } from '../observed/note-name.js';
import type { Observation } from '../observed/observation.js';

/** Around a restart extra sounds belong to the attempt that was given up. */
const RESTART_SECONDS = 2;

/**
 * Notes that were not heard and notes that are not in the part. A note that is only begun anew is no added note.
 *
 * @param input one take
 * @returns one observation a note; notes inside a skip are the skip's
 *
 * Source: definition. A note under a slur, or repeated, that is not heard may simply not have spoken or been too soft for
 * the recorder, and the first and last notes may be cut off: that is to be watched, not accused. So is what leads into a
 * note: it may be an ornament that is meant. What the room may have sent back is to be watched, and is nothing where the room
 * does so again and again.
 */
export function judgeMissingAndAdded(input: JudgeInput): Observation[] {
  return [...missing(input), ...added(input), ...inRests(input)];
}

function missing(input: JudgeInput): Observation[] {
  const { part, alignment, standards } = input;
  return alignment.notes.flatMap((aligned): Observation[] => {
    const { index } = aligned;
    if (aligned.status !== 'left-out' || alignment.skips.some((s) => index >= s.fromIndex && index <= s.toIndex))
      return [];
    const note = part.notes[index]!;
    const neighbours = [alignment.notes[index - 1], alignment.notes[index + 1]];
    const placed = neighbours.every(
      (n) => n === undefined || (n.status === 'as-written' && n.confidence >= standards.noteConfidence.value),
    );
    const repeated =
      part.notes[index - 1]?.soundingMidi === note.soundingMidi ||
      part.notes[index + 1]?.soundingMidi === note.soundingMidi;
    if (mayBeInTheOneBefore(input, index)) return [];
    const atTheEdge = index === 0 || index === part.notes.length - 1;
    const sure = placed && isEmpty(input, index) && !note.slurredFromPrevious && !repeated && !atTheEdge;
    const facts = { written: noteName(note.written), sure };
    return [
      {
        kind: 'missed-note',
        criterion: 'notes',
        weight: sure ? 'fix' : 'watch',
        size: 1,
        ...placeOf(input, note),
        facts,
      },
    ];
  });
}

/**
 * A note at the pitch of the one before it may be in what was taken for that one, held or begun again. Then only silence where it
 * stands tells that it is missing, and a rest after it is silent anyhow.
 */
function mayBeInTheOneBefore({ part, measurements, standards }: JudgeInput, index: number): boolean {
  const next = part.notes[index + 1];
  if (part.notes[index - 1]?.soundingMidi !== part.notes[index]!.soundingMidi || next === undefined) return false;
  const place = measurements.emptyPlaces.find((p) => p.index === index);
  if (place === undefined || place.closedUpShare >= standards.closedUp.value) return false;
  return next.restBeforeQuarters > 0 || place.silentSeconds < standards.emptyRepeated.value * place.writtenSeconds;
}

/** Whether there is silence where the note should stand, or the music has closed up over it. */
function isEmpty({ measurements, standards }: JudgeInput, index: number): boolean {
  const place = measurements.emptyPlaces.find((p) => p.index === index);
  if (place === undefined) return false;
  const { emptyShare, emptyFall, closedUp } = standards;
  if (place.closedUpShare >= closedUp.value) return true;
  const silent = place.silentSeconds >= emptyShare.value * place.writtenSeconds && place.fallDb >= emptyFall.value;
  return silent && place.closedUpShare > -closedUp.value;
}

function added(input: JudgeInput): Observation[] {
  const { part, alignment, measurements } = input;
  return alignment.added.flatMap((extra, k): Observation[] => {
    if (alignment.restarts.some((r) => Math.abs(r.onsetSeconds - extra.onsetSeconds) < RESTART_SECONDS)) return [];
    const after = part.notes[extra.afterIndex];
    if (after !== undefined && alignment.notes[after.index]!.playedMidi === extra.midi) return [];
    const echo = mayBeEcho(input, extra.onsetSeconds);
    if (echo && roomEchoes(input)) return [];
    const near = after ?? part.notes[0]!;
    const { bar, pass, beat } = measurements.addedPlaces[k] ?? near;
    const place = { bar, pass, beat, index: near.index, onset: extra.onsetSeconds };
    const written = extra.midi - (near.soundingMidi - near.writtenMidi);
    const sure =
      after !== undefined &&
      !echo &&
      extra.leadsIn !== true &&
      isBetweenSureNotes(input, extra) &&
      isSlip(input, extra, alignment.notes[after.index]!.playedMidi ?? extra.midi);
    const facts = {
      played: playedName(written, near.written),
      after: after === undefined ? null : noteName(after.written),
    };
    return [{ kind: 'added-note', criterion: 'notes', weight: sure ? 'fix' : 'watch', size: 1, ...place, facts }];
  });
}

/** Sounds in written rests that are no added notes of the alignment: worth a listen. */
function inRests({ part, alignment, measurements }: JudgeInput): Observation[] {
  return measurements.rests.flatMap((rest): Observation[] => {
    const { state, bar, pass, beat, index, onsetSeconds: onset, midi } = rest;
    if (state !== 'played-into' || onset === undefined || midi === undefined) return [];
    const before = part.notes[index]!;
    const told = alignment.added.some(
      (extra) => extra.afterIndex === index && extra.midi !== alignment.notes[index]!.playedMidi,
    );
    if (told) return [];
    const written = midi - alignment.offsetSemitones - (before.soundingMidi - before.writtenMidi);
    const facts = { played: playedName(written, before.written), after: noteName(before.written) };
    return [
      { kind: 'added-note', criterion: 'notes', weight: 'watch', size: 0.8, bar, pass, beat, index, onset, facts },
    ];
  });
}

/** Whether the notes on both sides were surely heard, and the second is not the extra one begun again. */
function isBetweenSureNotes({ alignment, standards }: JudgeInput, { afterIndex, midi }: AddedNote): boolean {
  const next = alignment.notes.slice(afterIndex + 1).find((n) => n.onsetSeconds !== undefined);
  const sure = [alignment.notes[afterIndex], next].every(
    (n) => n === undefined || n.confidence >= standards.noteConfidence.value,
  );
  return sure && next?.playedMidi !== midi;
}

/** Whether an extra sound is plainly one of its own: of a slip's length, and neither a bent tone nor far away. */
function isSlip({ standards }: JudgeInput, extra: AddedNote, beforeMidi: number): boolean {
  const seconds = extra.offsetSeconds - extra.onsetSeconds;
  const away = Math.abs(extra.midi - beforeMidi);
  const { addedSeconds, addedLongest, slipWidest } = standards;
  return seconds >= addedSeconds.value && seconds <= addedLongest.value && away > 1 && away <= slipWidest.value;
}
