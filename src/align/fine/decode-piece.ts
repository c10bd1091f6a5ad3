import { lowerBound } from './lower-bound.js';
import { nextStrong } from './next-strong.js';
import { durationCost, MOST_MISSED, missedPrice, PRICE, pauseCost } from './prices.js';
import { fillOnsets } from './rough-onsets.js';
import { type Step, type Steps, withCheapest } from './steps.js';
import type { DecodedSegment, DecodeInput } from './types.js';
import { passedOverCost, swallowedCost, unexplainedAfter, unexplainedBefore } from './unexplained-sound.js';

const LEAST_VOICED_SECONDS = 0.025;
const STRONG = 0.5;
const ATTACK_SECONDS = 0.03;
const ATTACK_SHARE = 0.25;
const INSIDE_MARGIN_SECONDS = 0.05;
const INSIDE_SECONDS = 0.08;
const SILENCE_SECONDS = 0.1;
const SILENT_SHARE = 0.15;
/** Far more than a sum of prices can be off by rounding. */
const ROUNDING = 1e-9;
const OTHERWISE_SHARE = 0.35;
/** The tone itself, and what its harmonics and their common periods may be taken for. */
const SAME_TONE = [0, -12, 12, -19, 19, -24, 24];

/**
 * Gives each note of a piece its stretch of sound: a search over the moments at which notes may begin, weighing pitch,
 * duration against the local pace and the sound of the attack. Notes may be missing, wrong or added.
 *
 * @param input notes without grace notes, and what was heard
 * @returns segments in order of time; a note of the piece without a segment was left out
 *
 * Source: segmental (semi-Markov) search, e.g. Ostendorf et al. 1996; prices are ours.
 */
export function decodePiece(input: DecodeInput): DecodedSegment[] {
  const search = new PieceSearch(input);
  return search.run();
}

class PieceSearch {
  private readonly input: DecodeInput;
  private readonly lastFrame: number;
  private readonly mostMissed: number;
  private readonly rangeOf: readonly (readonly [number, number])[];
  /** from each boundary on, the first with a strong attack or change; the number of boundaries where there is none */
  private readonly nextStrong: Int32Array;

  constructor(input: DecodeInput) {
    this.input = input;
    this.nextStrong = nextStrong(input.boundaries, STRONG);
    this.lastFrame = Math.round(input.endSeconds / input.hopSeconds);
    this.mostMissed = input.everyNote === undefined ? MOST_MISSED : 0;
    this.rangeOf = this.boundaryRanges();
  }

  run(): DecodedSegment[] {
    const { notes } = this.input;
    /** best step into each (note, boundary), newest notes last */
    const reached: Steps[] = [];
    const addedAfter: Steps[] = [];
    for (let n = 0; n < notes.length; n++) {
      const here: Step[] = [];
      const [from, to] = this.rangeOf[n]!;
      for (let b = from; b < to; b++) {
        const step = this.enter(n, b, reached, addedAfter);
        if (step !== null) here.push(step);
      }
      reached.push(withCheapest(here));
      addedAfter.push(withCheapest(this.input.everyNote?.noneAdded === true ? [] : this.addNotes(n, here)));
    }
    return this.trace(this.finish(reached, addedAfter));
  }

  /** Boundaries within reach of each note's rough onset. */
  private boundaryRanges(): [number, number][] {
    const { notes, roughOnsets, startSeconds, pace, boundaries, hopSeconds, everyNote } = this.input;
    const first = Math.round(startSeconds / hopSeconds) - Math.round(0.15 / hopSeconds);
    const rough = fillOnsets(notes, roughOnsets, pace);
    return notes.map((note, n) => {
      const fixed = n === 0 ? everyNote?.first : n === notes.length - 1 ? everyNote?.last : undefined;
      if (typeof fixed === 'number') return [fixed, fixed + 1];
      const length = Math.max(note.durationQuarters, notes[n - 1]?.durationQuarters ?? 0) * pace[n]!;
      const unsure = Number.isFinite(roughOnsets[n]!) ? 1 : 2;
      const reach = unsure * Math.min(1.2, 0.3 + length);
      const low = Math.max(first, (rough[n]! - reach) / hopSeconds);
      const high = Math.min(this.lastFrame, (rough[n]! + reach) / hopSeconds);
      return [lowerBound(boundaries.frame, low), lowerBound(boundaries.frame, high)];
    });
  }

  private enter(n: number, b: number, reached: readonly Steps[], addedAfter: readonly Steps[]): Step | null {
    const onset = this.onsetCost(n, b);
    let cost = Number.POSITIVE_INFINITY;
    let previous: Step | null = null;
    for (let missed = 0; missed <= this.mostMissed && n - 1 - missed >= 0; missed++) {
      const p = n - 1 - missed;
      const price = onset + missedPrice(missed);
      if (reached[p]!.cheapest + price < cost) {
        for (const step of reached[p]!.steps) {
          if (step.boundary >= b) break;
          if (step.cost + price >= cost) continue;
          const value = step.cost + price + this.noteCost(p, step.boundary, b, n, cost - step.cost - price);
          if (value < cost) [cost, previous] = [value, step];
        }
      }
      if (addedAfter[p]!.cheapest + price < cost) {
        for (const step of addedAfter[p]!.steps) {
          if (step.boundary >= b) break;
          if (step.cost + price >= cost) continue;
          const value = step.cost + price + this.addedCost(step, b);
          if (value < cost) [cost, previous] = [value, step];
        }
      }
    }
    if (n <= this.mostMissed) {
      const value = onset + missedPrice(n) + unexplainedBefore(this.input, n, b);
      if (value < cost) [cost, previous] = [value, null];
    }
    return Number.isFinite(cost) ? { note: n, boundary: b, added: false, previous, cost } : null;
  }

  /** Steps at which a note that is not in the part begins after note n. */
  private addNotes(n: number, here: readonly Step[]): Step[] {
    const { boundaries, graceAfter } = this.input;
    const first = here[0];
    if (first === undefined) return [];
    const to = (this.rangeOf[n + 1] ?? this.rangeOf[n]!)[1];
    const steps: Step[] = [];
    for (let b = first.boundary + 1; b < to; b++) {
      if (Math.max(boundaries.attack[b]!, boundaries.pitchChange[b]!) < STRONG) continue;
      let cost = Number.POSITIVE_INFINITY;
      let previous: Step | null = null;
      for (const step of here) {
        if (step.boundary >= b || step.cost >= cost) continue;
        const own = this.pitchCost(n, step.boundary, b, cost - step.cost);
        if (step.cost + own < cost) [cost, previous] = [step.cost + own, step];
      }
      for (const step of steps) {
        if (step.cost >= cost) continue;
        const own = this.addedCost(step, b);
        if (step.cost + own < cost) [cost, previous] = [step.cost + own, step];
      }
      if (previous !== null)
        steps.push({
          note: n,
          boundary: b,
          added: true,
          previous,
          cost: cost + (graceAfter[n] ? PRICE.grace : PRICE.added),
        });
    }
    return steps;
  }

  private finish(reached: readonly Steps[], addedAfter: readonly Steps[]): Step | null {
    const { notes, evidence, boundaries, offsetSemitones } = this.input;
    let cost = Number.POSITIVE_INFINITY;
    let best: Step | null = null;
    for (let missed = 0; missed <= this.mostMissed && missed < notes.length; missed++) {
      const n = notes.length - 1 - missed;
      for (const step of [...reached[n]!.steps, ...addedAfter[n]!.steps]) {
        const frame = boundaries.frame[step.boundary]!;
        const midi = notes[n]!.soundingMidi + offsetSemitones;
        const own = step.added
          ? PRICE.pitch * (1 - evidence.strongest(frame, this.lastFrame).share)
          : PRICE.pitch * (1 - evidence.share(midi, frame, this.lastFrame));
        const value = step.cost + own + missedPrice(missed) + unexplainedAfter(this.input, n, step, this.lastFrame);
        if (value < cost) [cost, best] = [value, step];
      }
    }
    return best;
  }

  private trace(end: Step | null): DecodedSegment[] {
    const { notes, boundaries } = this.input;
    const segments: DecodedSegment[] = [];
    let toFrame = this.lastFrame;
    for (let step = end; step !== null; step = step.previous) {
      const fromFrame = boundaries.frame[step.boundary]!;
      segments.unshift({ index: step.added ? null : notes[step.note]!.index, fromFrame, toFrame });
      toFrame = fromFrame;
    }
    return segments;
  }

  /**
   * Price of note n sounding from boundary `from` until note `next` begins at `to`. It grows part by part, none below 0, and
   * the search is over as soon as it is plainly beyond `limit`: what is returned then is too low, but beyond the limit.
   */
  private noteCost(n: number, from: number, to: number, next: number, limit: number): number {
    const { boundaries, evidence, hopSeconds, notes, pace } = this.input;
    const seconds = (boundaries.frame[to]! - boundaries.frame[from]!) * hopSeconds;
    const note = notes[n]!;
    const whole = (notes[next]!.onsetQuarters - note.onsetQuarters) * pace[n]!;
    const short = (notes[n + 1]!.onsetQuarters - note.onsetQuarters) * pace[n]!;
    const silence = seconds - evidence.voicedSeconds(boundaries.frame[from]!, boundaries.frame[to]!);
    const duration = Math.min(
      durationCost(seconds, whole, note),
      pauseCost(seconds, whole, silence),
      next > n + 1 ? durationCost(seconds, short, note) : PRICE.mostDuration,
      next > n + 1 ? pauseCost(seconds, short, silence) : PRICE.mostDuration,
    );
    if (duration > limit + ROUNDING) return duration;
    const passing = duration + (next > n + 1 ? passedOverCost(this.input, n, from, to, next) : 0);
    if (passing > limit + ROUNDING) return passing;
    const sounding = passing + this.pitchCost(n, from, to, limit - passing);
    return sounding > limit + ROUNDING ? sounding : sounding + this.insideCost(n, from, to, limit - sounding);
  }

  /** Price of what is heard against note n, or something too low but beyond `limit`. */
  private pitchCost(n: number, from: number, to: number, limit: number): number {
    const { boundaries, evidence, notes, offsetSemitones } = this.input;
    const z = boundaries.frame[to]!;
    const a = boundaries.frame[from]! + this.attackFrames(z - boundaries.frame[from]!);
    if (evidence.voicedSeconds(a, z) < LEAST_VOICED_SECONDS) return PRICE.unheard;
    const note = notes[n]!;
    const midi = note.soundingMidi + offsetSemitones;
    let share = evidence.share(midi, a, z);
    if (note.ornament !== null) for (const away of [-2, -1, 1, 2]) share += evidence.share(midi + away, a, z);
    const written = PRICE.pitch * (1 - Math.min(1, share));
    if (written <= PRICE.otherPitch) return written;
    if (PRICE.otherPitch > limit + ROUNDING) return PRICE.otherPitch;
    return Math.min(written, PRICE.otherPitch + PRICE.pitch * (1 - evidence.strongest(a, z).share));
  }

  /** Frames at the beginning of a segment that may still be noise of the attack. */
  private attackFrames(length: number): number {
    return Math.floor(Math.min(ATTACK_SECONDS / this.input.hopSeconds, ATTACK_SHARE * length));
  }

  private addedCost(step: Step, to: number): number {
    const { boundaries, evidence } = this.input;
    const a = boundaries.frame[step.boundary]!;
    const z = boundaries.frame[to]!;
    const voiced = evidence.voicedSeconds(a, z);
    if (voiced < LEAST_VOICED_SECONDS) return PRICE.unheard;
    return PRICE.pitch * (1 - evidence.strongest(a, z).share) + swallowedCost(this.input, step.note, voiced);
  }

  /** Price of attacks inside a note that begin no note, or something too low but beyond `limit`. */
  private insideCost(n: number, from: number, to: number, limit: number): number {
    const { boundaries, hopSeconds, notes } = this.input;
    if (notes[n]!.ornament !== null) return 0;
    const margin = INSIDE_MARGIN_SECONDS / hopSeconds;
    const first = boundaries.frame[from]! + margin;
    const last = boundaries.frame[to]! - margin;
    let retongued = 0;
    let other = 0;
    for (let b = this.nextStrong[from + 1]!; b < to; b = this.nextStrong[b + 1]!) {
      const frame = boundaries.frame[b]!;
      if (frame < first) continue;
      if (frame > last || other > limit + ROUNDING) break;
      const attack = boundaries.attack[b]!;
      const change = Math.max(attack, boundaries.pitchChange[b]!);
      if (attack > STRONG && this.isOutOfSilence(frame)) other += PRICE.outOfSilence * attack;
      else if (this.soundsOtherwise(n, frame, to)) other += PRICE.insideNote * change;
      else if (attack > STRONG) retongued += PRICE.retongued * attack;
    }
    return Math.min(PRICE.mostInside, other + Math.min(PRICE.mostRetongued, retongued));
  }

  /** Whether nothing sounded right before a moment: what begins there is no part of the note before. */
  private isOutOfSilence(frame: number): boolean {
    const { evidence, hopSeconds } = this.input;
    const before = Math.round(SILENCE_SECONDS / hopSeconds);
    return evidence.heldSeconds(frame - before, frame - 1) < SILENT_SHARE * SILENCE_SECONDS;
  }

  /** Whether something else than note n is heard right after a moment inside it. */
  private soundsOtherwise(n: number, frame: number, to: number): boolean {
    const { boundaries, evidence, hopSeconds, notes, offsetSemitones } = this.input;
    const until = Math.min(boundaries.frame[to]!, frame + Math.round(INSIDE_SECONDS / hopSeconds));
    if (evidence.voicedSeconds(frame, until) < LEAST_VOICED_SECONDS) return false;
    const midi = notes[n]!.soundingMidi + offsetSemitones;
    return SAME_TONE.every((away) => evidence.share(midi + away, frame, until) < OTHERWISE_SHARE);
  }

  private onsetCost(n: number, b: number): number {
    const { boundaries, notes } = this.input;
    const attack = boundaries.attack[b]!;
    const change = boundaries.pitchChange[b]!;
    const note = notes[n]!;
    if (notes[n - 1]?.soundingMidi === note.soundingMidi) {
      return (note.slurredFromPrevious ? PRICE.slurredRepeat : PRICE.repeatedOnset) * (1 - Math.min(1, attack));
    }
    const evidence = note.slurredFromPrevious ? Math.max(change, 0.8 * attack) : Math.max(attack, 0.9 * change);
    return PRICE.onset * (1 - Math.min(1, evidence));
  }
}
