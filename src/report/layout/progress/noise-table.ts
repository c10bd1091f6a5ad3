import type { ProgressResult } from '../../progress/progress-result-schema.js';
import { measureInWords } from '../../words/measure-words.js';
import { numberInWords } from '../../words/numbers.js';
import { PROGRESS_WORDS } from '../../words/progress-labels.js';
import { noiseInWords, restsOnInWords } from '../../words/progress-words.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawTable } from '../table.js';

const DECIMALS = 1;

/**
 * How a change is told from chance: in words, and the numbers used.
 *
 * @param sheet pages being filled
 * @param progress the document
 *
 * Source: definition.
 */
export function drawNoise(sheet: Sheet, progress: ProgressResult): void {
  const words = PROGRESS_WORDS;
  sheet.space(20);
  sheet.ensure(STYLES.section.leading + 8 * STYLES.body.leading);
  sheet.write('H2', words.noise, STYLES.section);
  sheet.space(3);
  for (const text of noiseInWords(progress)) sheet.write('P', text, STYLES.body);
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
      const { name, unit } = measureInWords(measure);
      return [
        `${name}, ${unit}`,
        numberInWords(noise.standardDeviation, DECIMALS),
        numberInWords(noise.smallestChange, DECIMALS),
        restsOnInWords(
          noise.fromTakes.days,
          noise.fromTakes.degreesOfFreedom,
          noise.working.measuring,
          noise.working.playing,
        ),
      ];
    }),
  );
}
