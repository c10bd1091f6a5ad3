import type { Notehead } from '../../../engrave/index.js';
import type { Item } from '../../../page/index.js';
import { QUARTERS_OF_BEAT, type TempoBeat, tempoBeat } from '../../../score/index.js';
import type { MarkPlace } from './mark-place.js';
import { arrow, NOTE_HEIGHT, pencilNote, stroke } from './pencil.js';

const LANE = 8;
const GAP = 4;
/** A shorter line would not be seen as one that runs over bars. */
const LEAST_LENGTH = 14;

/** Notes of a metronome mark in the music face. Source: SMuFL 1.4, Metronome marks (U+ECA5, and U+ECB7 for the dot). */
const NOTES: Readonly<Record<TempoBeat, string>> = {
  quarter: '\u{ECA5}',
  'dotted-quarter': '\u{ECA5}\u{ECB7}',
  half: '\u{ECA3}',
};
const QUARTER_SIZE = 11;

interface BarHere {
  readonly head: Notehead;
  readonly end: number;
  /** in the beats that the metre counts */
  readonly beatBpm: number | null;
}

/**
 * An arrow over the bars in which the tempo runs ahead (forward) or falls behind (back), and under it the tempo of each bar.
 *
 * @param place one line of the excerpt
 * @returns what to draw; nothing where no bar of the stretch stands
 *
 * Source: common practice (a teacher's pencil).
 */
export function tempoArrow(place: MarkPlace): Item[] {
  const { sheet, room, finding, excerpt, line } = place;
  const here = barsHere(place);
  const [first, last] = [here[0], here.at(-1)];
  if (first === undefined || last === undefined) return [];
  const ahead = finding.kind === 'rushing';
  const note = pencilNote(sheet, ahead ? sheet.words.marks.ahead : sheet.words.marks.behind);
  const [isFirst, isLast] = [line.number === 0, line.number === line.of - 1];
  const left = Math.max(0, first.head.left - 1);
  const right = Math.min(excerpt.width, Math.max(last.end - 2, left + note.width + GAP + LEAST_LENGTH));
  const top = room.above(left - 1, right + 1, LANE + NOTE_HEIGHT);
  const middle = top + LANE / 2;
  const words = ahead ? isFirst : isLast;
  const from = words && ahead ? left + note.width + GAP : left;
  const to = words && !ahead ? right - note.width - GAP : right;
  const [tail, tip] = ahead ? [from, to] : [to, from];
  const pointed = ahead ? isLast : isFirst;
  return [
    ...(pointed
      ? arrow([tail, middle], [tip, middle])
      : [
          stroke([
            [tail, middle],
            [tip, middle],
          ]),
        ]),
    ...(words ? note.at(ahead ? left : right - note.width, middle - NOTE_HEIGHT / 2) : []),
    ...tempoOfBars(place, here, top + LANE),
  ];
}

/**
 * The tempo that was played, as a metronome mark over the beginning.
 *
 * @param place one line of the excerpt
 * @returns what to draw; nothing where the beginning does not stand or no tempo was measured
 *
 * Source: common practice (a teacher's pencil).
 */
export function playedTempo({ sheet, room, width, result: { tempo }, part, headOf }: MarkPlace): Item[] {
  const head = headOf(part.notes.find((note) => !note.grace)?.index);
  if (head === null || 'notMeasured' in tempo) return [];
  const beat = tempoBeat(part);
  const counted = NOTES[beat];
  const played = sheet.words.number(tempo.playedQuarterBpm / QUARTERS_OF_BEAT[beat], 0);
  const sign = sheet.typesetter.widthOf(counted, 'music', QUARTER_SIZE);
  const note = pencilNote(sheet, sheet.words.marks.playedTempo(played), true);
  const left = Math.max(0, Math.min(head.left, width - sign - GAP - note.width));
  const top = room.above(left - 1, left + sign + GAP + note.width + 1, LANE + 2.5);
  const baseline = top + LANE - 0.5;
  return [
    { kind: 'text', x: left, baseline, text: counted, face: 'music', size: QUARTER_SIZE, ink: 'accent' },
    ...note.at(left + sign + GAP, baseline - NOTE_HEIGHT + 2.2),
  ];
}

/** Numbers over the first notes of bars; one that would touch the number before it is left out. */
function tempoOfBars({ sheet }: MarkPlace, here: readonly BarHere[], top: number): Item[] {
  const items: Item[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (const { head, beatBpm } of here) {
    if (beatBpm === null) continue;
    const note = pencilNote(sheet, sheet.words.number(beatBpm, 0));
    const left = Math.max(0, head.x - note.width / 2);
    if (left < free) continue;
    items.push(...note.at(left, top));
    free = left + note.width + GAP;
  }
  return items;
}

/** The bars of the stretch that have a note in this line, with where they begin and end. */
function barsHere({ line, part, result: { tempo }, headOf, endOf }: MarkPlace): BarHere[] {
  const measured = 'notMeasured' in tempo ? [] : tempo.bars;
  const quarters = QUARTERS_OF_BEAT[tempoBeat(part)];
  return line.bars.flatMap((bar): BarHere[] => {
    const inBar = part.notes.filter(({ barIndex, pass }) => barIndex === bar.barIndex && pass === bar.pass);
    const printed = inBar.filter((note) => !note.grace && headOf(note.index) !== null);
    const [first, last] = [headOf(printed[0]?.index), printed.at(-1)];
    if (first === null || last === undefined) return [];
    const tempoHere = measured.find((one) => one.bar === bar.bar && one.pass === bar.pass);
    return [
      {
        head: first,
        end: endOf(last.index),
        beatBpm: tempoHere === undefined ? null : tempoHere.quarterBpm / quarters,
      },
    ];
  });
}
