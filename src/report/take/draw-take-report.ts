import { DEFAULT_LANGUAGE } from '../../base/index.js';
import { type Engrave, type EngravedPart, rememberExcerpts } from '../../engrave/index.js';
import { drawPdf, type Typesetter } from '../../page/index.js';
import { wordsIn } from '../../words/index.js';
import { isAboutTempo } from '../excerpt/marks/tempo-bars.js';
import { typesetterIn } from '../typesetter-in.js';
import { firstFindings } from './first-things.js';
import { layoutTakeReport, type TakeReportContent } from './layout-take-report.js';

/** Everything a take's PDF is made from. */
export interface TakeReportInput extends TakeReportContent {
  /** asked for the part laid out when it is needed; without it pages have no excerpts */
  readonly engraved?: () => Promise<EngravedPart | null>;
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
}

/**
 * Draws the pages a player practises from.
 *
 * @param input the take's result, the part it was reviewed against, the recording's loudness (dBFS; the centre of frame f
 * is at `(f + 0.5) * hopSeconds`), the part laid out, paper and date. Bars that cannot be engraved are told in words
 * alone
 * @returns a tagged PDF with embedded faces; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export async function drawTakeReport(input: TakeReportInput): Promise<Uint8Array> {
  const typesetter = typesetterIn(input.result.language);
  const engrave = await engraverFor(input, typesetter);
  return drawPdf(layoutTakeReport(input, typesetter, engrave), input.creationDate);
}

/** Laying a part out takes as long as listening to half a minute, so a take with nothing to show goes without. */
async function engraverFor({ result, engraved }: TakeReportInput, typesetter: Typesetter): Promise<Engrave | null> {
  const { caption } = wordsIn(result.language ?? DEFAULT_LANGUAGE);
  const shown = firstFindings(result).some(
    ({ kind, index }) => (index !== undefined || isAboutTempo(kind)) && caption(kind) !== null,
  );
  const part = shown && engraved !== undefined ? await engraved() : null;
  return part === null ? null : rememberExcerpts(part, typesetter);
}
