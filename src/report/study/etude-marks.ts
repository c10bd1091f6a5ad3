import type { FreeRoom, LineOfBars, Notehead } from '../../engrave/index.js';
import type { Item, Sheet } from '../../page/index.js';
import type { Part, PartNote } from '../../score/index.js';
import type { StudyPlan } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { NOTE_HEIGHT, pencilNote } from '../excerpt/marks/pencil.js';
import { isPlainStep } from './plain-steps.js';

/** A pencil mark at a note: what it says, where, and how it is told where it cannot be seen. */
export interface EtudeMark {
  readonly printedId: string;
  readonly text: string;
  readonly side: 'above' | 'below';
  /** at the note, or where it ends */
  readonly at: 'note' | 'end';
  readonly told: string;
}

/** How near two times are the same, quarters. */
const SAME = 1e-6;

/**
 * What a teacher's pencil writes into an étude beside rings: bars to watch, full breaths and breaths in rests, how long fermatas last,
 * where loud and soft must differ plainly, and where a hairpin arrives.
 *
 * @param plan what the étude asks for
 * @param part the part as the teacher wants it
 * @param words what the sheet says
 * @returns marks in the order of their kinds, each with the printed note it belongs to
 *
 * Source: common practice.
 */
export function etudeMarks(plan: StudyPlan, part: Part, { page, places }: StudyWords): EtudeMark[] {
  const notes = part.notes.filter((note) => !note.grace);
  const said = page.etude;
  const mark = (note: PartNote | undefined, text: string, side: 'above' | 'below', at: 'note' | 'end'): EtudeMark[] => {
    if (note === undefined) return [];
    const told = said.mark(places.note(note.bar, note.beat), text);
    return [{ printedId: note.printedId, text, side, at, told }];
  };
  const from = (quarters: number) => notes.find((note) => note.onsetQuarters >= quarters - SAME);
  const before = (quarters: number) => notes.findLast((note) => note.onsetQuarters < quarters - SAME);
  return [
    ...plan.watch.flatMap(({ bar }) =>
      mark(
        notes.find((note) => note.bar === bar),
        said.watch,
        'above',
        'note',
      ),
    ),
    ...plan.breaths
      .filter((breath) => breath.kind === 'full' || breath.from === 'rest')
      .flatMap((breath) => mark(before(breath.atQuarters), said.breath[breath.kind], 'above', 'end')),
    ...plan.fermatas.flatMap(({ bar, beat, suggestedSeconds }) => {
      const held = notes.find((note) => note.fermata && note.bar === bar && note.beat === beat);
      return mark(held, said.hold(suggestedSeconds), 'above', 'note');
    }),
    ...plan.levels.flatMap((level, i) =>
      isPlainStep(plan, i) ? mark(from(level.atQuarters), said.step[stepOf(level.steps)], 'below', 'note') : [],
    ),
    ...plan.hairpins.flatMap(({ endQuarters }) => mark(before(endQuarters), said.arrive, 'below', 'end')),
  ];
}

const stepOf = (steps: number | null) => ((steps ?? 0) > 0 ? 'louder' : 'softer');

/**
 * @param sheet for widths
 * @param line one line of engraved bars
 * @param marks of the whole étude
 * @param room of the line; takes the marks
 * @param width points the line may take
 * @returns the marks whose note stands in this line, points from its top left corner
 */
export function drawEtudeMarks(
  sheet: Sheet,
  { excerpt }: LineOfBars,
  marks: readonly EtudeMark[],
  room: FreeRoom,
  width: number,
): Item[] {
  return marks.flatMap(({ printedId, text, side, at }) => {
    const head = excerpt.noteheads.get(printedId);
    if (head === undefined) return [];
    const note = pencilNote(sheet, text);
    const x = at === 'note' ? head.x : endOf(head, [...excerpt.noteheads.values()], excerpt.barlines);
    const left = Math.max(0, Math.min(width - note.width, x - note.width / 2));
    const top = room[side](left, left + note.width, NOTE_HEIGHT);
    return note.at(left, top);
  });
}

/** Halfway to what comes next in the line: a note or a barline. */
function endOf({ x, right }: Notehead, heads: readonly Notehead[], barlines: readonly number[]): number {
  const next = Math.min(...[...heads.map(({ left }) => left), ...barlines].filter((one) => one > x + 1));
  return Number.isFinite(next) ? (right + next) / 2 : right;
}
