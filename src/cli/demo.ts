import { join } from 'node:path';
import { runProgress, tryToWrite, writeWhole } from '../batch/index.js';
import { encodeWav } from '../decode/index.js';
import { demoSection, performTake, readDemoScore } from '../demo/index.js';
import type { PaperSize } from '../page/index.js';
import type { Tool } from '../review/index.js';
import { readPart } from '../score/index.js';
import { review } from './review.js';
import { sayLine } from './say-line.js';
import type { Streams } from './streams.js';

/** What the demo is asked to do. */
export interface DemoRequest {
  readonly tool: Tool;
  readonly folder: string;
  readonly jobs: number;
  readonly paper: PaperSize;
}

/**
 * The command `demo`: writes an invented étude and takes of it, and reviews them as anybody's takes are reviewed.
 *
 * @param request where to write, and how
 * @param streams where results and messages go
 * @returns the exit status of the review
 * @throws InputError `cannot-write` when the folder cannot be written to
 */
export async function demo({ tool, folder, jobs, paper }: DemoRequest, streams: Streams): Promise<number> {
  const scorePath = join(folder, 'etude', 'etude.musicxml');
  const takes = join(folder, 'takes');
  const outFolder = join(folder, 'sheets');
  const bytes = readDemoScore();
  tryToWrite(folder);
  writeWhole(scorePath, bytes);
  const part = readPart(bytes);
  for (const { fileName, date, plan } of demoSection()) {
    const { samples, sampleRateHz } = performTake(part, plan);
    writeWhole(join(takes, date, fileName), encodeWav(samples, sampleRateHz));
  }
  sayLine(streams.stderr, `wrote an invented étude and its takes to ${folder}`);
  const status = await review({ tool, scorePath, inputs: [takes], outFolder, jsonOnly: false, jobs, paper }, streams);
  await runProgress({ tool, inputs: [outFolder], out: outFolder, format: 'pdf', paper });
  streams.stderr.write(
    `look at ${join(outFolder, 'section.pdf')}, at the weeks in ${join(outFolder, 'progress.pdf')} and at the players' pages in ${join(outFolder, 'takes')}\n`,
  );
  return status;
}
