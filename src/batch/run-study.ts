import { existsSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { InputError, type Language } from '../base/index.js';
import { applyBrief, type Brief, defaultBrief, writeStarterBrief } from '../brief/index.js';
import { type EngravedPart, engraveInThread } from '../engrave/index.js';
import type { PaperSize } from '../page/index.js';
import { drawStudySheet } from '../report/index.js';
import { toJson, toStudyDocument } from '../result/index.js';
import type { Tool } from '../review/index.js';
import { pageDate } from '../review/index.js';
import { engravingCopy, type Part } from '../score/index.js';
import { studyPlan } from '../study/index.js';
import { namingFile } from './disk/naming-file.js';
import { readBriefFile } from './disk/read-brief-file.js';
import { type ReadScore, readScore } from './disk/read-score.js';
import { writeWhole } from './disk/write-whole.js';

/** What a study sheet is asked for. Paths are as the user gave them. */
export interface StudyRequest {
  readonly tool: Tool;
  readonly scorePath: string;
  /** the teacher's brief; a starter is written there when the file does not exist */
  readonly briefPath?: string | undefined;
  /** file or folder; beside the score when it is not given */
  readonly out?: string | undefined;
  readonly format: 'pdf' | 'json';
  readonly paper: PaperSize;
  /** of the sheet and of what the data tell in sentences */
  readonly language: Language;
}

/** What was written. */
export interface StudySummary {
  readonly sheetPath: string;
  /** what became of the brief's file, null when none was named */
  readonly brief: 'read' | 'starter-written' | null;
  /** files of scores whose bars could not be engraved: the sheet shows none of them */
  readonly notEngraved: readonly string[];
}

/**
 * Writes the study sheet of a score, and a starter brief where one is wanted and missing.
 *
 * @param request the score, the brief, where to write and how
 * @returns what was written
 * @throws InputError when the request is wrong; then nothing has been written
 */
export async function runStudy(request: StudyRequest): Promise<StudySummary> {
  const { briefPath } = request;
  const read = readScore(request.scorePath);
  const starter = briefPath !== undefined && !existsSync(briefPath);
  const brief = briefPath === undefined || starter ? defaultBrief(read.part) : readBriefFile(briefPath, read.part);
  const sheetPath = placeOf(request);
  refuseSameFile(request, sheetPath);
  const notEngraved: string[] = [];
  const onNotEngraved = (): void => void notEngraved.push(read.score.file);
  const content = await contentOf(request, read, brief, onNotEngraved);
  if (starter) namingFile(briefPath, () => writeWhole(briefPath, writeStarterBrief(read.part)));
  try {
    namingFile(sheetPath, () => writeWhole(sheetPath, content));
  } catch (error) {
    if (starter) rmSync(briefPath, { force: true });
    throw error;
  }
  return { sheetPath, brief: briefPath === undefined ? null : starter ? 'starter-written' : 'read', notEngraved };
}

/** A name with the ending of the format is a file, any other a folder. */
function placeOf({ scorePath, out, format }: StudyRequest): string {
  const name = `${basename(scorePath, extname(scorePath))}.study.${format}`;
  if (out === undefined) return join(dirname(scorePath), name);
  const folder = existsSync(out) && statSync(out).isDirectory();
  return !folder && extname(out).toLowerCase() === `.${format}` ? out : join(out, name);
}

function refuseSameFile({ scorePath, briefPath }: StudyRequest, sheetPath: string): void {
  if (sheetPath !== scorePath && sheetPath !== briefPath) return;
  throw new InputError('sheet-over-source').about(sheetPath);
}

async function contentOf(
  request: StudyRequest,
  { bytes, part, score }: ReadScore,
  brief: Brief,
  onNotEngraved: () => void,
): Promise<Uint8Array | string> {
  const { tool, format, paper, language } = request;
  if (format === 'json') {
    const plan = studyPlan(part, brief);
    return toJson({ format: 'study-plan', version: 1, tool, score, ...toStudyDocument(plan, language) });
  }
  // Laying out takes longest, so it begins first.
  const musicXml = engravingCopy(bytes);
  const engraving = engraveInThread([musicXml]);
  const engrave = async (): Promise<EngravedPart | null> => {
    const [laidOut = null] = await engraving.parts;
    if (laidOut === null) onNotEngraved();
    return laidOut;
  };
  try {
    const plan = studyPlan(part, brief);
    const wanted: Part = applyBrief(part, brief);
    return await drawStudySheet({ plan, part: wanted, musicXml, engrave, paper, language, creationDate: pageDate([]) });
  } finally {
    await engraving.stop();
  }
}
