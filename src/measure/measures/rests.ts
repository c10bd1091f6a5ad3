import { CANDIDATES, type Features } from '../../features/index.js';
import type { PartNote } from '../../score/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import { placeInScore } from '../place-in-score.js';
import type { RestMeasure, RestState } from '../types.js';

const SIDE_NOTES = 8;
const LEAST_PAIRS = 4;
/** The next note's attack, and what comes early of it. */
const ATTACK_SECONDS = 0.05;
/** Sound in a rest is so loud against the note before, and so far above the floor. */
const LOUD_BELOW_DB = 12;
const ABOVE_FLOOR_DB = 8;
const FRAME_SECONDS = 0.02;
const CLEAR = 0.7;
/** A sound of its own lasts so long, at least this share of the rest. */
const LEAST_SECONDS = 0.1;
const LEAST_SHARE = 0.25;
/** A note begun again on its pitch falls and rises by so much in between. */
const DIP_DB = 6;
/** A note that fills so much of the rest was held over it. */
const RUNG_SHARE = 0.5;
/** A rest in so much less than its time was not taken at all. */
const LEAST_TAKEN = 0.4;
const SAME_PITCH = 0.7;

/**
 * What is in each written rest of a beat or more.
 *
 * @param context take, features, part, alignment
 * @returns one entry a rest between two notes that were heard, where the pace around it is known
 *
 * The rest begins where the note before it should end at the local pace.
 */
export function measureRests(context: MeasureContext): RestMeasure[] {
  const { part, alignment } = context;
  const played = part.notes.filter((n) => !n.grace);
  return played.slice(1).flatMap((next, k): RestMeasure[] => {
    const note = played[k]!;
    const from = alignment.notes[note.index]!.onsetSeconds;
    const to = alignment.notes[next.index]!.onsetSeconds;
    const quarters = next.restBeforeQuarters;
    const restStart = note.onsetQuarters + note.durationQuarters;
    const bar = part.bars.findLast((b) => b.startQuarters <= restStart + 1e-6);
    if (from === undefined || to === undefined || bar === undefined || quarters < 4 / bar.beatType) return [];
    if (note.fermata || alignment.restarts.some((r) => r.resumedAtIndex === next.index)) return [];
    const pace = paceAround(context, note.index - SIDE_NOTES, next.index + SIDE_NOTES);
    const start = from + note.durationQuarters * pace.secondsAQuarter;
    const seconds = to - start;
    if (pace.pairs < LEAST_PAIRS || seconds < LEAST_TAKEN * quarters * pace.secondsAQuarter) return [];
    const heard = listenTo(context, note, next, start, to - ATTACK_SECONDS);
    const at = Math.max(restStart, restStart + ((heard.onsetSeconds ?? start) - start) / pace.secondsAQuarter);
    const place = placeInScore(part, Math.min(at, next.onsetQuarters - 1e-3));
    return [{ index: note.index, toIndex: next.index, ...place, quarters, seconds, ...heard }];
  });
}

interface Heard {
  readonly state: RestState;
  readonly onsetSeconds?: number;
  readonly midi?: number;
}

function listenTo(context: MeasureContext, note: PartNote, next: PartNote, start: number, end: number): Heard {
  const { features, alignment } = context;
  const before = alignment.notes[note.index]!;
  const beforeMidi = (before.playedMidi ?? note.soundingMidi) + alignment.offsetSemitones;
  const nextMidi = (alignment.notes[next.index]!.playedMidi ?? next.soundingMidi) + alignment.offsetSemitones;
  const half = (before.onsetSeconds! + start) / 2;
  const held = levelDb(features, before.onsetSeconds!, Math.max(half, before.onsetSeconds! + FRAME_SECONDS));
  const gate = Math.max(features.noiseFloorDb + ABOVE_FLOOR_DB, held - LOUD_BELOW_DB);
  const least = Math.max(LEAST_SECONDS, LEAST_SHARE * (end - start));
  const runs = soundsIn(features, half, end, gate);
  const own = runs.find(
    ({ from, to, midi, again }) =>
      to - Math.max(from, start) >= least &&
      (Math.abs(midi - beforeMidi) > SAME_PITCH ? from > half || to - start >= least : again) &&
      !(Math.abs(midi - nextMidi) <= SAME_PITCH && to >= end - ATTACK_SECONDS),
  );
  if (own !== undefined) return { state: 'played-into', onsetSeconds: own.from, midi: Math.round(own.midi) };
  const sounding = runs.reduce((sum, { from, to }) => sum + Math.max(0, to - Math.max(from, start)), 0);
  return { state: sounding >= RUNG_SHARE * (end - start) ? 'rung-over' : 'silent' };
}

/** A stretch of sound at one pitch. */
interface Sound {
  from: number;
  to: number;
  midi: number;
  /** begun after the level had fallen and risen */
  again: boolean;
}

function soundsIn(features: Features, from: number, to: number, gateDb: number): Sound[] {
  const { pitchHopSeconds: hop, candidateMidi, candidateClarity } = features;
  const sounds: Sound[] = [];
  let last: Sound | null = null;
  let lowest = Number.POSITIVE_INFINITY;
  let loudest = Number.NEGATIVE_INFINITY;
  for (let f = Math.ceil(from / hop); f * hop < to && f < features.pitchFrames; f++) {
    const level = levelDb(features, f * hop - FRAME_SECONDS / 2, f * hop + FRAME_SECONDS / 2);
    const fallen = loudest - lowest >= DIP_DB && level - lowest >= DIP_DB;
    lowest = Math.min(lowest, level);
    const midi = candidateMidi[f * CANDIDATES]!;
    if (level < gateDb || candidateClarity[f * CANDIDATES]! < CLEAR) {
      last = null;
      continue;
    }
    loudest = Math.max(loudest, level);
    if (last !== null && Math.abs(midi - last.midi) <= SAME_PITCH && !(fallen && !last.again)) {
      last.to = (f + 1) * hop;
      continue;
    }
    last = { from: f * hop, to: (f + 1) * hop, midi, again: fallen };
    if (fallen) {
      loudest = level;
      lowest = level;
    }
    sounds.push(last);
  }
  return sounds;
}

function levelDb({ power, levelHopSeconds: hop }: Features, fromSeconds: number, toSeconds: number): number {
  const from = Math.max(0, Math.round(fromSeconds / hop));
  const to = Math.min(power.length, Math.max(from + 1, Math.round(toSeconds / hop)));
  let sum = 0;
  for (let f = from; f < to; f++) sum += power[f]!;
  return 10 * Math.log10(sum / Math.max(1, to - from) + 1e-12);
}
