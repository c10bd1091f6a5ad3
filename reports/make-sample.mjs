// Makes reports/sample/ anew from the built-in demo: some of its real output, and pictures of it for the README.
// Needs pdftoppm (poppler-utils). Run it as `npm run sample`.
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

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
rmSync(work, { recursive: true, force: true });
console.log(readdirSync(sample).join('\n'));
