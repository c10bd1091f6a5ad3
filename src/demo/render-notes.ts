import { midiToHz } from '../base/index.js';
import { MEZZO_FORTE_DBFS } from './dynamic-plan.js';
import { type Random, seededRandom } from './random.js';
import { releaseSeconds, soundNow } from './sound-faults.js';
import type { PlayedNote, TakePlan } from './types.js';
import { VOICES, type Voice } from './voices.js';
import { TABLE_SIZE, wavetable } from './wavetable.js';

const BLOCK_SAMPLES = 32;
/** A slurred note takes this long to slide into its pitch and sound, half of it before its onset. */
const GLIDE_SECONDS = 0.014;
const ATTACK_FADE_SECONDS = 0.06;
const TONGUE_NOISE_SECONDS = 0.012;
const TONGUE_NOISE_DB = -20;
const VIBRATO_FROM_SECONDS = 0.2;
const DULL_ATTACK = 0.35;
/** Slow unsteadiness of a held tone: one step a block of a first-order low-pass. */
const UNSTEADY_DB = 0.25;
const UNSTEADY_CENTS = 1.2;
const UNSTEADY_MEMORY = 0.995;

const fromDb = (db: number): number => 10 ** (db / 20);

/** What runs on from one slurred note into the next. */
interface Tone {
  phase: number;
  hz: number;
  amplitude: number;
  table: Float32Array;
  wanderDb: number;
  wanderCents: number;
  noiseState: number;
}

/** Values at the two ends of a block. */
interface BlockEnds {
  readonly amplitude: number;
  readonly hz: number;
  /** 0 takes the first table, 1 the second */
  readonly blend: number;
  readonly noise: number;
}

/** Adds one block of tone to `out`; the inner loop of the synthesiser. */
function renderBlock(
  out: Float32Array,
  from: number,
  to: number,
  samplePeriod: number,
  tables: readonly [Float32Array, Float32Array],
  start: BlockEnds,
  end: BlockEnds,
  tone: Tone,
): void {
  const [first, second] = tables;
  const length = to - from;
  let { phase, noiseState } = tone;
  let step = start.hz * samplePeriod * TABLE_SIZE;
  const stepRise = ((end.hz - start.hz) * samplePeriod * TABLE_SIZE) / length;
  let amplitude = start.amplitude;
  const amplitudeRise = (end.amplitude - start.amplitude) / length;
  let blend = start.blend;
  const blendRise = (end.blend - start.blend) / length;
  const noise = start.noise / 2 ** 31;
  for (let i = from; i < to; i++) {
    const at = phase | 0;
    const fraction = phase - at;
    const low = first[at] as number;
    const a = low + ((first[at + 1] as number) - low) * fraction;
    const high = second[at] as number;
    const b = high + ((second[at + 1] as number) - high) * fraction;
    noiseState ^= noiseState << 13;
    noiseState ^= noiseState >>> 17;
    noiseState ^= noiseState << 5;
    out[i] = (out[i] as number) + amplitude * (a + (b - a) * blend + noise * noiseState);
    phase += step;
    if (phase >= TABLE_SIZE) phase -= TABLE_SIZE;
    step += stepRise;
    amplitude += amplitudeRise;
    blend += blendRise;
  }
  tone.phase = phase;
  tone.noiseState = noiseState;
}

const rampUp = (share: number): number => (share >= 1 ? 1 : share <= 0 ? 0 : 0.5 - 0.5 * Math.cos(Math.PI * share));

/** Amplitude envelope over the held level: attack with its accent, release around the offset. */
function envelope(note: PlayedNote, voice: Voice, seconds: number): number {
  const length = note.offsetSeconds - note.onsetSeconds;
  const attack = Math.min(voice.attackSeconds, length / 3);
  const release = Math.min(releaseSeconds(note, voice.releaseSeconds), length / 2);
  const up = note.tongued
    ? rampUp(seconds / attack) * fromDb(note.attackDb * Math.exp(-seconds / ATTACK_FADE_SECONDS))
    : 1;
  const down = note.legato ? 1 : rampUp((length + release / 2 - seconds) / release);
  return up * down;
}

function brightnessOf(levelDb: number, gainDb: number): number {
  return (levelDb - gainDb - MEZZO_FORTE_DBFS + 14) / 26;
}

function vibratoCents(plan: TakePlan, seconds: number): number {
  if (!plan.vibrato || seconds < VIBRATO_FROM_SECONDS) return 0;
  const since = seconds - VIBRATO_FROM_SECONDS;
  return plan.vibrato.depthCents * Math.min(1, since / 0.2) * Math.sin(2 * Math.PI * plan.vibrato.rateHz * since);
}

function wander(tone: Tone, random: Random): void {
  const fresh = Math.sqrt(1 - UNSTEADY_MEMORY ** 2);
  tone.wanderDb = tone.wanderDb * UNSTEADY_MEMORY + (random.uniform() - 0.5) * 3.46 * fresh * UNSTEADY_DB;
  tone.wanderCents = tone.wanderCents * UNSTEADY_MEMORY + (random.uniform() - 0.5) * 3.46 * fresh * UNSTEADY_CENTS;
}

/** State of the note `seconds` after it begins to move away from what was before. */
function stateAt(note: PlayedNote, plan: TakePlan, voice: Voice, tone: Tone, from: Tone, seconds: number): BlockEnds {
  const length = note.offsetSeconds - note.onsetSeconds;
  const through = Math.min(1, seconds / length);
  const sound = soundNow(note, plan.seed, seconds);
  const held = fromDb(note.startDb + (note.endDb - note.startDb) * through + tone.wanderDb + sound.db);
  const cents = note.cents + tone.wanderCents + vibratoCents(plan, seconds) + sound.cents;
  const hz = midiToHz(note.playedMidi + cents / 100);
  const chiff = note.tongued ? fromDb(TONGUE_NOISE_DB) * Math.exp(-seconds / TONGUE_NOISE_SECONDS) : 0;
  const noise = 1.7 * (fromDb(plan.breathDb ?? voice.breathDb) + chiff + fromDb(sound.airDb));
  const glide = note.tongued ? 1 : rampUp(seconds / GLIDE_SECONDS);
  return {
    amplitude: envelope(note, voice, seconds) * (from.amplitude + (held - from.amplitude) * glide),
    hz: from.hz * (hz / from.hz) ** glide,
    blend: rampUp(seconds / (note.tongued ? voice.attackSeconds * 1.5 : GLIDE_SECONDS)),
    noise,
  };
}

function renderNote(out: Float32Array, note: PlayedNote, plan: TakePlan, tone: Tone, random: Random): void {
  const rate = plan.sampleRateHz ?? 44100;
  const voice = VOICES[plan.voice];
  const brightness = brightnessOf((note.startDb + note.endDb) / 2, plan.gainDb ?? 0);
  const body = wavetable(plan.voice, note.playedMidi, brightness, rate);
  const dull = wavetable(plan.voice, note.playedMidi, brightness - DULL_ATTACK, rate);
  const tables = [note.tongued ? dull : tone.table, body] as const;
  const lead = note.tongued ? 0 : GLIDE_SECONDS / 2;
  const tail = note.legato ? -GLIDE_SECONDS / 2 : releaseSeconds(note, voice.releaseSeconds) / 2;
  const first = Math.round((note.onsetSeconds - lead) * rate);
  const last = Math.min(out.length, Math.round((note.offsetSeconds + tail) * rate));
  const from: Tone = { ...tone };
  let start = stateAt(note, plan, voice, tone, from, 0);
  for (let at = first; at < last; at += BLOCK_SAMPLES) {
    const to = Math.min(last, at + BLOCK_SAMPLES);
    wander(tone, random);
    const end = stateAt(note, plan, voice, tone, from, (to - first) / rate);
    renderBlock(out, at, to, 1 / rate, tables, start, end, tone);
    start = end;
  }
  tone.hz = start.hz;
  tone.amplitude = start.amplitude;
  tone.table = body;
}

/**
 * @param notes what is played, in time order
 * @param plan voice, rate, vibrato and seed
 * @param seconds length of the result
 * @returns the dry sound, mono, full scale = ±1
 *
 * Source: additive synthesis by wavetables, by definition.
 */
export function renderNotes(notes: readonly PlayedNote[], plan: TakePlan, seconds: number): Float32Array {
  const rate = plan.sampleRateHz ?? 44100;
  const out = new Float32Array(Math.ceil(seconds * rate));
  const random = seededRandom(plan.seed ^ 0x70e);
  const tone: Tone = {
    phase: 0,
    hz: 440,
    amplitude: 0,
    table: new Float32Array(TABLE_SIZE + 1),
    wanderDb: 0,
    wanderCents: 0,
    noiseState: 0x2545f491,
  };
  for (const note of notes) renderNote(out, note, plan, tone, random);
  return out;
}
