import type { Remark } from '../remark-table.js';
import { isTempo } from './is-tempo.js';
import { assumedQuarterBpm, senseOfTempoWords, type TempoSense } from './tempo-words.js';
import { type PrintedMark, SAME_PLACE } from './types.js';

/** Something that happens to the tempo at a place in print. */
export interface TempoEvent {
  readonly barIndex: number;
  readonly at: number;
  /** a new tempo in quarters a minute, or a bend that begins or ends */
  readonly change: number | 'slower' | 'faster' | 'end';
  /** quarters of the note that a metronome mark counts, where one sets this tempo */
  readonly unitQuarters?: number;
}

/** Tempo events in printed order, and what a copyist would ask about. */
export interface TempoPlan {
  readonly events: readonly TempoEvent[];
  readonly remarks: readonly Remark[];
}

/** All tempo marks of one direction. */
interface TempoDirection {
  readonly barIndex: number;
  readonly at: number;
  sense: TempoSense | null;
  words: string;
  metronome: { readonly quarterBpm: number; readonly unitQuarters: number } | null;
  factor: number | null;
  sounding: { readonly quarterBpm: number; readonly hidden: boolean } | null;
  dashesStart: string | null;
  dashesStop: string | null;
}

interface PlanState {
  readonly events: TempoEvent[];
  readonly remarks: Remark[];
  quarterBpm: number | null;
  firstBpm: number | null;
  bending: boolean;
  bendDashes: string | null;
}

/** Metronome mark and playback tempo may differ by this share before it is remarked on. */
const SAME_TEMPO_SHARE = 0.03;

/**
 * Tempo in printed order. What is printed for the player (metronome mark) goes before the playback tempo; playback tempos
 * that only act out a ritardando are left aside.
 *
 * @param byBar marks of each printed bar
 * @param numbers bar numbers as printed
 * @returns tempo events
 *
 * Source: MusicXML 4.0, `metronome`, `sound` (tempo in quarters a minute); words: common practice.
 */
export function tempoPlan(byBar: readonly (readonly PrintedMark[])[], numbers: readonly string[]): TempoPlan {
  const state: PlanState = {
    events: [],
    remarks: [],
    quarterBpm: null,
    firstBpm: null,
    bending: false,
    bendDashes: null,
  };
  for (const direction of tempoDirections(byBar)) followDirection(direction, state, numbers[direction.barIndex] ?? '');
  return { events: state.events, remarks: state.remarks };
}

function tempoDirections(byBar: readonly (readonly PrintedMark[])[]): TempoDirection[] {
  const directions: TempoDirection[] = [];
  byBar.forEach((marks, barIndex) => {
    let order = -1;
    for (const mark of marks) {
      const before = directions.at(-1);
      const same =
        before !== undefined && before.barIndex === barIndex && (mark.order === order || joins(mark, before));
      const direction = same ? before : emptyDirection(barIndex, mark.at);
      if (!same) directions.push(direction);
      order = mark.order;
      addMark(direction, mark);
    }
  });
  return directions;
}

/** Dashes, a metronome mark or a playback tempo may stand in a direction of their own at the place of their words. */
function joins(mark: PrintedMark, before: TempoDirection): boolean {
  if (Math.abs(mark.at - before.at) > SAME_PLACE) return false;
  if (mark.kind === 'dashes') return mark.type === 'start' && before.sense !== null && before.dashesStart === null;
  if (mark.kind === 'metronome') return before.metronome === null && before.sense !== null;
  return (
    mark.kind === 'sound-tempo' && before.sounding === null && (before.metronome !== null || before.sense !== null)
  );
}

function emptyDirection(barIndex: number, at: number): TempoDirection {
  const none = { metronome: null, factor: null, sounding: null, dashesStart: null, dashesStop: null };
  return { barIndex, at, sense: null, words: '', ...none };
}

function addMark(direction: TempoDirection, mark: PrintedMark): void {
  if (mark.kind === 'words') {
    direction.sense ??= senseOfTempoWords(mark.text);
    direction.words = mark.text;
  }
  if (mark.kind === 'metronome') direction.metronome = mark;
  if (mark.kind === 'modulation') direction.factor = mark.factor;
  if (mark.kind === 'sound-tempo') direction.sounding = mark;
  if (mark.kind === 'dashes' && mark.type === 'start') direction.dashesStart = mark.number;
  if (mark.kind === 'dashes' && mark.type === 'stop') direction.dashesStop = mark.number;
}

function followDirection(direction: TempoDirection, state: PlanState, bar: string): void {
  const { sense, dashesStart, dashesStop } = direction;
  if (dashesStop !== null && dashesStop === state.bendDashes) endBend(direction, state);
  if (sense === 'slower' || sense === 'faster') {
    beginBend(direction, sense, state);
    state.bendDashes = dashesStart;
    return;
  }
  const quarterBpm = tempoOf(direction, state, bar);
  if (quarterBpm !== null) newTempo(direction, quarterBpm, state);
  else if (sense === 'step-slower') beginBend(direction, 'slower', state);
  else if (sense === 'step-faster') beginBend(direction, 'faster', state);
  else if (sense === 'a-tempo' || sense === 'new-tempo') endBend(direction, state);
}

/** The tempo a direction sets, null when none. */
function tempoOf(direction: TempoDirection, state: PlanState, bar: string): number | null {
  const { metronome, sounding, factor, sense } = direction;
  if (metronome !== null) {
    if (sounding !== null && Math.abs(sounding.quarterBpm / metronome.quarterBpm - 1) > SAME_TEMPO_SHARE) {
      const [markedQuarterBpm, playedQuarterBpm] = [round1(metronome.quarterBpm), round1(sounding.quarterBpm)];
      state.remarks.push({ code: 'tempos-differ', facts: { bar, markedQuarterBpm, playedQuarterBpm } });
    }
    return metronome.quarterBpm;
  }
  if (sounding !== null && !actsOutBend(sounding, state)) return sounding.quarterBpm;
  const modulated = (state.quarterBpm ?? 0) * (factor ?? 0);
  if (isTempo(modulated)) return modulated;
  return sense === 'tempo-primo' ? state.firstBpm : null;
}

function round1(value: number): number {
  return Math.round(value * 10) / 10;
}

function actsOutBend(sounding: { quarterBpm: number; hidden: boolean }, state: PlanState): boolean {
  if (!sounding.hidden || !state.bending || state.quarterBpm === null) return false;
  return Math.abs(sounding.quarterBpm / state.quarterBpm - 1) > SAME_TEMPO_SHARE;
}

function newTempo(direction: TempoDirection, quarterBpm: number, state: PlanState): void {
  endBend(direction, state);
  state.firstBpm ??= quarterBpm;
  if (state.quarterBpm === quarterBpm) return;
  state.quarterBpm = quarterBpm;
  const { barIndex, at, metronome } = direction;
  const unit = metronome === null ? {} : { unitQuarters: metronome.unitQuarters };
  state.events.push({ barIndex, at, change: quarterBpm, ...unit });
}

function beginBend(direction: TempoDirection, change: 'slower' | 'faster', state: PlanState): void {
  endBend(direction, state);
  state.bending = true;
  state.events.push({ barIndex: direction.barIndex, at: direction.at, change });
}

function endBend(direction: TempoDirection, state: PlanState): void {
  if (!state.bending) return;
  state.bending = false;
  state.bendDashes = null;
  state.events.push({ barIndex: direction.barIndex, at: direction.at, change: 'end' });
}

/**
 * @param byBar marks of each printed bar
 * @returns quarters a minute to assume at the start of a part without tempo, from its first tempo word
 *
 * Source: from memory; 100 (moderato) when there is no tempo word either.
 */
export function assumedStart(byBar: readonly (readonly PrintedMark[])[]): number {
  for (const mark of byBar.slice(0, 2).flat()) {
    const quarterBpm = mark.kind === 'words' ? assumedQuarterBpm(mark.text) : null;
    if (quarterBpm !== null) return quarterBpm;
  }
  return 100;
}
