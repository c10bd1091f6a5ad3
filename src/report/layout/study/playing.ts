import type { StudyPlan } from '../../../study/index.js';
import type { Sheet } from '../sheet.js';
import { MARGIN_COLUMN, MARGIN_GAP, STYLES } from '../styles.js';
import { drawTable } from '../table.js';
import { barList, noteInWords } from './places-in-words.js';

const MOST_ROWS = 16;

/**
 * How the bars are tongued and slurred.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 *
 * Source: definition.
 */
export function drawTonguing(sheet: Sheet, { articulation }: StudyPlan): void {
  if (articulation.length === 0) return;
  const dotted = articulation.some(({ words }) => words.includes('dot on the last'));
  heading(
    sheet,
    'Tongue and slur',
    `Where the pattern changes, say it aloud before you play it.${dotted ? ' A dot on the last note under a slur means: let go early, no new tongue.' : ''}`,
  );
  rows(
    sheet,
    'Pattern',
    articulation.map(({ bars, words }) => [barList(bars), `${words.charAt(0).toUpperCase()}${words.slice(1)}`]),
  );
}

/**
 * Entries after rests, fermatas, and changes of tempo.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 *
 * Source: definition.
 */
export function drawCounting(sheet: Sheet, { entries, fermatas, tempo }: StudyPlan): void {
  if (entries.length > 0) {
    heading(sheet, 'Coming in after a rest', 'A rest is played too: count it in small values to its very end.');
    rows(
      sheet,
      'How to count',
      entries.map(({ bars, words }) => [barList(bars), words]),
    );
  }
  if (fermatas.length > 0) {
    heading(
      sheet,
      fermatas.length === 1 ? 'The fermata' : 'Fermatas',
      'About twice is usual. Listen to the note while you hold it.',
    );
    rows(
      sheet,
      'How long',
      fermatas.map(({ bar, beat, words }) => [noteInWords(bar, beat), words]),
    );
  }
  if (tempo.changes.length > 0) {
    heading(sheet, 'Changes of tempo', 'Know before you begin how fast each of them is.');
    rows(
      sheet,
      'What happens',
      tempo.changes.map(({ bar, beat, words }) => [
        noteInWords(bar, beat),
        `${words.charAt(0).toUpperCase()}${words.slice(1)}.`,
      ]),
    );
  }
}

function heading(sheet: Sheet, title: string, text: string): void {
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 70);
  sheet.write('H2', title, STYLES.section);
  sheet.write('P', text, STYLES.soft);
  sheet.space(3);
}

function rows(sheet: Sheet, head: string, all: readonly (readonly [string, string])[]): void {
  const more = all.length - MOST_ROWS;
  const shown = all.slice(0, MOST_ROWS);
  const first = MARGIN_COLUMN + MARGIN_GAP;
  drawTable(
    sheet,
    [
      { head: 'Where', width: first, namesRow: true },
      { head, width: sheet.width - first + 9 },
    ],
    more > 0 ? [...shown, ['And more', `${more} further places; look for them yourself.`]] : shown,
  );
}
