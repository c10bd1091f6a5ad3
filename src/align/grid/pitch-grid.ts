import { CANDIDATES, type Features, HarmonicsReader } from '../../features/index.js';
import { GridRows } from './grid-rows.js';

/** How strongly each semitone sounds in each frame, the player's tuning taken out. */
export interface PitchGrid {
  readonly frames: number;
  readonly hopSeconds: number;
  readonly lowestMidi: number;
  readonly pitches: number;
  /** evidence for semitones, only where there is any: that of frame f stands from rowStart[f] up to rowStart[f + 1] */
  readonly rowStart: Int32Array;
  /** semitone of each piece of evidence, above the lowest one; each only once a frame */
  readonly place: Uint16Array;
  /** more than 0 to 1: evidence that this semitone sounds, by its periods and by its harmonics */
  readonly salience: Float32Array;
  /** 0 to 1: the same by its periods alone, which are read from shorter windows; `salience` itself where there is no more */
  readonly byPeriod: Float32Array;
  /** a frame, 0 to 1: evidence that there is any tone */
  readonly sounding: Float32Array;
  /** a frame, 0 to 1: evidence that a tone is being played, what is left of a louder one counted less */
  readonly voicing: Float32Array;
  /** semitone of the strongest evidence a frame, -1 where nothing is played */
  readonly strongest: Int16Array;
  /** level a frame, dBFS, smoothed over about 12 ms */
  readonly levelDb: Float32Array;
}

/** Where windows for periods are at least this long, those for harmonics, which are as long, tell nothing more. */
const LOWEST_FOR_HARMONICS_MIDI = 45;
/** A period as clear as this, no lower than what is written, is believed without asking for harmonics. */
const CLEAR_PERIOD = 0.97;
/** A candidate loses this much for each place behind the best one. */
const RANK_COST = 0.12;
/** Within so many semitones a candidate counts fully, and beyond the second number not at all. */
const FULL_WITHIN = 0.35;
const NOTHING_BEYOND = 0.8;
/** Voicing rises from 0 to 1 over this many dB, starting so far above the noise floor. */
const VOICING_STARTS_DB = 6;
const VOICING_WIDTH_DB = 8;
/** Sound this far below the loud notes is what is left of them in the room. */
const LOWEST_PLAYING_DB = 48;
const LEAST_CLARITY = 0.45;
/** What falls quicker than this behind a louder sound is its release and the room, and counts less and less. */
const RELEASE_DB_A_SECOND = 25;
const RELEASE_STARTS_DB = 10;
const RELEASE_WIDTH_DB = 15;
const LEAST_OF_RELEASE = 0.1;

/**
 * @param features what was heard
 * @param tuningCents the player's tuning against A = 440 Hz, taken out
 * @param lowestMidi lowest semitone of the grid
 * @param highestMidi highest semitone of the grid
 * @param lowestWrittenMidi lowest pitch that is expected
 * @returns evidence a frame and semitone, and a frame alone
 */
export function buildPitchGrid(
  features: Features,
  tuningCents: number,
  lowestMidi: number,
  highestMidi: number,
  lowestWrittenMidi: number,
): PitchGrid {
  const frames = features.pitchFrames;
  const pitches = highestMidi - lowestMidi + 1;
  const rows = new GridRows(frames);
  const strongest = new Int16Array(frames).fill(-1);
  const levelDb = frameLevels(features);
  const sounding = soundingOf(features, levelDb);
  const held = heldOf(features.pitchHopSeconds, levelDb);
  const voicing = sounding.map((v, f) => v * held[f]!);
  const byPeriod = new Float64Array(pitches);
  const harmonics =
    lowestWrittenMidi < LOWEST_FOR_HARMONICS_MIDI
      ? null
      : new HarmonicsReader(features, lowestMidi + tuningCents / 100, pitches);
  for (let f = 0; f < frames; f++) {
    readPeriods(features, f, lowestMidi + tuningCents / 100, byPeriod);
    const clear =
      features.candidateClarity[f * CANDIDATES]! >= CLEAR_PERIOD &&
      features.candidateMidi[f * CANDIDATES]! > lowestWrittenMidi - 1;
    const second = harmonics === null || clear || sounding[f] === 0 ? null : harmonics.read(f);
    let best = 0;
    for (let p = 0; p < pitches; p++) {
      const first = byPeriod[p]!;
      const value = second === null ? first : (first + second[p]!) / 2;
      if (value <= 0) continue;
      rows.add(p, value, first);
      if (value <= best) continue;
      best = value;
      strongest[f] = p + lowestMidi;
    }
    rows.endRow();
    if (voicing[f]! < 0.3) strongest[f] = -1;
  }
  const hopSeconds = features.pitchHopSeconds;
  const { rowStart, place, salience } = rows;
  return {
    frames,
    hopSeconds,
    lowestMidi,
    pitches,
    rowStart,
    place,
    salience,
    byPeriod: harmonics === null ? salience : rows.byPeriod,
    sounding,
    voicing,
    strongest,
    levelDb,
  };
}

/** Evidence of each semitone by the periods found in a frame. */
function readPeriods(features: Features, frame: number, lowestMidi: number, into: Float64Array): void {
  into.fill(0);
  for (let c = 0; c < CANDIDATES; c++) {
    const midi = features.candidateMidi[frame * CANDIDATES + c]!;
    if (midi === 0) break;
    const place = midi - lowestMidi;
    const strength = features.candidateClarity[frame * CANDIDATES + c]! - RANK_COST * c;
    for (let p = Math.floor(place); p <= Math.floor(place) + 1; p++) {
      if (p < 0 || p >= into.length) continue;
      const away = Math.abs(place - p);
      if (away >= NOTHING_BEYOND) continue;
      const near = away <= FULL_WITHIN ? 1 : (NOTHING_BEYOND - away) / (NOTHING_BEYOND - FULL_WITHIN);
      into[p] = Math.max(into[p]!, Math.min(1, strength * near));
    }
  }
}

/** Level at the pitch frames: mean power over about two hops. */
function frameLevels(features: Features): Float32Array {
  const { power, levelHopSeconds, pitchHopSeconds, pitchFrames } = features;
  const reach = Math.max(1, Math.round(pitchHopSeconds / levelHopSeconds));
  const levels = new Float32Array(pitchFrames);
  for (let f = 0; f < pitchFrames; f++) {
    const centre = Math.round((f * pitchHopSeconds) / levelHopSeconds - 0.5);
    let sum = 0;
    let count = 0;
    for (let k = Math.max(0, centre - reach); k <= Math.min(power.length - 1, centre + reach); k++) {
      sum += power[k]!;
      count++;
    }
    levels[f] = count === 0 ? -100 : 10 * Math.log10(sum / count + 1e-10);
  }
  return levels;
}

function soundingOf(features: Features, levelDb: Float32Array): Float32Array {
  const sorted = Float32Array.from(levelDb).sort();
  const loud = sorted[Math.floor(0.9 * (sorted.length - 1))] ?? -100;
  const gate = Math.max(features.noiseFloorDb + VOICING_STARTS_DB, loud - LOWEST_PLAYING_DB);
  return levelDb.map((level, f) => {
    const clarity = features.candidateClarity[f * CANDIDATES]!;
    if (clarity < LEAST_CLARITY) return 0;
    return Math.min(1, Math.max(0, (level - gate) / VOICING_WIDTH_DB));
  });
}

function heldOf(hopSeconds: number, levelDb: Float32Array): Float32Array {
  let envelope = Number.NEGATIVE_INFINITY;
  return levelDb.map((level) => {
    envelope = Math.max(level, envelope - RELEASE_DB_A_SECOND * hopSeconds);
    const released = (envelope - level - RELEASE_STARTS_DB) / RELEASE_WIDTH_DB;
    return Math.min(1, Math.max(LEAST_OF_RELEASE, 1 - released));
  });
}
