import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { goodTake, SHORT_PART } from './short-part.js';
import { everyFile, lines, put, type Running, startTakesheet } from './takesheet.js';

/** It takes many minutes, so it runs only when it is asked for: `npm run drill`. */
const wanted = process.env.LONG_DRILL !== undefined;
const TAKES = Number(process.env.LONG_DRILL ?? 0) > 1 ? Number(process.env.LONG_DRILL) : 500;
const KILLS = 20;
/** Takes of their own sound; the others are these with another gain, so that no two files are alike. */
const SOUNDS = 20;
const GAIN_AT = 44;

vi.setConfig({ testTimeout: 3_600_000, hookTimeout: 600_000 });

let root = '';
const words = (out: string): string[] => [
  'review',
  '--score',
  'part.musicxml',
  '--out',
  out,
  'takes',
  '--jobs',
  '2',
  '--json-only',
];

function softer(wav: Uint8Array, decibels: number): Uint8Array {
  const bytes = wav.slice();
  const view = new DataView(bytes.buffer);
  const gain = 10 ** (-decibels / 20);
  for (let at = GAIN_AT; at + 1 < bytes.length; at += 2)
    view.setInt16(at, Math.round(view.getInt16(at, true) * gain), true);
  return bytes;
}

/** Resident memory of a process in MB, looked at until it ends. Source: proc(5), VmRSS. */
async function memoryOf(run: Running): Promise<number[]> {
  const seen: number[] = [];
  const watch = setInterval(() => {
    try {
      const kilobytes = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${run.process.pid}/status`, 'utf8'))?.[1];
      if (kilobytes !== undefined) seen.push(Number(kilobytes) / 1024);
    } catch {
      // It has ended since.
    }
  }, 200);
  try {
    await run.ended;
  } finally {
    clearInterval(watch);
  }
  return seen;
}

describe.runIf(wanted)(`${TAKES} takes`, () => {
  beforeAll(() => {
    root = mkdtempSync(join(tmpdir(), 'long-drill-'));
    put(root, { 'part.musicxml': SHORT_PART });
    const sounds = Array.from({ length: SOUNDS }, (_, i) =>
      goodTake({ seed: i + 1, tempoFactor: 1.5, sampleRateHz: 11025 }),
    );
    for (let i = 0; i < TAKES; i += 1) {
      const sound = sounds[i % SOUNDS] as Uint8Array;
      put(join(root, 'takes'), { [`take ${i}.wav`]: softer(sound, Math.floor(i / SOUNDS) / 4) });
    }
  });

  afterAll(() => {
    rmSync(root, { recursive: true });
  });

  it('are reviewed in flat memory', async () => {
    const run = startTakesheet(root, ...words('undisturbed'));
    const began = performance.now();
    const seen = await memoryOf(run);
    expect((await run.ended).status).toBe(0);
    const quarter = Math.floor(seen.length / 4);
    const peaks = [0, 1, 2, 3].map((i) => Math.round(Math.max(...seen.slice(i * quarter, (i + 1) * quarter))));
    console.info(
      `${TAKES} takes in ${Math.round((performance.now() - began) / 1000)} s; peak MB by quarter of the time: ${peaks}`,
    );
    expect(peaks[3]).toBeLessThan(1.25 * (peaks[1] ?? 0));
  });

  it(`killed ${KILLS} times at points drawn by lot, and gone on with: the same bytes`, async () => {
    const [lots = []] = fc.sample(
      fc.array(fc.tuple(fc.nat(TAKES / KILLS), fc.nat(300)), { minLength: KILLS, maxLength: KILLS }),
      { numRuns: 1, seed: 20260302 },
    );
    let killed = 0;
    for (const [more, ms] of lots) {
      const run = startTakesheet(root, ...words('killed'));
      const before =
        killed === 0
          ? 0
          : Object.keys(everyFile(join(root, 'killed'))).filter((file) => file.startsWith('records/')).length;
      await run.hasSaid(before + more);
      await new Promise((resolve) => setTimeout(resolve, ms));
      if (run.process.kill('SIGKILL')) killed += 1;
      await run.ended;
    }
    const last = startTakesheet(root, ...words('killed'));
    const { status, stderr } = await last.ended;
    const kept = lines(stderr).filter((line) => line.endsWith('as before')).length;
    console.info(`killed ${killed} times; ${kept} results of ${TAKES} were kept by the last run`);
    expect(status).toBe(0);
    expect(killed).toBe(KILLS);
    expect(everyFile(join(root, 'killed'))).toEqual(everyFile(join(root, 'undisturbed')));
  });
});
