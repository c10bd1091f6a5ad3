import type { SignReading } from '../pitch/accidentals.js';
import type { ChosenVoice } from './choose-voice.js';
import { groupTuplets } from './group-tuplets.js';
import { lineOf } from './line.js';
import { matchSlurs, type SlurEnds } from './match-slurs.js';
import { readSigns } from './read-signs.js';
import { type PrintedBar, type PrintedNote, type PrintedTuplet, SAME_PLACE } from './types.js';

/** A note or rest of the player's line with everything that is known about it in print. */
export interface LineNote {
  readonly printed: PrintedNote;
  readonly transposeSemitones: number;
  readonly reading: SignReading | null;
  readonly tuplet: PrintedTuplet | null;
  readonly slurEnds: SlurEnds;
}

/** The player's line. */
export interface Line {
  /** notes and rests of each printed bar */
  readonly bars: readonly (readonly LineNote[])[];
  /** transposition at the start of the part, in semitones */
  readonly transposeSemitones: number;
  /** notes whose slur never ends */
  readonly unclosedSlurs: readonly PrintedNote[];
}

const NO_SLURS: SlurEnds = { starts: [], stops: [], strayStop: false };

/**
 * @param bars bars as printed
 * @param chosen voice and staff to read
 * @returns the line of that voice
 */
export function readLine(bars: readonly PrintedBar[], chosen: ChosenVoice): Line {
  const lines = bars.map((bar) => lineOf(bar, chosen));
  const all = lines.flat();
  const readings = readSigns(bars, chosen.staff);
  const slurs = matchSlurs(all);
  const tuplets = groupTuplets(all);
  const transposes = transposer(bars, chosen.staff);
  return {
    bars: lines.map((notes, i) =>
      notes.map((note) => ({
        printed: note,
        transposeSemitones: transposes(i, note.at),
        reading: readings.get(note.id) ?? null,
        tuplet: tuplets.get(note.id) ?? null,
        slurEnds: slurs.byNote.get(note.id) ?? NO_SLURS,
      })),
    ),
    transposeSemitones: transposer(bars, chosen.staff)(0, 0),
    unclosedSlurs: slurs.unclosed,
  };
}

/** Transposition at a place; places must be asked for in printed order. */
function transposer(bars: readonly PrintedBar[], staff: string): (barIndex: number, at: number) => number {
  const changes = bars.flatMap((bar) =>
    bar.transposeChanges
      .filter((change) => change.staff === null || change.staff === staff)
      .map((change) => ({ ...change, barIndex: bar.index })),
  );
  let next = 0;
  let semitones = 0;
  return (barIndex, at) => {
    for (let change = changes[next]; change !== undefined; change = changes[++next]) {
      if (change.barIndex > barIndex || (change.barIndex === barIndex && change.at > at + SAME_PLACE)) break;
      semitones = change.semitones;
    }
    return semitones;
  };
}
