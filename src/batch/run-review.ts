import { InputError } from '../base/index.js';
import { applyBrief } from '../brief/index.js';
import { engravingCopy } from '../score/index.js';
import { byCodePoint } from './by-code-point.js';
import { findTakes } from './find-takes.js';
import { readBriefFile } from './read-brief-file.js';
import { readScore } from './read-score.js';
import { reviewAll } from './review-all.js';
import { nameTakes } from './take-names.js';
import { tryToWrite } from './try-to-write.js';
import type { NamedTake, ReviewProgress, ReviewRequest, ReviewSummary, TakeEnd, TakeFailure } from './types.js';
import { writeSection } from './write-section.js';

/**
 * Reviews every take against the part, writes each take's files and then the section's.
 *
 * @param request score, takes, where to write and how
 * @param onProgress told after each take, in the order in which they end
 * @returns how every take ended
 * @throws InputError when the request itself is wrong; then nothing has been written
 *
 * Source: definition.
 */
export async function runReview(
  request: ReviewRequest,
  onProgress: (progress: ReviewProgress) => void = () => {},
): Promise<ReviewSummary> {
  const { bytes, part: written, score } = readScore(request.scorePath);
  const brief = request.briefPath === undefined ? null : readBriefFile(request.briefPath, written);
  const part = brief === null ? written : applyBrief(written, brief);
  const { takes, failures: notTakes } = takesOf(request.inputs);
  tryToWrite(request.outFolder);
  const total = takes.length + notTakes.length;
  let done = 0;
  const onEnd = (end: TakeEnd): void => {
    done += 1;
    onProgress({ done, total, end });
  };
  const lost = notTakes.map((failure) => ({ name: failure.file, failure }));
  for (const end of lost) onEnd(end);
  const musicXml = request.jsonOnly ? null : engravingCopy(bytes);
  const work = { ...request, part, musicXml, score, brief };
  const ends = [...(await reviewAll(takes, work, request.jobs, onEnd)), ...lost];
  ends.sort((a, b) => byCodePoint(a.name, b.name));
  return { ends, failures: await writeSection(ends, work) };
}

function takesOf(inputs: readonly string[]): { takes: NamedTake[]; failures: readonly TakeFailure[] } {
  const { takes, failures } = findTakes(inputs);
  if (takes.length > 0 || failures.some((failure) => failure.code !== 'no-such-file')) {
    return { takes: nameTakes(takes).sort((a, b) => byCodePoint(a.name, b.name)), failures };
  }
  const reason = failures[0] === undefined ? 'no WAV file was found' : 'there is no such file or folder';
  throw new InputError('no-takes', `${inputs.join(', ')}: ${reason}; give WAV files, or a folder that holds some`);
}
