/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { bar, errorsIn, hash, roomForTests, sounding } from './open-room.js';

const room = roomForTests();

describe('a player', () => {
  /** Frequencies of the oscillators that begin, and when they do. */
  const listened = () => {
    const began: [number, number][] = [];
    Object.assign(window, { began });
    const Own = OscillatorNode;
    Object.assign(window, {
      OscillatorNode: class extends Own {
        override start(when = 0) {
          began.push([this.frequency.value, when]);
          super.start(when);
        }
      },
    });
  };
  const began = (page: Page) => page.evaluate(() => (window as unknown as { began: [number, number][] }).began);

  it('hears the bars as they are written: the part’s pitches at the part’s times, with a click when it is wanted', async (context) => {
    await room.opened(
      context,
      async (page, told) => {
        await bar(page, 1).click();
        await page.keyboard.press('Escape');
        await page.locator('#written').click();
        await expect.poll(() => page.locator('.wide .playhead[visibility=visible]').count()).toBe(1);
        await expect.poll(async () => (await began(page)).length).toBe(4);
        await page.keyboard.press('Escape');
        const notes = await began(page);
        // G4 A4 B4 C5 in twelve equal steps from A4 = 440 Hz; 120 quarters a minute
        expect(notes.map(([hz]) => Math.round(hz * 100) / 100)).toEqual([392, 440, 493.88, 523.25]);
        for (let i = 1; i < 4; i++) expect(notes[i]![1] - notes[i - 1]![1]).toBeCloseTo(0.5, 2);
        await page.locator('#click').check();
        await page.locator('#written').click();
        await expect.poll(async () => (await began(page)).length).toBe(12);
        expect(errorsIn(told)).toEqual([]);
      },
      { before: listened },
    );
  });

  it('hears them written, then played, and then is counted in and left alone', async (context) => {
    await room.opened(
      context,
      async (page) => {
        await bar(page, 1).click();
        await page.keyboard.press('Escape');
        await page.locator('#in-turn').click();
        expect(await page.locator('#said').textContent()).toBe('As written: Bar 1');
        await expect.poll(async () => (await sounding(page))?.file, { timeout: 8000 }).toBe('2026-03-02_Ada.wav');
        await expect.poll(() => page.locator('#said').textContent(), { timeout: 8000 }).toBe('Your turn: Bar 1');
        expect(await sounding(page)).toBeNull();
        await expect.poll(() => page.locator('.wide .playhead[visibility=visible]').count(), { timeout: 8000 }).toBe(1);
        const clicks = (await began(page)).slice(4);
        // common practice: a bar is counted in; nothing but clicks sounds
        expect(clicks.length).toBeGreaterThanOrEqual(4);
        for (const [hz] of clicks) expect(hz).toBeGreaterThan(1000);
      },
      { before: listened },
    );
  });

  it('reads what was found, and hears its place', async (context) => {
    await room.opened(context, async (page) => {
      const finding = page.locator('article', { hasText: 'Another note was heard.' });
      expect(await finding.isVisible()).toBe(true);
      await finding.getByRole('button', { name: 'Hear bar 1, beat 3' }).click();
      await expect.poll(() => sounding(page)).not.toBeNull();
      expect(hash(page)).toBe('#bar=1&take=2026-03-02_Ada');
      expect(await page.locator('.wide .marks path').count()).toBeGreaterThan(1);
      await page.locator('#take').selectOption({ label: 'Ben, 2 March 2026' });
      expect(await finding.isVisible()).toBe(false);
      expect(await page.locator('.wide .marks path').count()).toBe(0);
    });
  });
});
