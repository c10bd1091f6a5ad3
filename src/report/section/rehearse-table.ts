import { drawTable, STYLES } from '../../page/index.js';
import type { SectionResult } from '../../result/index.js';
import { type SectionWords, wordsIn } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { scoreNames } from './score-names.js';

const MOST = 8;
const MOST_NAMES = 5;
/** Points for the place, and for the place with its score. */
const WHERE = 92;
const WHERE_OF_SCORES = 156;

/**
 * What the section should rehearse together: the places that trouble the most players.
 *
 * @param sheet pages being filled
 * @param section the section's document
 */
export function drawRehearseTable(sheet: ReportSheet, section: SectionResult): void {
  if (section.players < 2) return;
  const shared = section.troubles.filter((trouble) => trouble.players > 1).slice(0, MOST);
  const words = wordsIn(sheet.language).section;
  sheet.space(12);
  sheet.write('H2', words.rehearse, STYLES.section);
  if (shared.length === 0) {
    sheet.write('P', words.nothingShared, STYLES.body);
    return;
  }
  const where = section.score === null ? WHERE_OF_SCORES : WHERE;
  sheet.space(3);
  drawTable(
    sheet,
    [
      { head: words.where, width: where, namesRow: true },
      { head: words.what, width: 196 },
      { head: words.about, width: 76 },
      { head: words.players, width: 60, align: 'right' },
      { head: words.toFixFor, width: 70, align: 'right', gap: 22 },
      { head: words.who, width: sheet.width - where - 402 + 9 },
    ],
    shared.map((trouble) => [
      { text: placeOf(sheet, section, trouble), style: STYLES.cellStrong },
      sheet.words.finding(trouble).headline,
      sheet.words.criterion(trouble.criterion),
      words.playersOf(trouble.players, trouble.of ?? section.players),
      String(trouble.fix),
      someOf(trouble.who, words),
    ]),
  );
}

function placeOf(
  sheet: ReportSheet,
  section: SectionResult,
  { bar, beat, alsoBars = [], kind, score: file }: SectionResult['troubles'][number],
): string {
  const words = wordsIn(sheet.language).section;
  const place =
    bar === null
      ? words.wholeTake
      : alsoBars.length > 0
        ? sheet.words.study.places.barList([bar, ...alsoBars].toSorted(inBars(section, file)))
        : sheet.words.place({ kind, bar, pass: 1, beat });
  return section.score === null ? words.placeIn(place, scoreNames(section)(file)) : place;
}

/** In the order in which the bars are printed. */
function inBars({ scores, bars }: SectionResult, file: string): (a: string, b: string) => number {
  const printed = scores.find((one) => one.file === file)?.barNumbers ?? bars;
  return (a, b) => printed.indexOf(a) - printed.indexOf(b);
}

/** As many names as a glance takes in. */
function someOf(names: readonly string[], words: SectionWords): string {
  const more = names.length - MOST_NAMES;
  return more > 1 ? words.andMore(names.slice(0, MOST_NAMES), more) : names.join(', ');
}
