import type { PartNote } from '../score/index.js';
import type { Context } from './articulation.js';
import { findNote } from './find-note.js';
import { seededRandom } from './random.js';
import type { Fault, PlayedNote, SoundFault } from './types.js';

/** Air alone, under the tone that does not come yet. */
const AIR_DB = -18;
const SILENT_TONE_DB = -40;
/** A tone that was late, or at another pitch, takes so long to come. */
const SPEAK_SECONDS = 0.02;
/** A pulse is deepest so long after a note begins, and over after twice as long. */
const PULSE_SECONDS = 0.015;
/** A hit fades so quickly, as an accent does. */
const HIT_FADE_SECONDS = 0.06;
/** Shaking is made of so many waves of rates at random; as many and as slow and quick as hands and breath shake. */
const SHAKE_WAVES = 7;
const SLOWEST_SHAKE_HZ = 1.5;
const QUICKEST_SHAKE_HZ = 9;

const rampUp = (share: number): number => (share >= 1 ? 1 : share <= 0 ? 0 : 0.5 - 0.5 * Math.cos(Math.PI * share));

/** What faults of the sound do to a tone at one moment. */
export interface SoundNow {
  readonly cents: number;
  readonly db: number;
  /** level of the air over that of the tone; −Infinity where there is no more than usual */
  readonly airDb: number;
}

/**
 * @param context the performance
 * @param note the part's note
 * @returns what is wrong with its sound
 */
export function soundFaultsAt({ part, faults }: Pick<Context, 'part' | 'faults'>, note: PartNote): SoundFault[] {
  return faults.filter((fault): fault is SoundFault => isOfSound(fault) && findNote(part, fault.at) === note);
}

function isOfSound(fault: Fault): fault is SoundFault {
  return ['shake', 'sag', 'release', 'pulse', 'hit', 'speaks-late', 'crack'].includes(fault.kind);
}

/**
 * @param note a note as played
 * @param usualSeconds how long its instrument takes to stop
 * @returns how long this note takes, seconds
 */
export function releaseSeconds(note: PlayedNote, usualSeconds: number): number {
  return note.sound?.find((fault) => fault.kind === 'release')?.seconds ?? usualSeconds;
}

/**
 * @param note a note as played
 * @param seed of the performance
 * @param seconds since the note's onset
 * @returns what its faults of sound add at that moment
 */
export function soundNow(note: PlayedNote, seed: number, seconds: number): SoundNow {
  let [cents, db, airDb] = [0, 0, Number.NEGATIVE_INFINITY];
  for (const fault of note.sound ?? []) {
    if (fault.kind === 'shake') {
      cents += fault.cents * shaking(seed, note.index ?? 0, seconds);
      db += fault.db * shaking(seed + 1, note.index ?? 0, seconds);
    } else if (fault.kind === 'sag') {
      const left = note.offsetSeconds - note.onsetSeconds - seconds;
      const fallen = Math.min(1, Math.max(0, 1 - left / fault.seconds));
      cents -= fault.cents * fallen;
      db -= fault.db * fallen;
    } else if (fault.kind === 'release') {
      const left = note.offsetSeconds - note.onsetSeconds + fault.seconds / 2 - seconds;
      cents -= fault.cents * Math.min(1, Math.max(0, 1 - left / fault.seconds));
    } else if (fault.kind === 'pulse') {
      db -= fault.db * rampUp(1 - Math.abs(seconds / PULSE_SECONDS - 1));
    } else if (fault.kind === 'hit') {
      db += fault.db * Math.exp(-seconds / HIT_FADE_SECONDS);
    } else if (fault.kind === 'crack') {
      cents += 100 * fault.semitones * (1 - rampUp((seconds - fault.seconds) / SPEAK_SECONDS));
    } else {
      const silent = 1 - rampUp((seconds - fault.seconds) / SPEAK_SECONDS);
      db += SILENT_TONE_DB * silent;
      airDb = silent > 0 ? AIR_DB - SILENT_TONE_DB * silent + 20 * Math.log10(silent) : airDb;
    }
  }
  return { cents, db, airDb };
}

/** Sums of waves of rates and phases drawn for a note, root mean square 1. Source: definition. */
function shaking(seed: number, index: number, seconds: number): number {
  const waves = wavesOf(seed, index);
  const sum = waves.reduce((s, { hz, phase }) => s + Math.sin(2 * Math.PI * (hz * seconds + phase)), 0);
  return sum / Math.sqrt(waves.length / 2);
}

interface Wave {
  readonly hz: number;
  readonly phase: number;
}

function wavesOf(seed: number, index: number): Wave[] {
  const random = seededRandom((seed ^ 0x5a6e) + 7919 * index);
  const draw = (): Wave => ({
    hz: SLOWEST_SHAKE_HZ + (QUICKEST_SHAKE_HZ - SLOWEST_SHAKE_HZ) * random.uniform(),
    phase: random.uniform(),
  });
  return Array.from({ length: SHAKE_WAVES }, draw);
}
