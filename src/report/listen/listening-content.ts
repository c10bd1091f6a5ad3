import type { Take } from '../../decode/index.js';
import type { Engrave } from '../../engrave/index.js';
import type { DrawingElement, Item, Typesetter } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import { type Part, type TempoBeat, tempoBeat } from '../../score/index.js';
import { type BarRow, barRows } from '../bars/bar-rows.js';
import { drawRow } from '../curves/draw-row.js';
import { levelRange, rowCurve } from '../curves/level-range.js';
import type { Loudness } from '../curves/loudness-curve.js';
import type { LevelRange } from '../curves/loudness-panel.js';
import { rowWidth } from '../curves/row-sizes.js';
import { type TimeStretch, timeStretches } from '../curves/score-axis.js';
import { type FindingExcerpt, findingExcerpt } from '../excerpt/finding-excerpt.js';
import { MOST_SHOWN } from '../most-shown.js';
import { ReportSheet } from '../report-sheet.js';
import { cutClip, gainFor } from './cut-clip.js';
import { findPassage, type Passage } from './find-passage.js';
import { type PlayheadPoint, playheadPath } from './playhead-path.js';

/** Sound a page may hold: as text it is 58.8 kB a second, and a page is to stay below 3 MB. */
const MOST_SECONDS = 42;
/** The first findings are heard with more around them. */
const FIRST = 3;
const FIRST_SECONDS = 8;
const LATER_SECONDS = 5;
/** Points; narrower than on paper, so that notes and numbers can be read on the screen of a telephone. */
const EXCERPT_WIDTH = 300;
const CURVES_WIDTH = 330;
const WHOLE_WIDTH = 420;
const PANEL_HEIGHT = 54;
const WHOLE_PANEL_HEIGHT = 72;
const ROW_GAP = 10;

/** A drawing on the page, lengths in points. */
export interface Picture {
  readonly items: readonly Item[];
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** what stands for it where it cannot be seen */
  readonly alternative: string;
  /** where the playhead goes; empty for a picture without one */
  readonly path: readonly PlayheadPoint[];
}

/** A drawing and what it shows. */
export interface CaptionedPicture extends Picture {
  readonly caption: string;
}

/** One finding: what can be seen and heard of it. */
export interface ListeningEntry {
  readonly finding: ResultFinding;
  readonly excerpt: CaptionedPicture | null;
  readonly curves: CaptionedPicture | null;
  /** a WAV file; null where there is nothing to hear, or no room for it */
  readonly clip: Uint8Array | null;
}

/** Everything that a listening page shows, before it becomes HTML. */
export interface ListeningContent {
  readonly result: TakeResult;
  readonly entries: readonly ListeningEntry[];
  readonly wholeTake: readonly Picture[];
  /** what tempo is counted in */
  readonly beat: TempoBeat;
  /** whether something could be heard that had to be left out */
  readonly shortened: boolean;
  /** findings for which there is no room at all */
  readonly more: number;
}

/** What a listening page is made from. */
export interface ListeningSource {
  readonly result: TakeResult;
  readonly part: Part;
  readonly take: Take;
  readonly loudness: Loudness;
}

/**
 * Chooses what can be heard and draws what can be seen of each finding.
 *
 * @param source the take's result, its part, its sound and its loudness
 * @param typesetter widths and coverage of the faces
 * @param engrave engraves bars of the part; null when it cannot be engraved
 * @returns the content as plain data
 */
export function listeningContent(
  source: ListeningSource,
  typesetter: Typesetter,
  engrave: Engrave | null,
): ListeningContent {
  const { result, part, take, loudness } = source;
  const beat = tempoBeat(part.bars);
  if (result.outcome !== 'reviewed') return { result, entries: [], wholeTake: [], beat, shortened: false, more: 0 };
  const sheet = scratch({ typesetter, result }, WHOLE_WIDTH);
  const gain = gainFor(take);
  const stretches = timeStretches(result, part);
  const rows = barRows(part, rowWidth(sheet));
  const curves = rows.map((row) => rowCurve(row, loudness, stretches));
  const look: Look = { ...source, typesetter, stretches, range: levelRange(curves, result) };
  let left = MOST_SECONDS;
  let shortened = false;
  const all = result.findings.filter(({ weight, ledByBar }) => weight !== 'well' && ledByBar === undefined);
  const told = all.slice(0, FIRST + MOST_SHOWN);
  const entries = told.map((finding, i): ListeningEntry => {
    const passage = findPassage(finding, result, part, i < FIRST ? FIRST_SECONDS : LATER_SECONDS);
    const fits = passage !== null && passage.toSeconds - passage.fromSeconds <= left;
    if (passage !== null && !fits) shortened = true;
    // where there is nothing to hear at one place, the notes still show what is meant; past the room for sound, words do
    const drawn =
      fits || passage === null ? findingExcerpt(sheet, finding, { result, part, engrave }, EXCERPT_WIDTH) : null;
    if (!fits) return { finding, excerpt: drawn && still(drawn), curves: null, clip: null };
    left -= passage.toSeconds - passage.fromSeconds;
    const path =
      drawn === null ? [] : playheadPath(passage, result, part, ({ printedId }) => drawn.places.get(printedId) ?? null);
    return {
      finding,
      excerpt: drawn && { ...still(drawn), path },
      curves: passageCurves(look, passage),
      clip: cutClip(take, passage.fromSeconds, passage.toSeconds, gain),
    };
  });
  return {
    result,
    entries,
    wholeTake: wholeTakeCurves(look, rows, curves),
    beat,
    shortened,
    more: all.length - told.length,
  };
}

/** A picture without a playhead. */
function still(excerpt: FindingExcerpt): CaptionedPicture {
  return { ...excerpt, left: 0, top: 0, path: [] };
}

interface Look extends ListeningSource {
  readonly typesetter: Typesetter;
  readonly stretches: readonly TimeStretch[];
  /** of the whole take, so that pictures can be compared */
  readonly range: LevelRange;
}

function passageCurves(look: Look, passage: Passage): CaptionedPicture | null {
  const { part, result, loudness, stretches, range } = look;
  const { bars } = passage;
  const sheet = scratch(look, CURVES_WIDTH);
  const [first, last] = [bars[0], bars.at(-1)];
  if (first === undefined || last === undefined) return null;
  const span = { fromQuarters: first.startQuarters, toQuarters: last.startQuarters + last.lengthQuarters };
  const row: BarRow = { bars, ...span, scale: rowWidth(sheet) / (span.toQuarters - span.fromQuarters) };
  const curve = rowCurve(row, loudness, stretches);
  const x0 = drawRow(sheet, { part, result, row, curve, range, height: PANEL_HEIGHT });
  const picture = gathered(sheet);
  const ends = { top: picture.top, bottom: picture.top + picture.height };
  const path = playheadPath(passage, result, part, ({ onsetQuarters }) =>
    onsetQuarters < row.fromQuarters || onsetQuarters >= row.toQuarters
      ? null
      : { x: x0 + (onsetQuarters - row.fromQuarters) * row.scale, ...ends },
  );
  const caption = 'notMeasured' in result.tempo ? sheet.words.listen.loudnessAlone : sheet.words.listen.curves;
  return { ...picture, path, caption };
}

function wholeTakeCurves(look: Look, rows: readonly BarRow[], curves: readonly Float64Array[]): Picture[] {
  const { part, result, range } = look;
  return rows.map((row, i) => {
    const sheet = scratch(look, WHOLE_WIDTH);
    drawRow(sheet, { part, result, row, curve: curves[i] as Float64Array, range, height: WHOLE_PANEL_HEIGHT });
    return gathered(sheet);
  });
}

/** The panels know how to draw on a sheet. */
function scratch({ typesetter, result }: Pick<Look, 'typesetter' | 'result'>, width: number): ReportSheet {
  return new ReportSheet({ typesetter, paper: 'a4', width, language: result.language, title: '', foot: '' });
}

/** Everything drawn on a sheet as one picture. */
function gathered(sheet: ReportSheet): Picture {
  const figures = sheet.elements.filter((element): element is Figure => element.box !== undefined);
  const top = Math.min(...figures.map(({ box }) => box[1]));
  return {
    items: figures.flatMap(({ children }) => children.flatMap((child) => ('items' in child ? child.items : []))),
    left: sheet.left,
    top,
    width: sheet.width,
    height: Math.max(...figures.map(({ box }) => box[3])) - top + ROW_GAP / 2,
    alternative: figures.map(({ alternative }) => alternative ?? '').join(' '),
    path: [],
  };
}

type Figure = DrawingElement & { readonly box: NonNullable<DrawingElement['box']> };
