// Makes reports/sample/ anew from the built-in demo: some of its real output, and pictures of it for the README.
// Needs pdftoppm (poppler-utils) and chromium. Run it as `npm run sample`.
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const root = fileURLToPath(new URL('..', import.meta.url));
const sample = join(root, 'reports', 'sample');
const work = mkdtempSync(join(tmpdir(), 'takesheet-sample-'));
const takesheet = (...words) => execFileSync(process.execPath, [join(root, 'bin', 'takesheet.js'), ...words]);

takesheet('demo', '--out', work);
takesheet('study', join(work, 'etude', 'etude.musicxml'), '--out', join(work, 'etude.study.pdf'));

rmSync(sample, { recursive: true, force: true });
mkdirSync(sample, { recursive: true });
const pages = { 'take.pdf': 'sheets/takes/2026-03-02_Mina-Okafor.pdf', 'section.pdf': 'sheets/section.pdf', 'progress.pdf': 'sheets/progress.pdf', 'study.pdf': 'etude.study.pdf' };
for (const [name, from] of Object.entries(pages)) {
  copyFileSync(join(work, from), join(sample, name));
  const picture = join(sample, name.replace('.pdf', ''));
  execFileSync('pdftoppm', ['-r', '64', '-png', '-f', '1', '-l', '1', '-singlefile', join(sample, name), picture]);
}
copyFileSync(join(work, 'sheets/takes/2026-03-02_Mina-Okafor.json'), join(sample, 'take.json'));
copyFileSync(join(work, 'sheets/section.csv'), join(sample, 'section.csv'));
await pictureOfTheRoom(join(sample, 'room.png'));
rmSync(work, { recursive: true, force: true });

/** The listening room of the first week, with one player's take chosen at a bar that has something to hear. */
async function pictureOfTheRoom(file) {
  const heard = join(work, 'heard');
  const part = join(work, 'etude', 'etude.musicxml');
  takesheet('review', '--score', part, '--out', heard, join(work, 'takes', '2026-03-02'), '--listen');
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  const page = await browser.newPage({ viewport: { width: 1120, height: 940 } });
  const room = pathToFileURL(join(heard, 'listen', 'index.html')).href;
  await page.goto(`${room}#bar=11&take=2026-03-02_Mina-Okafor`);
  await page.screenshot({ path: file });
  await browser.close();
}

console.log(readdirSync(sample).join('\n'));
