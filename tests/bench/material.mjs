import { linkSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encodeWav } from '../../dist/decode/index.js';
import { performTake, readDemoScore } from '../../dist/demo/index.js';
import { readPart } from '../../dist/score/index.js';

/**
 * A score of so many bars: the étude of the demo, begun again as often as it takes.
 *
 * @param {number} bars how many
 * @returns {Uint8Array} MusicXML
 */
export function scoreOfBars(bars) {
  const xml = new TextDecoder().decode(readDemoScore());
  const measures = xml.match(/<measure\b[\s\S]*?<\/measure>/g);
  const first = xml.indexOf(measures[0]);
  const last = xml.lastIndexOf('</measure>') + '</measure>'.length;
  const all = Array.from({ length: bars }, (_, i) =>
    measures[i % measures.length].replace(/ number="[^"]*"/, ` number="${i + 1}"`),
  );
  return new TextEncoder().encode(xml.slice(0, first) + all.join('\n') + xml.slice(last));
}

/**
 * A score and a take of it that lasts about so long, played by the demo's synthesiser.
 *
 * @param {number} seconds how long the take should last
 * @param {object} plan how it is played
 * @returns {{ score: Uint8Array, wav: Uint8Array, seconds: number }} the score, the take and how long it came out
 */
export function takeOfLength(seconds, plan = {}) {
  const whole = readPart(readDemoScore());
  const last = whole.bars.at(-1);
  const quarters = last.startQuarters + last.lengthQuarters;
  const secondsABar = (quarters * 60) / whole.tempos[0].quarterBpm / whole.bars.length;
  const score = scoreOfBars(Math.max(2, Math.round((seconds - 1.7) / secondsABar)));
  const { samples, sampleRateHz } = performTake(readPart(score), {
    ...{ seed: 5, voice: 'clarinet', sampleRateHz: 44100 },
    ...plan,
  });
  return { score, wav: encodeWav(samples, sampleRateHz), seconds: samples.length / sampleRateHz };
}

/**
 * Writes a score and so many takes of it; ten are different, the others are the same files under other names.
 *
 * @param {string} folder where to write
 * @param {number} count how many takes
 * @param {number} seconds how long each lasts
 * @param {(i: number) => object[]} faultsOf what goes wrong in each of the different ones
 * @returns {{ scorePath: string, takes: string, seconds: number }} where they are, and how long they last together
 */
export function folderOfTakes(folder, count, seconds, faultsOf = () => []) {
  const takes = join(folder, 'takes');
  mkdirSync(takes, { recursive: true });
  const scorePath = join(folder, 'score.musicxml');
  const different = Array.from({ length: Math.min(10, count) }, (_, i) =>
    takeOfLength(seconds, { seed: i + 1, faults: faultsOf(i) }),
  );
  writeFileSync(scorePath, different[0].score);
  let total = 0;
  for (let i = 0; i < count; i++) {
    const path = join(takes, `player-${String(i + 1).padStart(3, '0')}.wav`);
    if (i < different.length) writeFileSync(path, different[i].wav);
    else linkSync(join(takes, `player-${String((i % different.length) + 1).padStart(3, '0')}.wav`), path);
    total += different[i % different.length].seconds;
  }
  return { scorePath, takes, seconds: total };
}
