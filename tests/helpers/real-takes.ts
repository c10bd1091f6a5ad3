import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { decodeWav } from '../../src/decode/index.js';
import { hearTake } from '../../src/review/hear-take.js';
import { readPart } from '../../src/score/index.js';

/** How many of the notes of real players are found. */
export interface RealFigures {
  readonly takes: number;
  readonly notes: number;
  /** shares of the notes found at their pitch, 0 to 1 */
  readonly within50ms: number;
  readonly within100ms: number;
}

/**
 * Takes of real players are never part of the project: they are read from a folder of theirs, each take in a folder with
 * `etude.musicxml`, `take.wav` and `truth.json` (`notes`: onset and offset in seconds, MIDI number).
 */
export function realFigures(folder: string): RealFigures {
  const takes = readdirSync(folder).filter((name) => existsSync(`${folder}/${name}/truth.json`));
  let notes = 0;
  const found = [0, 0];
  for (const name of takes) {
    const file = (part: string) => readFileSync(`${folder}/${name}/${part}`);
    const truth: readonly (readonly [number, number, number])[] = JSON.parse(file('truth.json').toString()).notes;
    const { alignment } = hearTake(decodeWav(file('take.wav')), readPart(file('etude.musicxml')));
    const played = alignment.notes.flatMap((n) =>
      n.onsetSeconds === undefined ? [] : [[n.onsetSeconds, n.playedMidi!]],
    );
    const added = alignment.added.map((n) => [n.onsetSeconds, n.midi]);
    const heard = [...played, ...added].map(([t, midi]) => [t!, midi! + alignment.offsetSemitones] as const);
    notes += truth.length;
    [0.05, 0.1].forEach((within, k) => {
      found[k] = found[k]! + matched(truth, heard, within);
    });
  }
  return { takes: takes.length, notes, within50ms: found[0]! / notes, within100ms: found[1]! / notes };
}

/** Each note heard counts for one true note at most, the nearest of its pitch. */
function matched(
  truth: readonly (readonly [number, number, number])[],
  heard: readonly (readonly [number, number])[],
  within: number,
): number {
  const used = new Set<number>();
  for (const [t, , midi] of truth) {
    let best = -1;
    heard.forEach(([onset, pitch], i) => {
      if (used.has(i) || pitch !== midi || Math.abs(onset - t) > within) return;
      if (best < 0 || Math.abs(onset - t) < Math.abs(heard[best]![0] - t)) best = i;
    });
    if (best >= 0) used.add(best);
  }
  return used.size;
}
