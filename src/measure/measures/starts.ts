import { median } from '../../base/index.js';
import { CANDIDATES, type Features } from '../../features/index.js';
import type { NoteContext } from '../context/context.js';
import type { StartMeasure } from '../types.js';
import { firstHeard } from './first-heard.js';
import { levelCourse } from './level-course.js';

/** A start is looked for so long before a note's onset, and its speaking so long after it. */
const BEFORE_SECONDS = 0.25;
const AFTER_SECONDS = 0.3;
/** Shorter notes have no steady level to come to. */
const LEAST_SECONDS = 0.2;
const WITHIN_SEMITONES = 0.6;
const LEAST_CLARITY = 0.7;
/** So many frames in a row at its pitch, and it has come to it. */
const FRAMES_IN_A_ROW = 4;
/** Another pitch is one when it is as clear as this, as far away, as loud, and lasts for so many frames. */
const CRACK_CLARITY = 0.85;
const CRACK_SEMITONES = 2.5;
const CRACK_DB = 14;
const CRACK_FRAMES = 4;

/**
 * How each note out of silence begins: how long it takes to come to its pitch and level, and whether it speaks at another pitch
 * before.
 *
 * @param context the take with its notes measured
 * @returns one entry a note that begins where the sound before has died away, in order
 *
 * Source: definition; the constants are working values, set on takes of the synthesiser and looked at on real players.
 */
export function measureStarts(context: NoteContext): StartMeasure[] {
  return context.part.notes.flatMap((note) => {
    const start = note.grace || note.slurredFromPrevious ? null : startOf(context, note.index);
    return start === null ? [] : [{ index: note.index, bar: note.bar, pass: note.pass, ...start }];
  });
}

function startOf(context: NoteContext, index: number): Omit<StartMeasure, 'index' | 'bar' | 'pass'> | null {
  const { features, alignment, notes } = context;
  const { onsetSeconds, offsetSeconds, playedMidi } = alignment.notes[index]!;
  const steadyDb = notes[index]!.levelDb;
  if (onsetSeconds === undefined || offsetSeconds === undefined || typeof steadyDb !== 'number') return null;
  if (offsetSeconds - onsetSeconds < LEAST_SECONDS) return null;
  const before = Math.max(alignment.notes[index - 1]?.offsetSeconds ?? 0, onsetSeconds - BEFORE_SECONDS);
  const until = Math.min(offsetSeconds, onsetSeconds + AFTER_SECONDS);
  const found = firstHeard(features, before, onsetSeconds, until, steadyDb);
  if (found === null) return null;
  const { heard, atLevel } = found;
  const midi = playedMidi! + alignment.offsetSemitones;
  const atPitch = pitchReached(features, heard, until, midi);
  if (atPitch === null) return null;
  const crack = crackBetween(features, heard, atPitch, midi, steadyDb);
  return { pitchSeconds: atPitch - heard, levelSeconds: atLevel - heard, ...(crack === null ? {} : { crack }) };
}

function pitchReached(features: Features, from: number, to: number, midi: number): number | null {
  const { pitchHopSeconds: hop, candidateMidi, candidateClarity } = features;
  let row = 0;
  for (let f = Math.round(from / hop); f * hop <= to; f++) {
    let there = false;
    for (let c = f * CANDIDATES; c < (f + 1) * CANDIDATES; c++) {
      if (Math.abs(candidateMidi[c]! - midi) < WITHIN_SEMITONES && candidateClarity[c]! >= LEAST_CLARITY) there = true;
    }
    if (!there || isAnother(candidateMidi[f * CANDIDATES]! - midi)) row = 0;
    else if (++row === FRAMES_IN_A_ROW) return (f - FRAMES_IN_A_ROW + 1) * hop;
  }
  return null;
}

/** Whether a pitch is plainly another one; octaves below are in every tone. */
function isAnother(semitones: number): boolean {
  const below = semitones < 0 ? Math.abs(semitones + 12 * Math.round(-semitones / 12)) : Number.POSITIVE_INFINITY;
  return Math.abs(semitones) >= CRACK_SEMITONES && below >= WITHIN_SEMITONES;
}

function crackBetween(
  features: Features,
  from: number,
  to: number,
  midi: number,
  steadyDb: number,
): { semitones: number; seconds: number } | null {
  const { pitchHopSeconds: hop, candidateMidi, candidateClarity } = features;
  const found: number[] = [];
  for (let f = Math.round(from / hop); f * hop < to; f++) {
    const at = f * CANDIDATES;
    const away = candidateMidi[at]! - midi;
    const [db = Number.NEGATIVE_INFINITY] = levelCourse(features, f * hop - 0.02, f * hop + 0.022).decibels;
    if (candidateClarity[at]! >= CRACK_CLARITY && isAnother(away) && db >= steadyDb - CRACK_DB) found.push(away);
  }
  const semitones = median(found);
  const steady = found.filter((away) => Math.abs(away - semitones) < WITHIN_SEMITONES);
  return steady.length < CRACK_FRAMES ? null : { semitones, seconds: steady.length * hop };
}
