import { drawTable, type Sheet, STYLES } from '../../page/index.js';
import type { BreathPlace, StudyPlan } from '../../study/index.js';
import type { StudyPageWords, StudyWords } from '../../words/index.js';

/** Shorter than this hardly anybody can breathe, seconds. Source: quick breaths 0.2–0.5 s (from memory). */
const HARDLY_SECONDS = 0.2;
const MOST_ROWS = 24;
const MOST_LONG = 3;

/**
 * Where to breathe, how much time there is, and what is long in between.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param words what the sheet says
 */
export function drawBreaths(sheet: Sheet, { breaths, longPhrases, seconds }: StudyPlan, words: StudyWords): void {
  const said = words.page.breaths;
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 80);
  sheet.write('H2', said.heading, STYLES.section);
  sheet.write('P', breaths.length > 0 ? said.introduction : said.none(seconds), STYLES.soft);
  sheet.space(4);
  if (breaths.length > 0) drawBreathTable(sheet, breaths, words);
  const shown = longPhrases.slice(0, MOST_LONG);
  for (const { bar, toBar, seconds: long } of shown) writeAfter(sheet, said.long(bar, toBar, long));
  const more = longPhrases.length - shown.length;
  if (more > 0) writeAfter(sheet, said.moreLong(more));
}

function writeAfter(sheet: Sheet, text: string): void {
  sheet.space(3);
  sheet.write('P', text, STYLES.body);
}

function drawBreathTable(sheet: Sheet, breaths: readonly BreathPlace[], { places, page }: StudyWords): void {
  const { heads, kind, seconds, underATenth, more } = page.breaths;
  const rows = breaths
    .slice(0, MOST_ROWS)
    .map((breath) => [
      places.note(breath.bar, breath.beat),
      { text: kind[breath.kind], style: breath.kind === 'full' ? STYLES.cellStrong : STYLES.cell },
      seconds(breath.secondsBefore),
      breath.secondsAvailable < 0.1 ? underATenth : seconds(breath.secondsAvailable),
      whereFrom(breath, page.breaths),
    ]);
  const left = breaths.length - rows.length;
  drawTable(
    sheet,
    [
      { head: heads.after, width: 104, namesRow: true },
      { head: heads.breath, width: 46 },
      { head: heads.before, width: 74, align: 'right' },
      { head: heads.time, width: 68, align: 'right', gap: 18 },
      { head: heads.source, width: sheet.width - 292 + 9 },
    ],
    left > 0 ? [...rows, [page.andMore, '', '', '', more(left)]] : rows,
  );
}

function whereFrom({ takenFrom, secondsAvailable }: BreathPlace, said: StudyPageWords['breaths']): string {
  const hardly = takenFrom === 'end-of-note' && secondsAvailable < HARDLY_SECONDS;
  return hardly ? said.hardlyAny : said.source[takenFrom];
}
