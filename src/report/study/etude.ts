import { type Engrave, engraveLines, type LineOfBars, shifted } from '../../engrave/index.js';
import { type Sheet, STYLES } from '../../page/index.js';
import type { Part } from '../../score/index.js';
import type { StudyPlan } from '../../study/index.js';
import type { StudyWords } from '../../words/index.js';
import { drawEtudeMarks, type EtudeMark, etudeMarks } from './etude-marks.js';
import { lineRoom } from './line-room.js';
import { trapRings } from './pencil-marks.js';

/** A longer part is not engraved as a whole: its own pages are nearer at hand. */
const MOST_BARS = 200;
/** White between lines, points. */
const BETWEEN_LINES = 8;

/**
 * The whole étude once, with all pencil marks: rings around notes that are easily misread, breaths, fermatas, and what
 * loud and soft are to do. Notes stay as they are printed.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param part the part as the teacher wants it
 * @param engrave engraves bars of the part
 * @param words what the sheet says
 */
export function drawEtude(sheet: Sheet, plan: StudyPlan, part: Part, engrave: Engrave, words: StudyWords): void {
  const last = Math.max(...part.bars.map(({ barIndex }) => barIndex));
  if (part.notes.length === 0 || last >= MOST_BARS) return;
  const lines = engraveLines(engrave, 0, last, sheet.width);
  if (lines.length === 0) return;
  const said = words.page.etude;
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 110);
  sheet.write('H2', said.heading, STYLES.section);
  sheet.write('P', said.introduction, STYLES.soft);
  sheet.space(6);
  const marks = etudeMarks(plan, part, words);
  for (const line of lines) drawLine(sheet, line, plan, part, marks, words);
}

function drawLine(
  sheet: Sheet,
  line: LineOfBars,
  plan: StudyPlan,
  part: Part,
  marks: readonly EtudeMark[],
  words: StudyWords,
): void {
  const traps = plan.traps.filter(({ rank }) => rank < 3);
  const room = lineRoom(sheet, line.excerpt, sheet.width);
  const rings = trapRings(line.excerpt, traps, room);
  const items = [...line.excerpt.items, ...rings, ...drawEtudeMarks(sheet, line, marks, room, sheet.width)];
  const [top, bottom] = room.extent;
  sheet.ensure(bottom - top);
  sheet.elements.push({
    tag: 'Figure',
    alternative: inWords(line, plan, part, marks, words),
    box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + bottom - top],
    children: [{ page: sheet.page, items: shifted(items, sheet.left, sheet.y - top) }],
  });
  sheet.y += bottom - top;
  sheet.space(BETWEEN_LINES);
}

function inWords(
  { excerpt, from, to }: LineOfBars,
  plan: StudyPlan,
  part: Part,
  marks: readonly EtudeMark[],
  { page, places, plan: told }: StudyWords,
): string {
  const numberOf = (index: number) => part.bars.find(({ barIndex }) => barIndex === index)?.bar ?? String(index + 1);
  const isHere = (id: string) => excerpt.noteheads.has(id);
  const rings = plan.traps
    .filter(({ rank, printedIds }) => rank < 3 && printedIds.some(isHere))
    .map(({ bar, beats, pitches }) =>
      page.etude.mark(places.note(bar, beats[0] ?? 1), page.etude.ring(told.pitches(pitches))),
    );
  const written = marks.filter(({ printedId }) => isHere(printedId)).map((mark) => mark.told);
  return page.etude.alternative(places.bars(numberOf(from), numberOf(to)), [...rings, ...written]);
}
