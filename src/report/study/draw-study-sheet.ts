import { type EngravedPart, engraveExcerpt, engravePart } from '../../engrave/index.js';
import { drawPdf } from '../../page/index.js';
import { typesetterIn } from '../typesetter-in.js';
import { layoutStudySheet, type StudySheetContent } from './layout-study-sheet.js';

/** Everything a study sheet's PDF is made from. */
export interface StudySheetInput extends StudySheetContent {
  /** the part for engraving, as `engravingCopy` of the room `score` makes it */
  readonly musicXml: string;
  /** lays the part out; without it that is done here */
  readonly engrave?: (musicXml: string) => Promise<EngravedPart | null>;
  /** goes into the file instead of the clock */
  readonly creationDate: Date;
}

/**
 * Draws the sheet a player studies before playing. Bars that cannot be engraved are told in words alone.
 *
 * @param input the plan, the part as the teacher wants it, the part for engraving, language, paper and date
 * @returns a tagged PDF with embedded faces; the same input gives the same bytes
 *
 * Source: ISO 32000-1; ISO 14289-1.
 */
export async function drawStudySheet(input: StudySheetInput): Promise<Uint8Array> {
  const typesetter = typesetterIn(input.language);
  const { engrave = engravePart } = input;
  const part = await engrave(input.musicXml);
  const drawing = layoutStudySheet(input, typesetter, (from, to, width) =>
    part === null ? null : engraveExcerpt(part, typesetter, from, to, width),
  );
  return drawPdf(drawing, input.creationDate);
}
