import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AxeResults } from 'axe-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawHandoutIndex } from '../../src/report/index.js';
import { browserContext, closeBrowser } from './browser.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'handout-page-'));
  for (const language of ['en', 'de'] as const) {
    const row = {
      player: 'Ada <Lindqvist> & Co.',
      piece: 'Étude: The Ferry',
      date: '2026-03-02',
      pages: 'players/Ada #1/a.pdf',
      listen: { file: 'players/Ada #1/listen/index.html', take: 'a & b #2' },
      found: { fix: 1, watch: 2 },
    };
    const rows = [
      row,
      { ...row, date: null, found: null },
      { ...row, player: 'محمد علي', listen: null },
      { ...row, player: '李明华' },
    ];
    const page = drawHandoutIndex({
      ...{ language, print: 'print.pdf', sheets: 3, mail: 'mail.csv', section: ['section.pdf', 'section-2.pdf'], rows },
    });
    writeFileSync(join(folder, `${language}.html`), page);
  }
});

afterAll(async () => {
  await closeBrowser();
  rmSync(folder, { recursive: true });
});

describe.each(['en', 'de'])('the page over what is handed out, in %s', (language) => {
  const place = () => pathToFileURL(join(folder, `${language}.html`)).href;

  // Rules of axe-core 4 for WCAG 2.0 to 2.2, A and AA, and its best practices.
  it.for([1000, 320])('has no fault that axe finds, %d pixels wide, and asks for nothing', async (width, context) => {
    const browser = await browserContext(context, { viewport: { width, height: 800 } });
    const page = await browser.newPage();
    const [asked, complaints]: [string[], string[]] = [[], []];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (message) => complaints.push(message.text()));
    await page.goto(place());
    const found = (await page.evaluate(
      `${AXE}; axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })`,
    )) as AxeResults;
    expect(found.violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([place()]);
    expect(complaints).toEqual([]);
    const overflow = await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');
    expect(overflow).toBe(0);
    await browser.close();
  });

  it('shows names as they are and leads to their files', async (context) => {
    const browser = await browserContext(context);
    const page = await browser.newPage();
    await page.goto(place());
    expect(await page.locator('tbody th').allTextContents()).toEqual([
      'Ada <Lindqvist> & Co.',
      'Ada <Lindqvist> & Co.',
      'محمد علي',
      '李明华',
    ]);
    expect(await page.evaluate("document.querySelector('tbody a').href")).toBe(
      pathToFileURL(join(folder, 'players/Ada #1/a.pdf')).href,
    );
    const room = new URL((await page.evaluate("document.querySelectorAll('tbody a')[1].href")) as string);
    expect(room.pathname).toBe(pathToFileURL(join(folder, 'players/Ada #1/listen/index.html')).pathname);
    // Source: application/x-www-form-urlencoded, URL Standard.
    expect(new URLSearchParams(room.hash.slice(1)).get('take')).toBe('a & b #2');
    await browser.close();
  });
});
