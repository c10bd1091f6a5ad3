import { basename, join } from 'node:path';
import type { Brief } from '../brief/index.js';
import type { PaperSize } from '../report/index.js';
import type { Part } from '../score/index.js';
import { failureOf } from './failure-of.js';
import { readWhole } from './read-whole.js';
import { reviewTake } from './review-take.js';
import { toJson } from './to-json.js';
import type { NamedTake, TakeEnd, Tool } from './types.js';
import { writeWhole } from './write-whole.js';

/** Half an hour of 192 kHz stereo 24 bit is 2 GB; a take is a few minutes. */
const LONGEST_TAKE_BYTES = 2 ** 30;

/** What all takes of a run share; it can be sent to a worker. */
export interface SharedWork {
  readonly tool: Tool;
  /** as the teacher wants it, when there is a brief */
  readonly part: Part;
  /** null without one */
  readonly brief?: Brief | null;
  /** the part for engraving, without it pages have no excerpts */
  readonly musicXml?: string | null;
  readonly score: { readonly file: string; readonly sha256: string };
  readonly outFolder: string;
  readonly jsonOnly: boolean;
  readonly paper: PaperSize;
}

/**
 * Reads one take from disk, reviews it and writes its files. Never throws: whatever goes wrong is the take's own end.
 *
 * @param take which file, and the name to write under
 * @param work what all takes share
 * @returns the result, or the failure
 *
 * Source: definition.
 */
export async function reviewFile(take: NamedTake, work: SharedWork): Promise<TakeEnd> {
  const { name } = take;
  try {
    const bytes = readWhole(take.path, LONGEST_TAKE_BYTES);
    const { result, pdf } = await reviewTake({ ...work, bytes, file: basename(take.path), withPdf: !work.jsonOnly });
    const report = `takes/${name}.${pdf === null ? 'json' : 'pdf'}`;
    if (pdf !== null) writeWhole(join(work.outFolder, report), pdf);
    writeWhole(join(work.outFolder, 'takes', `${name}.json`), toJson(result));
    return { name, result, report };
  } catch (error) {
    return { name, failure: failureOf(take.file, error) };
  }
}
