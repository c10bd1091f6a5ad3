import { isMeasured, median } from '../../base/index.js';
import { CANDIDATES, type Features } from '../../features/index.js';
import type { NoteContext } from '../context/context.js';
import type { CrackMeasure, CrackSound } from '../types.js';
import { levelCourse } from './level-course.js';
import { octaveCrack } from './octave-crack.js';
import { isAnother, pitchReached } from './pitch-reached.js';
import type { StartOfNote } from './starts-of-notes.js';

/** Another pitch is one when it is as clear as this, as loud beside the note, and lasts for so many frames within so little. */
const CRACK_CLARITY = 0.85;
const CRACK_DB = 14;
const CRACK_FRAMES = 4;
const WITHIN_SEMITONES = 0.6;
/** So near to octaves periods alone may mislead. */
const NEAR_OCTAVES_SEMITONES = 0.75;

/**
 * Notes begun with the tongue that speak at another pitch before they come to their own.
 *
 * @param context the take with its notes measured
 * @param starts the beginnings of its notes
 * @returns one entry a note that cracks, in order
 *
 * Source: definition; the constants are working values, set on takes of the synthesiser and looked at on real players.
 */
export function measureCracks(context: NoteContext, starts: readonly StartOfNote[]): CrackMeasure[] {
  return starts.flatMap((start): CrackMeasure[] => {
    const crack = crackOf(context, start);
    const { index, bar, pass } = context.part.notes[start.index]!;
    return crack === null ? [] : [{ index, bar, pass, ...crack }];
  });
}

function crackOf({ features, alignment, notes }: NoteContext, start: StartOfNote): CrackSound | null {
  const { index, from, until, offset, midi, steadyDb } = start;
  const atPitch = pitchReached(features, from, until, midi);
  const plain = atPitch === null ? null : crackBetween(features, from, atPitch, midi, steadyDb);
  if (plain !== null && !isOctaves(plain.semitones)) return plain;
  const { cents } = notes[index]!;
  const tuned = isMeasured<number>(cents) ? cents : alignment.tuningCents;
  return octaveCrack(features, from, offset, midi + tuned / 100);
}

function isOctaves(semitones: number): boolean {
  return Math.abs(semitones - 12 * Math.round(semitones / 12)) < NEAR_OCTAVES_SEMITONES;
}

function crackBetween(features: Features, from: number, to: number, midi: number, steadyDb: number): CrackSound | null {
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
