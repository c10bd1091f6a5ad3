/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { bar, errorsIn, PART, PLAYED, roomForTests, sounding } from './open-room.js';

const room = roomForTests();
const [ADA, ADA_LATER] = PLAYED as [(typeof PLAYED)[number], (typeof PLAYED)[number]];

/** When a note of the part was really played in a take, seconds. */
const onsetIn = ({ truth }: (typeof PLAYED)[number], index: number): number =>
  truth.find((note) => note.index === index)?.onsetSeconds ?? Number.NaN;

/** Place of the first note of a performed bar. */
const firstOf = (place: number): number => PART.notes.findIndex(({ onsetQuarters }) => onsetQuarters >= 4 * place);

/** Reads clocks for some time, every few milliseconds: which element plays, where it stands, where the line is. */
function watched(page: Page, ms: number) {
  return page.evaluate(
    (forMs) =>
      new Promise<{ now: number; playing: number; at: number; x: number | null }[]>((done) => {
        const start = performance.now();
        const seen: { now: number; playing: number; at: number; x: number | null }[] = [];
        const look = () => {
          const audios = [...document.querySelectorAll('audio')];
          const playing = audios.findIndex(({ paused }) => !paused);
          const line = document.querySelector('.wide .playhead[visibility=visible]')?.getBoundingClientRect();
          const x = line === undefined ? null : line.x + line.width / 2;
          seen.push({ now: performance.now(), playing, at: audios[playing]?.currentTime ?? 0, x });
          if (performance.now() - start < forMs) requestAnimationFrame(look);
          else done(seen);
        };
        look();
      }),
    ms,
  );
}

let server: Server | undefined;
afterEach(() => {
  server?.close();
  server = undefined;
});

/** Serves the folder as the plainest of servers does: whole files, and no ranges of them. */
async function served(): Promise<string> {
  const plain = createServer((request, response) => {
    const name = decodeURIComponent((request.url ?? '/').split(/[?#]/)[0] ?? '');
    try {
      const type = name.endsWith('.html') ? 'text/html; charset=utf-8' : 'audio/wav';
      response.setHeader('content-type', type).end(readFileSync(join(room.folder, name)));
    } catch {
      response.writeHead(404).end();
    }
  });
  server = plain;
  await new Promise<void>((done) => plain.listen(0, '127.0.0.1', done));
  return `http://127.0.0.1:${(plain.address() as AddressInfo).port}/index.html`;
}

describe('hearing bars', () => {
  it('begins at the bar that is clicked, and the sound really goes on, at the speed that is chosen', async (context) => {
    await room.opened(context, async (page, told) => {
      await bar(page, 5).click();
      await expect.poll(() => sounding(page)).not.toBeNull();
      const before = (await sounding(page))!;
      expect(before.file).toBe('2026-03-02_Ada.wav');
      expect(Math.abs(before.at - onsetIn(ADA, firstOf(6)))).toBeLessThan(0.4);
      for (const [key, rate] of [
        ['1', 1],
        ['2', 0.75],
        ['3', 0.5],
      ] as const) {
        await page.keyboard.press(key);
        await page.keyboard.press('Enter');
        await expect.poll(async () => (await sounding(page))?.playbackRate).toBe(rate);
        const seen = (await watched(page, 1200)).filter(({ playing }) => playing >= 0);
        // a busy machine takes its time to begin
        const [first, last] = [seen.find(({ now }) => now > seen[0]!.now + 300)!, seen.at(-1)!];
        const share = (last.at - first.at) / ((last.now - first.now) / 1000);
        expect(Math.abs(share - rate)).toBeLessThan(0.12);
        expect((await sounding(page))?.preservesPitch).toBe(true);
      }
      await page.keyboard.press('Escape');
      expect(await sounding(page)).toBeNull();
      expect(errorsIn(told)).toEqual([]);
    });
  });

  it('ends where the bars end, and not before', async (context) => {
    await room.opened(context, async (page) => {
      await bar(page, 1).click();
      const seen = (await watched(page, 3000)).filter(({ playing }) => playing >= 0);
      expect(seen[0]!.at).toBeGreaterThan(onsetIn(ADA, 0) - 0.2);
      expect(seen.at(-1)!.at).toBeGreaterThan(onsetIn(ADA, 4) - 0.1);
      expect(seen.at(-1)!.at).toBeLessThan(onsetIn(ADA, 4) + 0.1);
      expect(await sounding(page)).toBeNull();
    });
  });

  it('lets the line stand at the head of each note within 60 ms of when that note was played', async (context) => {
    await room.opened(context, async (page) => {
      const heads = await page.evaluate(headsOfFirstLine);
      // bars 1 and 2 stand in the first line, every note of their first time once
      const shown = PART.notes.filter(({ onsetQuarters }) => onsetQuarters < 8);
      const inLine = heads.slice(0, shown.length);
      await bar(page, 1).click();
      await page.keyboard.press('Escape');
      await bar(page, 2).click({ modifiers: ['Shift'] });
      const seen = (await watched(page, 4300)).filter(({ x, playing }) => x !== null && playing >= 0);
      for (const [i, x] of inLine.entries()) {
        const onset = onsetIn(ADA, shown[i]!.index);
        const reached = seen.find((one) => one.x! >= x - 0.6);
        expect(reached, `note ${i}`).toBeDefined();
        expect(Math.abs(reached!.at - onset), `note ${i}`).toBeLessThan(0.06);
      }
    });
  });

  it('closes a loop: the bar comes again and again, with nothing of another and hardly a gap', async (context) => {
    await room.opened(context, async (page) => {
      await bar(page, 1).click();
      await page.keyboard.press('l');
      const seen = (await watched(page, 5200)).filter(({ playing }) => playing >= 0);
      const [from, to] = [onsetIn(ADA, 0), onsetIn(ADA, 4)];
      for (const { at } of seen) {
        expect(at).toBeGreaterThan(from - 0.15);
        expect(at).toBeLessThan(to + 0.1);
      }
      const turns = seen.flatMap((one, i) => (i > 0 && one.at < seen[i - 1]!.at - 1 ? [i] : []));
      expect(turns.length).toBeGreaterThanOrEqual(2);
      for (const i of turns) {
        // until the clock moves again
        const again = seen.findIndex((one, k) => k > i && one.at > seen[i]!.at);
        expect(seen[again]!.now - seen[i - 1]!.now).toBeLessThan(300);
      }
    });
  });

  it('plays a repeated bar at the time that is chosen, and shows the curves of that time', async (context) => {
    await room.opened(context, async (page) => {
      await bar(page, 2).click();
      await expect.poll(async () => (await sounding(page))?.at ?? 0).toBeLessThan(onsetIn(ADA, firstOf(2)));
      expect(await bar(page, 2).getAttribute('aria-label')).toContain('played 2 times');
      await page.keyboard.press('p');
      await expect.poll(async () => (await sounding(page))?.at ?? 0).toBeGreaterThan(onsetIn(ADA, firstOf(3)) - 0.2);
      expect(await page.locator('#pass').textContent()).toBe('Time 2 of 2');
      expect(new URL(page.url()).hash).toBe('#bar=2&pass=2&take=2026-03-02_Ada');
      // bars 2 to 3 of that time are the fourth and fifth that are played
      await bar(page, 3).click({ modifiers: ['Shift'] });
      expect(await page.locator('#where').textContent()).toContain('Bars 2–3, time 2');
    });
  });

  it('says that a bar was not played, and plays nothing', async (context) => {
    await room.opened(
      context,
      async (page) => {
        expect(await bar(page, 5).getAttribute('aria-label')).toBe('Bar 5, not played');
        await bar(page, 5).click();
        await expect.poll(() => page.locator('#said').textContent()).toBe('Bar 5 was not played in this take.');
        expect(await sounding(page)).toBeNull();
      },
      { hash: '#take=2026-03-02_Cy' },
    );
  });

  it('begins in the middle of a sound, from a server that gives whole files alone, with the pitch kept', async (context) => {
    const url = await served();
    await room.opened(
      context,
      async (page, told) => {
        await page.keyboard.press('Escape');
        await bar(page, 6).click();
        await page.keyboard.press('3');
        await expect.poll(async () => (await sounding(page))?.at ?? 0).toBeGreaterThan(onsetIn(ADA, firstOf(7)) - 0.2);
        // bar 6 begins with D5: 587.3 Hz (twelve equal steps from A4 = 440 Hz)
        const hz = await page.evaluate(strongestHz);
        expect(Math.abs(1200 * Math.log2(hz / 587.33))).toBeLessThan(60);
        expect(told.every((line) => line.startsWith('http://127.0.0.1') || /^(blob|data):/.test(line))).toBe(true);
      },
      { url },
    );
  });
});

describe('two days', () => {
  it('change over within 100 ms at the same place in the music', async (context) => {
    await room.opened(context, async (page, told) => {
      await page.locator('input[value=days]').check();
      const secondsAQuarter = onsetIn(ADA, 1) - onsetIn(ADA, 0);
      // A busy machine only ever adds to a silence, so the shortest of some changes counts.
      const silences: number[] = [];
      while (silences.length < 8 && !silences.some((silenceMs) => silenceMs < 100)) {
        await bar(page, 1).click();
        await bar(page, 3).click({ modifiers: ['Shift'] });
        await expect.poll(async () => (await sounding(page))?.at ?? 0).toBeGreaterThan(0);
        await page.locator('#change').focus();
        const watching = watched(page, 2500);
        await page.waitForTimeout(900);
        await page.keyboard.press('Enter');
        const seen = await watching;
        const turn = seen.findIndex(
          (one, i) => i > 0 && one.playing >= 0 && seen[0]!.playing >= 0 && one.playing !== seen[0]!.playing,
        );
        expect(turn).toBeGreaterThan(0);
        const last = seen.slice(0, turn).findLast(({ playing }) => playing === seen[0]!.playing)!;
        const moves = seen.findIndex(
          (one, i) => i > turn && one.playing === seen[turn]!.playing && one.at > seen[turn]!.at,
        )!;
        // the room begins with the later day; places in the music by what was really played
        const [from, to] = silences.length % 2 === 0 ? [ADA_LATER, ADA] : [ADA, ADA_LATER];
        silences.push(seen[moves]!.now - last.now);
        const [before, after] = [quartersIn(from, last.at), quartersIn(to, seen[turn]!.at)];
        expect(Math.abs(after - before) * secondsAQuarter).toBeLessThan(0.1);
      }
      expect(Math.min(...silences)).toBeLessThan(100);
      expect(errorsIn(told)).toEqual([]);
    });
  });

  it('play by turns, and say what is gone, new and still there', async (context) => {
    await room.opened(context, async (page) => {
      await page.locator('input[value=days]').check();
      const lists = async (id: string) => page.locator(`#${id} li`).allTextContents();
      expect(await lists('gone')).toEqual(['Bar 1, beat 3: Another note was played']);
      expect(await lists('fresh')).toEqual(['Bar 2, beat 1: Another note was played']);
      expect(await lists('still')).toHaveLength(1);
      expect(await page.locator('#not-comparable').isHidden()).toBe(true);
      await bar(page, 1).click();
      await page.keyboard.press('Escape');
      await page.locator('#alternate').click();
      const files = new Set<string>();
      await expect
        .poll(
          async () => {
            files.add((await sounding(page))?.file ?? '');
            return files.has('2026-03-02_Ada.wav') && files.has('2026-03-09_Ada.wav');
          },
          { timeout: 8000 },
        )
        .toBe(true);
    });
  });
});

/** Where a take stands in the music, quarters, between the notes that were really played. */
function quartersIn(take: (typeof PLAYED)[number], seconds: number): number {
  const known = PART.notes.map(({ index, onsetQuarters }) => [onsetIn(take, index), onsetQuarters] as const);
  const i = Math.max(
    0,
    Math.min(
      known.length - 2,
      known.findLastIndex(([onset]) => onset <= seconds),
    ),
  );
  const [from, to] = [known[i]!, known[i + 1]!];
  return from[1] + ((seconds - from[0]) / (to[0] - from[0])) * (to[1] - from[1]);
}

/** Middles of the heads in the first line, from left to right, found by their outlines alone; runs in the page. */
function headsOfFirstLine(): number[] {
  const picture = document.querySelector('.wide .line svg') as SVGSVGElement;
  const staff = picture.querySelector('path')?.getBoundingClientRect();
  const space = (staff?.height ?? 0) / 4;
  const outlines = [...picture.querySelectorAll(':scope > path[fill="#1b1b1d"]:not([transform])')].flatMap((one) =>
    (one.getAttribute('d') ?? '').split(/(?=M)/).map((d) => {
      const alone = document.createElementNS('http://www.w3.org/2000/svg', 'path');
      alone.setAttribute('d', d);
      picture.append(alone);
      const box = alone.getBoundingClientRect();
      alone.remove();
      return box;
    }),
  );
  // SMuFL 1.4, metadata of Bravura: noteheadBlack and noteheadHalf are 1.18 staff spaces wide and 1 high
  return outlines
    .filter(
      ({ width, height }) => Math.abs(width - 1.18 * space) < 0.1 * space && Math.abs(height - space) < 0.1 * space,
    )
    .map(({ x, width }) => x + width / 2)
    .sort((a, b) => a - b);
}

/** The strongest partial of what sounds, Hz; runs in the page. */
async function strongestHz(): Promise<number> {
  const audio = [...document.querySelectorAll('audio')].find(({ paused }) => !paused) as HTMLAudioElement;
  const context = new AudioContext();
  const analyser = new AnalyserNode(context, { fftSize: 16_384 });
  context.createMediaElementSource(audio).connect(analyser).connect(context.destination);
  await new Promise((done) => setTimeout(done, 700));
  const levels = new Float32Array(analyser.frequencyBinCount);
  analyser.getFloatFrequencyData(levels);
  const strongest = levels.indexOf(Math.max(...levels.slice(20)));
  return (strongest * context.sampleRate) / analyser.fftSize;
}
