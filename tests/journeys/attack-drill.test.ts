import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, truncateSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { attributes, note, scoreOf } from '../score/score-of.js';
import { goodTake, SHORT_PART } from './short-part.js';
import { everyFile, lines, put, readJson, takesheet } from './takesheet.js';

/**
 * What costs most of all that can be given to the program. Each takes minutes, so they run only when they are asked for:
 * `npm run drill`. It must end, and tell what became of each.
 */
const wanted = process.env.LONG_DRILL !== undefined;

vi.setConfig({ testTimeout: 3_600_000, hookTimeout: 3_600_000 });

let root = '';
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const plainPart = (bars: number): Uint8Array =>
  scoreOf(
    Array.from(
      { length: bars },
      (_, i) => (i === 0 ? attributes(1) : '') + ['C5', 'E5', 'D5', 'G5'].map((pitch) => note(pitch, 1)).join(''),
    ),
  );

describe.runIf(wanted)('the costliest that can be given', () => {
  beforeAll(() => {
    root = mkdtempSync(join(tmpdir(), 'attack-drill-'));
    put(root, { 'part.musicxml': SHORT_PART });
  });

  afterAll(() => rmSync(root, { recursive: true }));

  // AIFF 1.3: two channels of 16 bit at 44,100; RFC 4867: no packet of AMR is larger than 32 bytes. Both hold nothing else.
  it('an AIFF and an AMR file of two hours are refused', () => {
    const head = new DataView(new ArrayBuffer(54));
    const bytes = new Uint8Array(head.buffer);
    const data = 2 * 3600 * 176_400;
    bytes.set(bytesOf('FORM\0\0\0\0AIFFCOMM'));
    for (const [at, size] of [
      [4, data + 46],
      [16, 18],
      [42, data + 8],
    ] as const)
      head.setUint32(at, size);
    for (const [at, value] of [
      [20, 2],
      [26, 16],
      [28, 16_398],
      [30, 44_100],
    ] as const)
      head.setUint16(at, value);
    bytes.set(bytesOf('SSND'), 38);
    put(root, { 'hours/ada.aiff': bytes, 'hours/ben.amr': bytesOf('#!AMR\n'), 'hours/cleo.wav': goodTake() });
    truncateSync(join(root, 'hours/ada.aiff'), data + 54);
    truncateSync(join(root, 'hours/ben.amr'), 6 + 2 * 180_000 * 32);
    const { status, stderr } = takesheet(root, 'review', '--score', 'part.musicxml', '--out', 'hours-out', 'hours');
    expect([status, stderr]).toEqual([1, expect.stringContaining('120 minutes')]);
    for (const name of ['ada', 'ben'])
      expect(lines(stderr).filter((line) => line.includes(name) && line.includes('120 minutes'))).toHaveLength(1);
    expect(['ada', 'ben', 'cleo'].map((name) => existsSync(join(root, `hours-out/takes/${name}.pdf`)))).toEqual([
      ...[false, false, true],
    ]);
  });

  it('a part of 100,000 notes is refused as a request', () => {
    put(root, { 'huge.musicxml': plainPart(25_000), 'short/ada.wav': goodTake() });
    const { status, stderr } = takesheet(root, 'review', '--score', 'huge.musicxml', '--out', 'huge-out', 'short');
    expect(status).toBe(2);
    expect(stderr).toContain('huge.musicxml: the part has more than 20000 notes');
    expect(existsSync(join(root, 'huge-out/takes/ada.json'))).toBe(false);
  });

  it('200 names of 250 letters are tried by a pattern of many fields', () => {
    const names = Array.from({ length: 200 }, (_, i) => `${'_'.repeat(246)}${1000 + i}.wav`.slice(-250));
    put(join(root, 'names'), Object.fromEntries(names.map((name) => [name, new Uint8Array()])));
    const pattern = '{player}_{instrument}_{part}_{skip}_{date}';
    const words = ['review', '--score', 'part.musicxml', '--names', pattern, '--out', 'names-out', 'names'];
    const { status, stderr } = takesheet(root, ...words);
    console.info(`200 names: ${stderr.slice(0, 300)}`);
    expect(status).toBe(1);
    expect(stderr).not.toMatch(/fault of the program|bug/i);
  });

  it('a kept result with 30,000 findings is made anew, and is not counted in what changed over weeks', () => {
    put(root, { 'one/2026-03-02_Ada.wav': goodTake() });
    const words = ['review', '--score', 'part.musicxml', '--json-only', '--out', 'kept', 'one'];
    expect(takesheet(root, ...words).status).toBe(0);
    const before = everyFile(join(root, 'kept'));
    const path = 'kept/takes/2026-03-02_Ada.json';
    const result = readJson<{ findings: unknown[] }>(join(root, path));
    const findings = Array.from({ length: 30_000 }, () => ({ ...(result.findings[0] ?? {}) }));
    put(root, { [path]: JSON.stringify({ ...result, findings }) });
    mkdirSync(join(root, 'weeks'));
    cpSync(join(root, 'kept'), join(root, 'weeks/1'), { recursive: true });
    const progress = takesheet(root, 'progress', 'weeks', '--out', 'weeks-out', '--format', 'json');
    console.info(`30,000 findings: status ${progress.status}, ${progress.stderr.slice(0, 300)}`);
    expect(progress.stderr).toContain('2026-03-02_Ada');
    expect(takesheet(root, ...words).status).toBe(0);
    expect(everyFile(join(root, 'kept'))).toEqual(before);
  });
});
