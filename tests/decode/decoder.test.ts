import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Decoder } from '../../src/decode/apart/decoder.js';
import { decoderHere } from './decoder-here.js';

const project = join(import.meta.dirname, '../..');
const knock = new Uint8Array(readFileSync(join(project, 'fixtures/takes/knock/knock.flac')));
/** 0.8 s of 8 kHz, see fixtures/ORIGINS.md. */
const KNOCK_FRAMES = 6400;

const used: Decoder[] = [];
afterEach(() => {
  for (const decoder of used.splice(0)) decoder.close();
});

function decoder(...options: Parameters<typeof decoderHere>): Decoder {
  const made = decoderHere(...options);
  used.push(made);
  return made;
}

const framesOf = async (by: Decoder): Promise<number> => (await by.decode(knock)).source.frames;

/** Whether a process has ended; what has ended and was not asked how stays in the table as `Z` (POSIX ps). */
async function ended(processId: number): Promise<boolean> {
  for (let tries = 0; tries < 200; tries++) {
    const { stdout } = spawnSync('ps', ['-o', 'stat=', '-p', String(processId)], { encoding: 'utf8' });
    if (stdout.trim() === '' || stdout.startsWith('Z')) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return false;
}

describe('the process that decodes', () => {
  it('is started by the first file and lives on for the next', async () => {
    const by = decoder();
    expect(by.processId).toBeNull();
    expect(await framesOf(by)).toBe(KNOCK_FRAMES);
    const first = by.processId;
    expect(first).toBeGreaterThan(0);
    expect(await framesOf(by)).toBe(KNOCK_FRAMES);
    expect(by.processId).toBe(first);
  });

  it('lives on after a file that cannot be read', async () => {
    const by = decoder();
    await framesOf(by);
    const first = by.processId;
    await expect(by.decode(knock.slice(0, 50))).rejects.toMatchObject({ code: 'recording-damaged' });
    expect(await framesOf(by)).toBe(KNOCK_FRAMES);
    expect(by.processId).toBe(first);
  });

  it('takes files one after the other when they are given at once', async () => {
    const by = decoder();
    expect(await Promise.all([framesOf(by), framesOf(by), framesOf(by)])).toEqual(Array(3).fill(KNOCK_FRAMES));
  });

  it('costs one file when it breaks down, and is replaced', async () => {
    const by = decoder();
    const lost = by.decode(knock);
    await vi.waitFor(() => expect(by.processId).not.toBeNull());
    const first = by.processId as number;
    process.kill(first, 'SIGABRT');
    await expect(lost).rejects.toMatchObject({
      code: 'decoder-died',
      fault: { code: 'decoder-died', facts: { format: 'flac' } },
    });
    expect(await framesOf(by)).toBe(KNOCK_FRAMES);
    expect(by.processId).not.toBe(first);
  });

  it('is replaced when it ended while it waited', async () => {
    const by = decoder();
    await framesOf(by);
    const first = by.processId as number;
    process.kill(first, 'SIGKILL');
    await vi.waitFor(() => expect(by.processId).toBeNull(), { timeout: 10_000 });
    expect(await framesOf(by)).toBe(KNOCK_FRAMES);
  });

  it('is ended when a file takes too long', async () => {
    const by = decoder({ seconds: 0.001 });
    await expect(by.decode(knock)).rejects.toMatchObject({ code: 'decoder-too-slow' });
  });

  it('is ended when a file needs too much memory', async () => {
    // The engine alone needs more than 20 MB. It is looked at now and then: a short file may be done in between.
    const by = decoder({ megabytes: 20 });
    const again = async (): Promise<never> => {
      for (;;) await by.decode(knock);
    };
    await expect(again()).rejects.toMatchObject({ code: 'decoder-too-large' });
  });

  it('ends with the thread that wanted it', async () => {
    const door = JSON.stringify(join(project, 'dist/decode/apart/decoder.js'));
    const file = JSON.stringify(join(project, 'fixtures/takes/knock/knock.flac'));
    const thread = new Worker(
      `const { parentPort } = require('node:worker_threads');
       import(${door}).then(async ({ Decoder }) => {
         const decoder = new Decoder();
         await decoder.decode(new Uint8Array(require('node:fs').readFileSync(${file})));
         parentPort.postMessage(decoder.processId);
         setInterval(() => {}, 1000);
       });`,
      { eval: true },
    );
    const [processId] = (await once(thread, 'message')) as [number];
    await thread.terminate();
    expect(await ended(processId)).toBe(true);
  });

  it('does not keep the program from ending', () => {
    const program = `
      const { Decoder } = await import('./dist/decode/apart/decoder.js');
      const { readFileSync } = await import('node:fs');
      const sound = await new Decoder().decode(new Uint8Array(readFileSync('fixtures/takes/knock/knock.flac')));
      console.log(sound.source.frames);`;
    const words = ['--input-type=module', '--eval', program];
    const { stdout, status } = spawnSync(process.execPath, words, { cwd: project, encoding: 'utf8', timeout: 50_000 });
    expect([stdout.trim(), status]).toEqual([String(KNOCK_FRAMES), 0]);
  });

  // What the system's loader has loaded is told by the report of Node.js.
  it('is not there for a WAV file, nor is anything native', () => {
    const program = `
      const { decodeTake } = await import('./dist/decode/index.js');
      const { readFileSync } = await import('node:fs');
      const take = await decodeTake(new Uint8Array(readFileSync('fixtures/takes/sine-24-bit.wav')));
      const { sharedObjects, workers } = process.report.getReport();
      const found = sharedObjects.filter((file) => /\\.node$|asound/.test(file));
      const kinds = process.getActiveResourcesInfo().filter((kind) => kind.startsWith('Process'));
      console.log(JSON.stringify({ length: take.samples.length > 0, found, kinds, workers: workers.length }));`;
    const words = ['--input-type=module', '--eval', program];
    const { stdout } = spawnSync(process.execPath, words, { cwd: project, encoding: 'utf8', timeout: 50_000 });
    expect(JSON.parse(stdout)).toEqual({ length: true, found: [], kinds: [], workers: 0 });
  });
});
