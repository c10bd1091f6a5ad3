import { readdirSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';
import { byCodePoint, InputError } from '../../base/index.js';
import { applyBrief } from '../../brief/index.js';
import type { Etude } from '../../review/index.js';
import { engravingCopy } from '../../score/index.js';
import { diskFault } from '../disk/disk-fault.js';
import { readBriefFile } from '../disk/read-brief-file.js';
import { readScore } from '../disk/read-score.js';
import type { ReviewRequest } from '../types.js';

const SCORE_ENDINGS = new Set(['.musicxml', '.xml', '.mxl']);
const BRIEF_ENDING = '.brief.yaml';

/** Where an étude stands: its score, and the brief that goes with it. */
export interface EtudeFiles {
  readonly score: string;
  /** undefined without one */
  readonly brief: string | undefined;
}

type Asked = Pick<ReviewRequest, 'scorePath' | 'scoresFolder' | 'briefPath'>;

/**
 * Reads what takes are to be reviewed against.
 *
 * @param request which score or folder, and the brief
 * @returns the études in code point order of their files; one for a single score
 * @throws InputError naming the file when one of them cannot be read
 */
export function readEtudes(request: Asked & Pick<ReviewRequest, 'jsonOnly'>): Etude[] {
  return etudeFiles(request).map((files) => readEtude(files, request.jsonOnly));
}

/**
 * Finds what takes are to be reviewed against: one score, or every score in a folder (not in the folders below it). In a
 * folder, `<score>.brief.yaml` beside a score is its brief.
 *
 * @param request which score or folder, and the brief
 * @returns the files in code point order of the scores; one for a single score
 * @throws InputError naming the folder when it cannot be read
 */
export function etudeFiles({ scorePath, scoresFolder, briefPath }: Asked): EtudeFiles[] {
  if ((scorePath === undefined) === (scoresFolder === undefined)) {
    throw new InputError('no-score-given');
  }
  if (scorePath !== undefined) return [{ score: scorePath, brief: briefPath }];
  if (briefPath !== undefined) {
    throw new InputError('brief-beside-scores', { ending: BRIEF_ENDING });
  }
  const folder = scoresFolder ?? '';
  const names = namesIn(folder);
  const scores = names.filter((name) => !name.startsWith('.') && SCORE_ENDINGS.has(extname(name).toLowerCase()));
  if (scores.length === 0) {
    throw new InputError('scores-folder-empty').about(folder);
  }
  return scores.sort(byCodePoint).map((name) => {
    const brief = briefOf(name);
    return { score: join(folder, name), brief: names.includes(brief) ? join(folder, brief) : undefined };
  });
}

/**
 * @param score name of a score's file
 * @returns name of the file beside it that is its brief
 */
export function briefOf(score: string): string {
  return `${score.slice(0, -extname(score).length)}${BRIEF_ENDING}`;
}

function readEtude({ score: scorePath, brief: briefPath }: EtudeFiles, jsonOnly: boolean): Etude {
  const { bytes, part, score } = readScore(scorePath);
  const musicXml = jsonOnly ? null : engravingCopy(bytes);
  if (briefPath === undefined) return { part, brief: null, score, musicXml };
  const brief = readBriefFile(briefPath, part);
  return { part: applyBrief(part, brief), brief, score, musicXml };
}

function namesIn(folder: string): string[] {
  try {
    if (!statSync(folder).isDirectory()) throw new InputError('scores-no-folder');
    return readdirSync(folder);
  } catch (error) {
    const known = error instanceof InputError ? error : diskFault(error);
    throw known === null ? error : known.about(folder);
  }
}
