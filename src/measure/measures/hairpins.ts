import { fitHuberLine, isMeasured, notMeasured } from '../../base/index.js';
import type { LevelContext, NoteContext } from '../context/context.js';
import type { HairpinMeasure } from '../types.js';
import { hairpinCourse } from './hairpin-course.js';

const LEAST_NOTES = 3;
const unknownRegister = notMeasured('registers-unknown');

/**
 * Rise or fall of level through each crescendo and diminuendo.
 *
 * @param context the take with its notes measured
 * @returns fitted level at the last note minus at the first, and slopes
 *
 * Source: robust line through the notes' levels over their onsets (Huber 1981); slope a bar at the bar's written length
 * and the pace of the passage.
 */
export function measureHairpins(context: LevelContext): HairpinMeasure[] {
  const { part, alignment, notes } = context;
  const loudness = context.ownLoudness;
  return part.hairpins.map((h) => {
    const place = { kind: h.kind, index: h.index, toIndex: h.toIndex, bar: h.bar, toBar: h.toBar, pass: h.pass };
    const seconds: number[] = [];
    const levels: number[] = [];
    const own: number[] = [];
    for (const note of notes.slice(h.index, h.toIndex + 1)) {
      const onset = alignment.notes[note.index]!.onsetSeconds;
      if (onset === undefined || !isMeasured(note.levelDb) || part.notes[note.index]!.grace) continue;
      seconds.push(onset);
      levels.push(note.levelDb);
      own.push(loudness?.of(note.index) ?? 0);
    }
    const span = seconds.at(-1)! - seconds[0]!;
    if (seconds.length < LEAST_NOTES || !(span > 0)) {
      const why = notMeasured('too-few-in-hairpin');
      return { ...place, riseDb: why, registerAdjustedRiseDb: why, slopeDbPerBar: why, slopeDbPerSecond: why };
    }
    const line = fitHuberLine(seconds, levels);
    const adjusted = levels.map((v, i) => v - own[i]!);
    const course = loudness === null ? null : hairpinCourse(seconds, adjusted, h.kind === 'crescendo' ? 1 : -1);
    const barSeconds = (span * barQuarters(context, h.startQuarters)) / quartersBetween(context, h.index, h.toIndex);
    return {
      ...place,
      riseDb: line.slope * span,
      registerAdjustedRiseDb: loudness === null ? unknownRegister : fitHuberLine(seconds, adjusted).slope * span,
      slopeDbPerBar: line.slope * barSeconds,
      slopeDbPerSecond: line.slope,
      errorDb: line.slopeError * span,
      ...(course === null ? {} : { course }),
    };
  });
}

function barQuarters(context: NoteContext, atQuarters: number): number {
  const bar = context.part.bars.findLast((b) => b.startQuarters <= atQuarters + 1e-6);
  return bar === undefined ? 4 : (4 * bar.beats) / bar.beatType;
}

function quartersBetween(context: NoteContext, index: number, toIndex: number): number {
  const heard = context.part.notes
    .slice(index, toIndex + 1)
    .filter((n) => !n.grace && context.alignment.notes[n.index]!.onsetSeconds !== undefined);
  return Math.max(0.25, heard.at(-1)!.onsetQuarters - heard[0]!.onsetQuarters);
}
