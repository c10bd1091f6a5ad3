/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readMarks } from '../../../src/batch/standing/read-marks.js';
import { bar, errorsIn, hash, roomForTests, sounding } from './open-room.js';

const room = roomForTests();

const focused = (page: Page) =>
  page.evaluate(() => {
    const { activeElement: at } = document;
    return at?.getAttribute('aria-label') ?? at?.id ?? '';
  });

describe('a director, by the keyboard alone', () => {
  it('hears the same bars of take after take, matched in loudness, marks them and saves the marks for the panel', async (context) => {
    await room.opened(context, async (page, told) => {
      await page.locator('input[value=take]').focus();
      await page.keyboard.press('ArrowRight');
      expect(await page.locator('#way-round').isVisible()).toBe(true);
      await bar(page, 1).focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Shift+ArrowRight');
      expect(await focused(page)).toMatch(/^Bar 3/);
      await page.keyboard.press('Enter');
      const volumes = new Map<string, number>();
      for (const name of ['2026-03-02_Ada', '2026-03-09_Ada', '2026-03-02_Ben', '2026-03-02_Cy']) {
        await expect.poll(async () => (await sounding(page))?.file).toBe(`${name}.wav`);
        expect(hash(page)).toBe(`#bar=2&to=3&take=${name}`);
        volumes.set(name, (await sounding(page))?.volume ?? 0);
        await page.keyboard.press('ArrowDown');
      }
      // Ben plays as Ada does, 6 dB softer, and is not made louder
      const softer = 20 * Math.log10(volumes.get('2026-03-02_Ada')! / volumes.get('2026-03-02_Ben')!);
      expect(Math.abs(softer + 6)).toBeLessThan(0.5);
      for (const volume of volumes.values()) expect(volume).toBeLessThanOrEqual(1);
      await expect.poll(async () => (await sounding(page))?.file).toBe('2026-03-02_Ada.wav');
      await page.keyboard.press('ArrowUp');
      await expect.poll(async () => (await sounding(page))?.file).toBe('2026-03-02_Cy.wav');
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('m');
      expect(await focused(page)).toBe('mark');
      await page.keyboard.type('17,5');
      await page.keyboard.press('Enter');
      await expect.poll(async () => (await sounding(page))?.file).toBe('2026-03-09_Ada.wav');
      await page.keyboard.type('12');
      await page.keyboard.press('Tab');
      await page.keyboard.type('better, "warm"');
      await page.locator('#judge').focus();
      await page.keyboard.type('North');
      await page.locator('#save').focus();
      const saved = page.waitForEvent('download');
      await page.keyboard.press('Enter');
      const table = readFileSync(await (await saved).path());
      expect(readMarks(table)).toEqual([
        { take: '2026-03-02_Ada', judge: 'North', criterion: 'notes', points: 17.5 },
        { take: '2026-03-09_Ada', judge: 'North', criterion: 'notes', points: 12 },
      ]);
      await page.reload();
      await page.locator('input[value=round]').check();
      expect(await page.locator('#mark').inputValue()).toBe('12');
      expect(await page.locator('#word').inputValue()).toBe('better, "warm"');
      await page.locator('#forget').click();
      expect(await page.locator('#mark').inputValue()).toBe('12');
      await page.locator('#forget').click();
      expect(await page.locator('#mark').inputValue()).toBe('');
      expect(await page.evaluate(() => localStorage.length)).toBe(0);
      expect(errorsIn(told)).toEqual([]);
    });
  });

  it('hears them as they were recorded when that is chosen', async (context) => {
    await room.opened(context, async (page) => {
      await page.locator('input[value=round]').check();
      await page.locator('#loudness').selectOption('recorded');
      await bar(page, 2).click();
      await expect.poll(async () => (await sounding(page))?.volume).toBe(1);
      expect(await page.locator('#softer').textContent()).toBe('As recorded');
    });
  });

  it('by lot, is told nobody’s name until it is asked for', async (context) => {
    await room.opened(context, async (page) => {
      await page.locator('input[value=round]').check();
      await page.locator('#order').selectOption('lot');
      const shown = async () => `${await page.locator('body').ariaSnapshot()} ${await page.title()}`;
      const names = /Ada|Ben|Cy|March/;
      expect(await shown()).toContain('Take 4');
      for (let i = 0; i < 4; i++) {
        await page.locator('#next').click();
        expect(await shown()).not.toMatch(names);
        expect(hash(page)).not.toMatch(names);
      }
      // whoever looks for names where they stand is not let through
      expect(await page.locator('input[value=days]').isDisabled()).toBe(true);
      await page.locator('input[value=take]').check();
      expect(await shown()).not.toMatch(names);
      await page.locator('input[value=round]').check();
      await page.locator('#reveal').click();
      expect(await shown()).toMatch(names);
    });
  });

  it('keeps marks for as long as the page is open where the browser keeps nothing, and says so', async (context) => {
    await room.opened(
      context,
      async (page, told) => {
        await page.locator('input[value=round]').check();
        await page.locator('#mark').fill('9');
        expect(await page.locator('#marks-said').textContent()).toContain('keeps nothing');
        expect(await page.locator('#round li').first().textContent()).toContain('9');
        await page.locator('#mark').fill('nine');
        expect(await page.locator('#mark').getAttribute('aria-invalid')).toBe('true');
        expect(errorsIn(told)).toEqual([]);
      },
      {
        before: () => {
          Object.defineProperty(window, 'localStorage', {
            get: () => {
              throw new Error('not here');
            },
          });
        },
      },
    );
  });
});
