/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, type TestContext } from 'vitest';
import type { RoomInput } from '../../../src/report/index.js';
import { readPart } from '../../../src/score/index.js';
import { type PlayedTake, playedTake, ROOM_PART, shortPart, writeRoom } from '../../helpers/listening-room.js';
import { findingAt } from '../../helpers/marked-excerpts.js';
import { browserContext, closeBrowser } from '../browser.js';

/** The short part of the rooms: performed 1 2 3 2 3 4 5 6, half a second a quarter. */
export const PART = readPart(ROOM_PART);

/** Ada on two days, slower on the second; Ben plays as Ada did, 6 dB softer; Cy leaves out bars 5 and 6. */
export const PLAYED: readonly PlayedTake[] = [
  playedTake(PART, { player: 'Ada', date: '2026-03-02', name: '2026-03-02_Ada' }, { timingScatterSeconds: 0.02 }, [
    findingAt(PART, 'wrong-note', 2, { text: 'Another note was heard.' }),
    findingAt(PART, 'late-entry', 16),
  ]),
  playedTake(PART, { player: 'Ada', date: '2026-03-09', name: '2026-03-09_Ada' }, { tempoFactor: 0.8, seed: 9 }, [
    findingAt(PART, 'late-entry', 16),
    findingAt(PART, 'wrong-note', 4),
  ]),
  playedTake(
    PART,
    { player: 'Ben', date: '2026-03-02', name: '2026-03-02_Ben' },
    { timingScatterSeconds: 0.02, gainDb: -6 },
  ),
  playedTake(
    PART,
    { player: 'Cy', date: '2026-03-02', name: '2026-03-02_Cy' },
    { seed: 7, faults: [{ kind: 'skip', from: { bar: '5', beat: 1 }, to: PART.notes.length - 1 }] },
  ),
];

/** A room of these takes, and the folder it is written in. */
export interface OpenRoom {
  /** filled before the tests run */
  folder: string;
  input: RoomInput;
  /** opens the room from the disk and closes it again; whatever goes wrong in it is told as `error: …` */
  readonly opened: <T>(
    context: TestContext,
    look: (page: Page, told: readonly string[]) => Promise<T>,
    options?: Opening,
  ) => Promise<T>;
}

/** How a room is opened. */
export interface Opening extends BrowserContextOptions {
  /** put behind the address */
  readonly hash?: string;
  /** another address than that of the file */
  readonly url?: string;
  /** run in the page before its own scripts */
  readonly before?: () => void;
}

/** Makes a room for the tests of a file, and takes it away after them. */
export function roomForTests(): OpenRoom {
  const room: OpenRoom = {
    folder: '',
    input: { language: 'en', blind: false, parts: [], takes: [] },
    opened: async (context, look, { hash = '', url, before, ...options } = {}) => {
      const browser = await browserContext(context, { viewport: { width: 1280, height: 900 }, ...options });
      try {
        const page = await browser.newPage();
        const told: string[] = [];
        page.on('request', (request) => told.push(request.url()));
        page.on('pageerror', (error) => told.push(`error: ${error.message}`));
        page.on('console', (line) => {
          if (line.type() === 'error') told.push(`error: ${line.text()}`);
        });
        await page.addInitScript(() => {
          document.addEventListener('securitypolicyviolation', (event) => {
            console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
          });
        });
        if (before !== undefined) await page.addInitScript(before);
        await page.goto((url ?? pathToFileURL(join(room.folder, 'index.html')).href) + hash);
        return await look(page, told);
      } finally {
        await browser.close();
      }
    },
  };
  beforeAll(async () => {
    room.folder = mkdtempSync(join(tmpdir(), 'takesheet-room-'));
    room.input = { ...room.input, parts: [await shortPart()], takes: PLAYED.map(({ take }) => take) };
    writeRoom(room.folder, room.input, PLAYED);
  });
  afterAll(async () => {
    await closeBrowser();
    rmSync(room.folder, { recursive: true });
  });
  return room;
}

/** What went wrong in a page. */
export const errorsIn = (told: readonly string[]): string[] => told.filter((line) => line.startsWith('error:'));

/** The button of a printed bar, as it is named. */
export const bar = (page: Page, number: number) => page.locator('.bars button:visible').nth(number - 1);

/** What sounds: the file, its clock and its speed; null in silence. */
export function sounding(page: Page) {
  return page.evaluate(() => {
    const audio = [...document.querySelectorAll('audio')].find(({ paused }) => !paused);
    if (audio === undefined) return null;
    const { currentTime, playbackRate, preservesPitch, volume, src } = audio;
    return { at: currentTime, playbackRate, preservesPitch, volume, file: src.split('/').at(-1) ?? '' };
  });
}

/** What the address of a page says behind `#`. */
export const hash = (page: Page): string => decodeURIComponent(new URL(page.url()).hash);
