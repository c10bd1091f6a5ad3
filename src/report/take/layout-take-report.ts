import type { Engrave } from '../../engrave/index.js';
import type { Drawing, PaperSize, SheetOptions, Typesetter } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import { wordsIn } from '../../words/index.js';
import type { Loudness } from '../curves/loudness-curve.js';
import { ReportSheet } from '../report-sheet.js';
import type { RoomPlace } from '../room-link.js';
import { drawSmallPrint } from '../small-print.js';
import { titleOf } from '../title-of.js';
import { drawAtAGlance } from './at-a-glance.js';
import { drawBarsPlayed } from './bars-played.js';
import { drawCriteriaTable } from './criteria-table.js';
import type { Density } from './density.js';
import { drawDetails } from './details.js';
import { drawFirstThings } from './first-things.js';
import { drawHead } from './head.js';
import { drawNotReviewed } from './not-reviewed.js';
import { drawWentWell } from './went-well.js';

/** A last page that is filled no further than this share of it is thin. */
const THIN = 0.3;

/** Everything a take's pages are made from. */
export interface TakeReportContent {
  readonly result: TakeResult;
  /** the part the take was reviewed against */
  readonly part: Part;
  readonly loudness: Loudness;
  readonly paper: PaperSize;
  /** where the take can be heard; places then lead there */
  readonly room?: RoomPlace | undefined;
}

/**
 * Lays out a take's pages.
 *
 * @param content the take's result, its part and its loudness
 * @param typesetter widths and coverage of the faces
 * @param engrave engraves bars of the part; null when it cannot be engraved
 * @returns the pages as plain data
 */
export function layoutTakeReport(content: TakeReportContent, typesetter: Typesetter, engrave: Engrave | null): Drawing {
  const lay = (density: Density, leave?: SheetOptions['leave']): Laid =>
    layoutPages(content, { typesetter, engrave, density, leave });
  const roomy = lay('roomy');
  let [best, density]: [Laid, Density] = [roomy, 'roomy'];
  if (content.result.outcome === 'reviewed' && roomy.lastPageIsThin) {
    const tight = lay('tight');
    if (tight.drawing.pages < roomy.drawing.pages) [best, density] = [tight, 'tight'];
  }
  return best.cautionsAlone === null ? best.drawing : lay(density, best.cautionsAlone).drawing;
}

interface Laid {
  readonly drawing: Drawing;
  /** the last page holds so little that it would better not be there */
  readonly lastPageIsThin: boolean;
  /** where the cautions have a page for themselves: what to leave on the page before, so that its end comes to them */
  readonly cautionsAlone: SheetOptions['leave'] | null;
}

interface LayoutMeans {
  readonly typesetter: Typesetter;
  readonly engrave: Engrave | null;
  readonly density: Density;
  readonly leave: SheetOptions['leave'];
}

function layoutPages({ result, part, loudness, paper, room }: TakeReportContent, means: LayoutMeans): Laid {
  const { typesetter, engrave, density, leave } = means;
  const who = result.take.player ?? result.take.file;
  const foot = [who, titleOf(result)].join('  ·  ');
  const { language = 'en' } = result;
  const title = wordsIn(language).page.documentTitle(titleOf(result), who);
  const sheet = new ReportSheet({
    typesetter,
    paper,
    language,
    title,
    foot,
    ...(leave === undefined ? {} : { leave }),
  });
  drawHead(sheet, result);
  if (result.outcome === 'reviewed') {
    drawBarsPlayed(sheet, result);
    drawWentWell(sheet, result);
    const told = drawFirstThings(sheet, { result, part, engrave, room }, density);
    drawAtAGlance(sheet, { result, part, loudness }, density);
    drawCriteriaTable(sheet, result);
    drawDetails(sheet, result, told, room);
  } else {
    drawNotReviewed(sheet, result, result.outcome);
  }
  const [page, filled] = [sheet.page, sheet.y];
  const height = drawSmallPrint(sheet, true);
  const lastPageIsThin = sheet.page > 0 && (sheet.page > page || filled < THIN * sheet.pageHeight);
  const cautionsAlone = sheet.page > page ? { page, height } : null;
  return { drawing: sheet.finish(), lastPageIsThin, cautionsAlone };
}
