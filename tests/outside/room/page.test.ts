/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { pathToFileURL } from 'node:url';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { bar, errorsIn, PLAYED, roomForTests, sounding } from './open-room.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const room = roomForTests();

describe('the page', () => {
  it('opens at the bars and the take of its address', async (context) => {
    await room.opened(
      context,
      async (page) => {
        expect(await page.locator('#where').textContent()).toBe('Bars 2–5, time 2 · Ben, 2 March 2026');
        await page.evaluate(() => {
          location.hash = '#bar=1&take=2026-03-02_Cy';
        });
        await expect.poll(() => page.locator('#where').textContent()).toBe('Bar 1 · Cy, 2 March 2026');
      },
      { hash: '#bar=2&to=5&pass=2&take=2026-03-02_Ben' },
    );
  });

  // Rules of axe-core 4 for WCAG 2.0 to 2.2, A and AA, and its best practices.
  it('gives a checker of accessibility nothing to complain about, in every way to listen and on a telephone', async (context) => {
    const told = async (page: Page): Promise<string[]> => {
      const { violations, passes }: AxeResults = await page.evaluate(
        `${AXE}; axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })`,
      );
      expect(passes.length).toBeGreaterThan(20);
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
    };
    await room.opened(context, async (page) => {
      await page.locator('details').evaluate((one: HTMLDetailsElement) => {
        one.open = true;
      });
      for (const way of ['take', 'round', 'days']) {
        await page.locator(`input[value=${way}]`).check();
        expect(await told(page)).toEqual([]);
      }
      await bar(page, 1).click();
      expect(await told(page)).toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await told(page)).toEqual([]);
      await page.evaluate(() => {
        for (const button of document.querySelectorAll('button')) {
          button.textContent = '';
          button.removeAttribute('aria-label');
        }
      });
      expect((await told(page)).join()).toContain('button-name');
    });
  });

  // WCAG 2.2, 1.4.10 and 2.5.5; common practice of music printing: a staff below 4 mm is for scores that are only followed
  // (a CSS pixel is 1/96 inch).
  it('fits a telephone: bars wrap, nothing scrolls sideways, targets are 44 px, the staff can be read', async (context) => {
    await room.opened(
      context,
      async (page) => {
        for (const way of ['take', 'round', 'days']) {
          await page.locator(`input[value=${way}]`).check();
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
          const small = await page.evaluate(() =>
            [...document.querySelectorAll<HTMLElement>('button, select, input, summary, a')].flatMap((one) => {
              const target = one.closest('label.tick') ?? one;
              const { width, height } = target.getBoundingClientRect();
              const isSeen = target.checkVisibility() && width > 0;
              return isSeen && (width < 44 || height < 44)
                ? [`${one.outerHTML.slice(0, 90)} ${width} × ${height}`]
                : [];
            }),
          );
          expect(small).toEqual([]);
        }
        const staff = await page.evaluate(() => {
          const lines = [...document.querySelectorAll('.narrow .line svg')];
          return lines.map((one) => (one.querySelector('path') as SVGPathElement).getBoundingClientRect().height);
        });
        expect(staff.length).toBeGreaterThan(1);
        for (const height of staff) expect((height * 25.4) / 96).toBeGreaterThan(4);
        await bar(page, 5).click();
        await expect.poll(() => sounding(page)).not.toBeNull();
      },
      { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
    );
  });

  it('asks for nothing but its own sounds, and cannot', async (context) => {
    const hits: string[] = [];
    const server = createServer((request, response) => {
      hits.push(request.url ?? '');
      response.setHeader('access-control-allow-origin', '*').end('x');
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    try {
      await room.opened(context, async (page, told) => {
        await bar(page, 1).click();
        await expect.poll(() => sounding(page)).not.toBeNull();
        const folder = pathToFileURL(`${room.folder}/`).href;
        const asked = told.filter((url) => !url.startsWith('data:font/woff;'));
        expect(asked.map((url) => url.replace(folder, ''))).toEqual(['index.html', 'sound/2026-03-02_Ada.wav']);
        await page.evaluate(async (url) => {
          document.body.append(Object.assign(new Image(), { src: `${url}/image` }));
          document.body.append(Object.assign(document.createElement('script'), { src: `${url}/script.js` }));
          document.body.append(
            Object.assign(document.createElement('audio'), { src: `${url}/a.wav`, preload: 'auto' }),
          );
          document.body.append(Object.assign(document.createElement('iframe'), { src: `${url}/frame` }));
          await fetch(`${url}/fetch`).catch(() => {});
          await new Promise((done) => setTimeout(done, 300));
        }, address);
        expect(hits).toEqual([]);
        // the trap works: the policy tells of each
        expect(errorsIn(told).filter((line) => line.startsWith('error: policy:')).length).toBeGreaterThanOrEqual(5);
      });
    } finally {
      server.close();
    }
  });

  it('can be read and heard without scripts', async (context) => {
    await room.opened(
      context,
      async (page) => {
        expect(await page.locator('audio[controls]:visible').count()).toBe(PLAYED.length);
        expect(await page.getByText('Another note was heard.').isVisible()).toBe(true);
        expect(await page.locator('button:visible, select:visible').count()).toBe(0);
        expect(await page.getByText('Your browser does not let it').isVisible()).toBe(true);
        expect(await page.locator('.wide .line svg').first().isVisible()).toBe(true);
      },
      { javaScriptEnabled: false },
    );
  });

  it('prints the part and what was found, and no controls', async (context) => {
    await room.opened(context, async (page) => {
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('button:visible, select:visible, input:visible').count()).toBe(0);
      expect(await page.locator('.wide .line svg').first().isVisible()).toBe(true);
      expect(await page.getByText('Another note was heard.').isVisible()).toBe(true);
    });
  });

  it('lets bars be added and taken away without a keyboard and without drawing', async (context) => {
    await room.opened(context, async (page) => {
      const where = page.locator('#where');
      for (const [id, bars] of [
        ['more', 'Bars 1–2'],
        ['more', 'Bars 1–3'],
        ['fewer', 'Bars 1–2'],
        ['fewer', 'Bar 1'],
        ['fewer', 'Bar 1'],
      ] as const) {
        await page.locator(`#${id}`).click();
        expect(await where.textContent()).toBe(`${bars} · Ada, 2 March 2026`);
      }
      await bar(page, 1).hover();
      await page.mouse.down();
      await bar(page, 2).hover();
      await bar(page, 3).hover();
      await page.mouse.up();
      expect(await where.textContent()).toBe('Bars 1–3 · Ada, 2 March 2026');
      await expect.poll(() => sounding(page)).not.toBeNull();
    });
  });

  it('glides only where movement is welcome', async (context) => {
    /** How pages scroll, and how many places the line takes within a bar of four notes. */
    const moves = async (page: Page) => {
      await bar(page, 1).click();
      return page.evaluate(async () => {
        const seen = new Set<string>();
        for (let i = 0; i < 40; i++) {
          const line = document.querySelector('.wide .playhead[visibility=visible]');
          if (line !== null) seen.add(line.getAttribute('x1') ?? '');
          await new Promise((done) => setTimeout(done, 40));
        }
        return { scrolls: getComputedStyle(document.documentElement).scrollBehavior, places: seen.size };
      });
    };
    for (const [reducedMotion, scrolls] of [
      ['reduce', 'auto'],
      ['no-preference', 'smooth'],
    ] as const) {
      await room.opened(
        context,
        async (page) => {
          const seen = await moves(page);
          expect(seen.scrolls).toBe(scrolls);
          if (reducedMotion === 'reduce') expect(seen.places).toBeLessThanOrEqual(4);
          else expect(seen.places).toBeGreaterThan(8);
        },
        { reducedMotion },
      );
    }
  });
});
