import { drawTable, STYLES } from '../../page/index.js';
import type { ProgressResult } from '../../weeks/index.js';
import { wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';

const DECIMALS = 1;

/**
 * How a change is told from chance, in small print: in words, and the numbers used.
 *
 * @param sheet pages being filled
 * @param progress the document
 */
export function drawNoise(sheet: ReportSheet, progress: ProgressResult): void {
  const said = wordsIn(sheet.language).weeks;
  const words = said.labels;
  sheet.space(20);
  sheet.ensure(STYLES.section.leading + 8 * STYLES.small.leading);
  sheet.write('H2', words.noise, STYLES.head);
  sheet.space(3);
  for (const text of said.noise(progress)) sheet.write('P', text, STYLES.small);
  sheet.space(6);
  drawTable(
    sheet,
    [
      { head: words.measure, width: 236, namesRow: true },
      { head: words.varies, width: 92, align: 'right' },
      { head: words.changeFrom, width: 92, align: 'right', gap: 24 },
      { head: words.restsOn, width: sheet.width - 420 + 9 },
    ],
    progress.measures.map(({ measure, noise }) => {
      const { name, unit } = said.measure(measure);
      return [
        `${name}, ${unit}`,
        sheet.words.number(noise.standardDeviation, DECIMALS),
        sheet.words.number(noise.smallestChange, DECIMALS),
        said.restsOn(
          noise.fromTakes.days,
          noise.fromTakes.degreesOfFreedom,
          noise.working.measuring,
          noise.working.playing,
        ),
      ];
    }),
  );
}
