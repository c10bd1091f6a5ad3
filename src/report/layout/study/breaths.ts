import type { BreathPlace, StudyPlan } from '../../../study/index.js';
import { numberInWords } from '../../words/numbers.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawTable } from '../table.js';
import { barsInWords, noteInWords } from './places-in-words.js';

/** Shorter than this hardly anybody can breathe, seconds. Source: quick breaths 0.2–0.5 s (from memory). */
const HARDLY_SECONDS = 0.2;
const MOST_ROWS = 24;

const SOURCES: Readonly<Record<BreathPlace['takenFrom'], string>> = {
  rest: 'in the rest',
  'end-of-note': 'from the end of the note before it',
  fermata: 'after the hold; take it calmly',
};

/**
 * Where to breathe, how much time there is, and what is long in between.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 *
 * Source: definition.
 */
export function drawBreaths(sheet: Sheet, { breaths, longPhrases, seconds }: StudyPlan): void {
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 80);
  sheet.write('H2', 'Where to breathe', STYLES.section);
  sheet.write('P', introduction(breaths.length, seconds), STYLES.soft);
  sheet.space(4);
  if (breaths.length > 0) {
    const rows = breaths
      .slice(0, MOST_ROWS)
      .map((breath) => [
        noteInWords(breath.bar, breath.beat),
        { text: breath.kind, style: breath.kind === 'full' ? STYLES.cellStrong : STYLES.cell },
        `${numberInWords(breath.secondsBefore, 1)} s`,
        breath.secondsAvailable < 0.1 ? 'under 0.1 s' : `${numberInWords(breath.secondsAvailable, 1)} s`,
        whereFrom(breath),
      ]);
    drawTable(
      sheet,
      [
        { head: 'After the note on', width: 104, namesRow: true },
        { head: 'Breath', width: 46 },
        { head: 'Played before it', width: 74, align: 'right' },
        { head: 'Time for it', width: 68, align: 'right', gap: 18 },
        { head: 'Where the time comes from', width: sheet.width - 292 + 9 },
      ],
      rows,
    );
  }
  for (const { bar, toBar, seconds: long } of longPhrases) {
    sheet.space(3);
    const text = `${barsInWords(bar, toBar)} last ${numberInWords(long, 0)} seconds in one breath. Fill up well before, save air from the start, and ask your teacher where a breath may be added if it does not last.`;
    sheet.write('P', text.replace(/^Bar (\S+) last /, 'Bar $1 lasts '), STYLES.body);
  }
}

function introduction(count: number, seconds: number): string {
  if (count > 0)
    return 'Times are at the tempo above. Slower practice needs more breaths: add them at the ends of slurs.';
  const whole = numberInWords(seconds, 0);
  return `The part marks no breath and leaves no rest for one; it lasts about ${whole} seconds. Choose your places with your teacher and pencil them in.`;
}

function whereFrom({ takenFrom, secondsAvailable }: BreathPlace): string {
  if (takenFrom === 'end-of-note' && secondsAvailable < HARDLY_SECONDS) {
    return 'hardly any: let go of the note early';
  }
  return SOURCES[takenFrom];
}
