/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { RoomTake } from '../../../src/report/index.js';
import { writeRoom } from '../../helpers/listening-room.js';
import { bar, errorsIn, PLAYED, roomForTests, sounding } from './open-room.js';

const room = roomForTests();

describe('a room of several parts', () => {
  it('shows the part of the take chosen, in boxes where it cannot be engraved, and keeps the sound of one that has none', async (context) => {
    const folder = mkdtempSync(join(tmpdir(), 'takesheet-parts-'));
    const [short] = room.input.parts as [(typeof room.input.parts)[number]];
    const [ada, , ben, cy] = PLAYED.map(({ take }) => take) as [RoomTake, RoomTake, RoomTake, RoomTake];
    const other = { ...ben, result: { ...ben.result, score: { ...ben.result.score, file: 'other.musicxml' } } };
    const poor = { ...cy, result: { ...cy.result, outcome: 'not-this-score' as const, findings: [] } };
    const parts = [short, { ...short, file: 'other.musicxml', engraved: null }];
    try {
      writeRoom(folder, { ...room.input, parts, takes: [ada, other, poor] }, PLAYED);
      await room.opened(
        context,
        async (page, told) => {
          expect(await page.locator('#part-0').isVisible()).toBe(true);
          expect(await page.locator('#part-1').isVisible()).toBe(false);
          await page.locator('#take').selectOption({ label: 'Ben, 2 March 2026' });
          expect(await page.locator('#part-0').isVisible()).toBe(false);
          await bar(page, 5).click();
          await expect.poll(async () => (await sounding(page))?.file).toBe('2026-03-02_Ben.wav');
          await expect.poll(() => page.locator('#part-1 .wide .playhead[visibility=visible]').count()).toBe(1);
          await page.locator('#take').selectOption({ label: 'Cy, 2 March 2026' });
          expect(await page.getByText('This take does not fit the part').isVisible()).toBe(true);
          expect(await page.locator('audio[controls]:visible').count()).toBe(1);
          expect(errorsIn(told)).toEqual([]);
        },
        { url: pathToFileURL(join(folder, 'index.html')).href },
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('sixty takes', () => {
  it('are there at once, and stepping through all of them takes no more memory', async (context) => {
    const folder = mkdtempSync(join(tmpdir(), 'takesheet-sixty-'));
    const takes = Array.from({ length: 60 }, (_, i) => {
      const { take } = PLAYED[i % 3]!;
      return {
        ...take,
        name: `take ${i}`,
        result: { ...take.result, take: { ...take.result.take, player: `Player ${i}` } },
      };
    });
    try {
      writeRoom(folder, { ...room.input, takes }, PLAYED.slice(0, 3));
      await room.opened(
        context,
        async (page, told) => {
          const paint = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0]?.startTime);
          // a second is meant; a busy machine is given five
          expect(paint).toBeLessThan(5000);
          const session = await page.context().newCDPSession(page);
          const heap = async (): Promise<number> => {
            await session.send('HeapProfiler.collectGarbage');
            return (await session.send('Runtime.getHeapUsage')).usedSize;
          };
          await bar(page, 1).click();
          const after: number[] = [];
          for (let i = 1; i <= 60; i++) {
            await page.keyboard.press('ArrowDown');
            await expect.poll(() => page.locator('#where').textContent()).toContain(`Player ${i % 60},`);
            if (i === 12 || i === 60) after.push(await heap());
          }
          await expect.poll(() => sounding(page)).not.toBeNull();
          expect(await page.locator('audio').count()).toBe(2);
          expect(after[1]! - after[0]!).toBeLessThan(2_000_000);
          expect(errorsIn(told)).toEqual([]);
        },
        { url: pathToFileURL(join(folder, 'index.html')).href },
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
