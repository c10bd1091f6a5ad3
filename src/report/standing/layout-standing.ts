import {
  type Cell,
  type Column,
  type Drawing,
  drawHeadRule,
  drawTable,
  type PaperSize,
  STYLES,
  type Typesetter,
} from '../../page/index.js';
import type { Standing, StandingGroup, StandingTake } from '../../result/index.js';
import { type StandingWords, wordsIn } from '../../words/index.js';
import { ReportSheet } from '../report-sheet.js';
import { drawSmallPrint } from '../small-print.js';

/** Points columns take. */
const PLACE = 44;
const BARS = 48;
const POINTS = 96;
const CHAIR = 62;
const NARROWEST = 40;
const JUDGE = 52;
const PANEL = 52;
const GAP = 10;

/**
 * Lays out the table a director needs.
 *
 * @param standing the document
 * @param paper paper, taken in landscape
 * @param typesetter widths and coverage of the faces
 * @returns the pages as plain data
 */
export function layoutStanding(standing: Standing, paper: PaperSize, typesetter: Typesetter): Drawing {
  const { language } = standing;
  const words = wordsIn(language).standing;
  const title = standing.groups.length === 1 ? titleOf(standing.groups[0] as StandingGroup) : words.several;
  const sheet = new ReportSheet({
    ...{ typesetter, paper, language, landscape: true },
    ...{ title: words.documentTitle(title), foot: words.foot(title) },
  });
  sheet.write('H1', title, STYLES.title);
  sheet.space(2);
  sheet.write('P', words.support, STYLES.headline);
  drawHeadRule(sheet);
  for (const group of standing.groups) drawGroup(sheet, standing, group);
  if (standing.unknown.length > 0) {
    sheet.space(10);
    sheet.write('P', words.unknown(standing.unknown), STYLES.body);
  }
  drawSmallPrint(sheet, false);
  return sheet.finish();
}

function titleOf({ title, score }: StandingGroup): string {
  return title.trim() === '' ? score : title;
}

function drawGroup(sheet: ReportSheet, { chairs, groups }: Standing, group: StandingGroup): void {
  const words = sheet.words.standing;
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 90);
  sheet.write('H2', groups.length === 1 ? words.heading : `${titleOf(group)}, ${group.part}`, STYLES.section);
  for (const note of words.notes) sheet.write('P', note, STYLES.soft);
  sheet.space(4);
  drawTable(
    sheet,
    columnsOf(sheet, group, chairs !== null),
    group.takes.map((take) => row(sheet, group, take, chairs !== null)),
  );
  if (chairs !== null) drawChairs(sheet, group, chairs);
  if (group.judges.length > 0) drawPanel(sheet, group);
}

function columnsOf(sheet: ReportSheet, { criteria }: StandingGroup, chairs: boolean): Column[] {
  const words = sheet.words.standing;
  const widthOf = (text: string) => sheet.typesetter.widthOf(text, STYLES.head.face, STYLES.head.size);
  const columns: Column[] = [
    { head: words.place, width: PLACE },
    { head: words.take, width: 0, namesRow: true },
    { head: words.bars, width: BARS, align: 'right' },
    ...criteria.map(({ criterion }): Column => {
      const head = sheet.words.criterion(criterion);
      return { head, width: Math.max(NARROWEST, widthOf(head) + GAP), align: 'right' };
    }),
    { head: words.points, width: POINTS, align: 'right', gap: 12 },
    ...(chairs ? [{ head: words.chair, width: CHAIR }] : []),
  ];
  const taken = columns.reduce((sum, column) => sum + column.width, 0);
  return columns.map((column) => (column.width === 0 ? { ...column, width: sheet.width - taken + 9 } : column));
}

function row(sheet: ReportSheet, { criteria }: StandingGroup, take: StandingTake, chairs: boolean): Cell[] {
  const { number, standing: words } = sheet.words;
  const { bars, given, possible, error } = take;
  const total =
    given === null ? words.none : words.pointsOf(number(given, 1), number(possible, 1), number(error ?? 0, 1));
  return [
    placeText(words, take.place),
    { text: labelOf(words, take), style: STYLES.cellStrong },
    bars === null ? words.none : words.barsOf(bars.played, bars.of),
    ...criteria.map(({ criterion }) => {
      const line = take.criteria.find((one) => one.criterion === criterion);
      return line === undefined || line.given === null ? words.none : number(line.given, 1);
    }),
    total,
    ...(chairs && take.chair !== null ? [words.chairs[take.chair]] : chairs ? [words.none] : []),
  ];
}

function labelOf(words: StandingWords, { name, player, outcome, bars }: StandingTake): string {
  const who = player ?? name;
  if (outcome !== 'reviewed') return words.notReviewed(who);
  return bars?.ending === 'cut-off' ? words.cutOff(who) : who;
}

function placeText(words: StandingWords, place: StandingTake['place']): string {
  if (place === null) return words.none;
  return place.best === place.worst ? String(place.best) : words.places(place.best, place.worst);
}

/** Whom to seat, and whom to hear again before anyone is. */
function drawChairs(sheet: ReportSheet, { takes }: StandingGroup, chairs: number): void {
  const words = sheet.words.standing;
  const names = (which: StandingTake['chair']) =>
    takes.filter(({ chair }) => chair === which).map((take) => take.player ?? take.name);
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + 50);
  sheet.write('H2', words.shortList(chairs), STYLES.section);
  const [sure, again] = [names('sure'), names('listen-again')];
  sheet.write('P', sure.length === 0 ? words.nobodySure : words.sure(sure), STYLES.body);
  if (again.length > 0) sheet.write('P', words.again(again, chairs - sure.length), STYLES.body);
}

/** Judge by judge, beside the measures. */
function drawPanel(sheet: ReportSheet, { takes, judges, agreement }: StandingGroup): void {
  const { number, standing: words } = sheet.words;
  const heard = takes
    .flatMap((take) => (take.panel === null ? [] : [{ ...take, panel: take.panel }]))
    .toSorted((a, b) => b.panel.mean - a.panel.mean);
  sheet.space(14);
  sheet.ensure(STYLES.section.leading + 90);
  sheet.write('H2', words.panel, STYLES.section);
  const apart = heard.filter(({ partsWays }) => partsWays).map((take) => take.player ?? take.name);
  if (apart.length > 0) sheet.write('P', words.partsWays(apart), STYLES.headline);
  sheet.write('P', agreement === null ? words.noAgreement : words.agreement(number(agreement, 2)), STYLES.soft);
  sheet.space(4);
  const fixed = PLACE + judges.length * JUDGE + 4 * PANEL + CHAIR;
  drawTable(
    sheet,
    [
      { head: words.panelPlace, width: PLACE },
      { head: words.take, width: sheet.width - fixed + 9, namesRow: true },
      ...judges.map((judge): Column => ({ head: judge, width: JUDGE, align: 'right' })),
      { head: words.mean, width: PANEL, align: 'right' },
      { head: words.spread, width: PANEL, align: 'right' },
      { head: words.measured, width: PANEL, align: 'right' },
      { head: words.placeByMeasure, width: PANEL, align: 'right', gap: 12 },
      { head: words.apart, width: CHAIR },
    ],
    heard.map(({ panel, ...take }) => [
      placeText(words, panel.place),
      { text: labelOf(words, { ...take, panel }), style: STYLES.cellStrong },
      ...judges.map((judge) => {
        const points = panel.judges.find((one) => one.judge === judge)?.points;
        return points === undefined ? words.none : number(points, 1);
      }),
      number(panel.mean, 1),
      panel.spread === null ? words.none : number(panel.spread, 1),
      take.given === null ? words.none : number(take.given, 1),
      placeText(words, panel.measuredPlace),
      take.partsWays ? words.listenAgain : '',
    ]),
  );
}
