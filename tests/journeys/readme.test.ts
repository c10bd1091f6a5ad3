import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { goodTake, SHORT_PART } from './short-part.js';
import { everyFile, lines, PROJECT, put, takesheet } from './takesheet.js';

const readme = readFileSync(join(PROJECT, 'README.md'), 'utf8');
const commands = [...readme.matchAll(/```sh\n([\s\S]*?)```/g)]
  .flatMap((block) => lines(block[1] ?? ''))
  .flatMap((line) => line.split(' && '));
const ours = commands.filter((command) => command.startsWith('node bin/takesheet.js '));

let root = '';

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'readme-'));
  put(root, {
    'etude.musicxml': SHORT_PART,
    'parts/etude.musicxml': SHORT_PART,
    'takes/2026-03-02_Ada-Lindqvist.wav': goodTake(),
    'takes/week1/take7.wav': goodTake({ seed: 7 }),
    'marks.csv': 'take,judge,criterion,points\n2026-03-02_Ada-Lindqvist,Berg,notes,1\n',
    'roster.csv': /```csv\n([\s\S]*?)```/.exec(readme)?.[1] ?? '',
  });
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

describe('the examples of the README', () => {
  it('install and test with what npm knows, and otherwise run the program', () => {
    expect(ours.length).toBeGreaterThanOrEqual(4);
    expect(new Set(commands.filter((command) => !ours.includes(command)))).toEqual(new Set(['npm ci', 'npm test']));
  });

  it.each(ours)('%s', (command) => {
    const ended = takesheet(root, ...command.split(' ').slice(2));
    expect(ended.status).toBe(0);
    expect(ended.stdout).not.toBe('');
  });

  it('leave what the README promises', () => {
    const written = Object.keys(everyFile(root));
    for (const file of ['section.pdf', 'section.csv', 'section.json', 'takes/2026-03-02_Ada-Lindqvist.pdf']) {
      expect(written).toContain(`sheets/${file}`);
    }
    expect(written).toEqual(
      expect.arrayContaining(['etude.study.pdf', 'etude.brief.yaml', 'sheets-blind/blind-key.csv']),
    );
    expect(readFileSync(join(root, 'sheets', 'section.csv'), 'utf8')).not.toContain('failed');
    expect(written).toContain('sheets/progress.pdf');
    for (const file of [
      'index.html',
      'print.pdf',
      'mail.csv',
      'players/Ada Lindqvist/takes/2026-03-02_Ada-Lindqvist.pdf',
      'players/Ada Lindqvist/listen/index.html',
    ]) {
      expect(written).toContain(`sheets/handout/${file}`);
    }
    expect(written).toContain('sheets/listen/index.html');
    expect(written).toContain('sheets/listen/sound/2026-03-02_Ada-Lindqvist.webm');
    expect(written).toContain('sheets-points/standing.pdf');
    expect(written).toContain('sheets-points/panel-sheet.pdf');
    expect(written).toContain('reports/demo/sheets/progress.pdf');
    expect(written).toContain('reports/demo/sheets/section.pdf');
    expect(written).toContain('reports/demo/etude/etude.musicxml');
  });
});

describe('help', () => {
  it('shows every command and option of the README', () => {
    const help = ['study', 'review', 'section', 'handout', 'standing', 'progress', 'demo', 'schema']
      .map((command) => takesheet(root, command, '--help').stdout)
      .join('\n');
    const named = new Set(readme.match(/(?<=[\s`])--[a-z][a-z-]+/g));
    expect(named.size).toBeGreaterThan(4);
    for (const option of named) expect(help).toContain(option);
  });
});
