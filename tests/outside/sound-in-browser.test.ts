/// <reference lib="dom" />
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, type TestContext } from 'vitest';
import { median } from '../../src/base/index.js';
import { encodeSound } from '../../src/encode/index.js';
import { browserContext, closeBrowser } from './browser.js';

const RATE_HZ = 44_100;
const SECONDS = 25.3;
/** A tone that rises evenly: its pitch tells the time. */
const FROM_HZ = 300;
const HZ_A_SECOND = 100;
/** Of what is heard after seeking, once what the browser changes the rate by has run in. */
const READ_SECONDS = 0.08;
const SKIPPED_SECONDS = 0.01;

let folder = '';
let server: Server;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'sound-'));
  const samples = Float32Array.from({ length: Math.round(RATE_HZ * SECONDS) }, (_, n) => {
    const t = n / RATE_HZ;
    return 0.5 * Math.sin(2 * Math.PI * (FROM_HZ * t + (HZ_A_SECOND * t * t) / 2));
  });
  writeFileSync(join(folder, 'sound.webm'), encodeSound({ samples, sampleRateHz: RATE_HZ }).bytes);
  writeFileSync(
    join(folder, 'page.html'),
    '<!DOCTYPE html><title>Sound</title><button>Play</button><audio src="sound.webm" preload="auto"></audio>',
  );
  server = createServer((request, response) => {
    const name = request.url === '/page.html' ? 'page.html' : 'sound.webm';
    const bytes = readFileSync(join(folder, name));
    // Source: RFC 9110, section 14: what plays asks for ranges.
    const [, from = '0'] = /bytes=(\d+)-/.exec(request.headers.range ?? '') ?? [];
    const type = name === 'page.html' ? 'text/html' : 'audio/webm';
    const range = { 'content-range': `bytes ${from}-${bytes.length - 1}/${bytes.length}`, 'accept-ranges': 'bytes' };
    response.writeHead(request.headers.range === undefined ? 200 : 206, { 'content-type': type, ...range });
    response.end(bytes.subarray(Number(from)));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});

afterAll(async () => {
  await closeBrowser();
  server.close();
  rmSync(folder, { recursive: true });
});

async function opened<T>(context: TestContext, place: string, look: (page: Page) => Promise<T>): Promise<T> {
  const browser = await browserContext(context);
  try {
    const page = await browser.newPage();
    await page.goto(place);
    return await look(page);
  } finally {
    await browser.close();
  }
}

describe('the sound of a take in a browser', () => {
  it('has its length, and can be sought in, when it is opened from the disk', async (context) => {
    await opened(context, pathToFileURL(join(folder, 'page.html')).href, async (page) => {
      const found = await page.evaluate(async () => {
        const audio = document.querySelector('audio')!;
        if (audio.readyState < 1) await new Promise((resolve) => audio.addEventListener('loadedmetadata', resolve));
        const { duration } = audio;
        audio.currentTime = 20.123;
        await new Promise((resolve) => audio.addEventListener('seeked', resolve));
        return { duration, at: audio.currentTime, to: audio.seekable.end(0) };
      });
      expect(found.duration).toBeCloseTo(SECONDS, 2);
      expect(found.at).toBeCloseTo(20.123, 3);
      expect(found.to).toBeCloseTo(SECONDS, 2);
    });
  });

  // The pitch of what sounds says which moment it is: 100 Hz are a second. A busy machine drops sound now and then, so what is
  // read is short, and the middle of five readings counts.
  it('sounds from the very place that was sought', async (context) => {
    const { port } = server.address() as AddressInfo;
    await opened(context, `http://127.0.0.1:${port}/page.html`, async (page) => {
      await page.click('button');
      for (const at of [0, 3.01, 11.517, 19.98]) {
        const errors: number[] = [];
        for (let reading = 0; reading < 5; reading++) {
          const { samples: heard, rateHz } = await page.evaluate(heardFrom, at);
          const samples = heard.slice(SKIPPED_SECONDS * rateHz, (SKIPPED_SECONDS + READ_SECONDS) * rateHz);
          const middle = at + SKIPPED_SECONDS + samples.length / 2 / rateHz;
          errors.push(Math.abs((frequencyOf(samples, rateHz) - FROM_HZ) / HZ_A_SECOND - middle));
        }
        expect(median(errors)).toBeLessThan(0.01);
      }
    });
  });
});

/** In the page: seeks, plays, and takes down the first 0.2 seconds that come out. */
async function heardFrom(at: number): Promise<{ samples: number[]; rateHz: number }> {
  const kept = window as unknown as { graph?: { audio: AudioContext; tap: ScriptProcessorNode } };
  const element = document.querySelector('audio')!;
  if (kept.graph === undefined) {
    const audio = new AudioContext();
    const tap = audio.createScriptProcessor(4096, 1, 1);
    audio.createMediaElementSource(element).connect(tap);
    tap.connect(audio.destination);
    kept.graph = { audio, tap };
    await audio.resume();
  }
  const { audio, tap } = kept.graph;
  const quiet = (): Promise<unknown> => new Promise((resolve) => setTimeout(resolve, 120));
  element.pause();
  await quiet();
  element.currentTime = at;
  await new Promise((resolve) => element.addEventListener('seeked', resolve, { once: true }));
  await quiet();
  const samples: number[] = [];
  const heard = new Promise<void>((resolve) => {
    tap.onaudioprocess = ({ inputBuffer }) => {
      const piece = inputBuffer.getChannelData(0);
      const first = samples.length > 0 ? 0 : piece.findIndex((x) => Math.abs(x) > 0.01);
      if (first >= 0) samples.push(...piece.subarray(first));
      if (samples.length > 0.2 * audio.sampleRate) resolve();
    };
  });
  await element.play();
  await heard;
  tap.onaudioprocess = null;
  element.pause();
  return { samples, rateHz: audio.sampleRate };
}

/** Mean frequency: upward crossings of zero over the time between the first and the last of them. */
function frequencyOf(samples: readonly number[], rateHz: number): number {
  const crossings: number[] = [];
  for (let i = 1; i < samples.length; i++) {
    const [before, after] = [samples[i - 1]!, samples[i]!];
    if (before < 0 && after >= 0) crossings.push(i - 1 + before / (before - after));
  }
  return ((crossings.length - 1) * rateHz) / (crossings.at(-1)! - crossings[0]!);
}
