import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { goodTake, SHORT_PART } from './short-part.js';
import { put, readJson, takesheet } from './takesheet.js';

interface Result {
  readonly take: { readonly coding?: Readonly<Record<string, unknown>> };
  readonly recording: {
    readonly cautions: readonly string[];
    readonly cautionCodes: readonly { readonly code: string; readonly facts?: unknown }[];
  };
}

const knock = (file: string): Uint8Array =>
  new Uint8Array(readFileSync(join(import.meta.dirname, '../../fixtures/takes/knock', file)));

let root = '';
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'other-formats-'));
  put(root, { 'part.musicxml': SHORT_PART });
  // A name that tells nothing: what a file is, its bytes say.
  put(join(root, 'takes'), {
    'film.webm': knock('knock.webm'),
    'old-phone': knock('knock.amr'),
    'plain.wav': goodTake(),
    'thin.flac': knock('knock.flac'),
  });
  const asked = ['review', '--score', 'part.musicxml', '--out', 'out', 'takes', '--json-only', '--language', 'de'];
  // Knocks are no playing: three of the four could not be reviewed, as the exit status says.
  expect(takesheet(root, ...asked).status).toBe(1);
});
afterAll(() => rmSync(root, { recursive: true }));

const result = (name: string) => readJson<Result>(join(root, `out/takes/${name}.json`));

// What each file holds, see fixtures/ORIGINS.md.
describe('results of recordings that are no WAV files', () => {
  it('say what the file is', () => {
    expect(result('film').take.coding).toMatchObject({
      container: 'matroska',
      codec: 'opus',
      lossy: true,
      speech: false,
    });
    expect(result('old-phone').take.coding).toMatchObject({
      container: 'amr',
      codec: 'amr',
      lossy: true,
      speech: true,
    });
    expect(result('thin').take.coding).toMatchObject({
      container: 'flac',
      codec: 'flac',
      lossy: false,
      bandwidthHz: 4000,
    });
    expect(result('plain').take).not.toHaveProperty('coding');
  });

  it('warn of what is kept as on the telephone', () => {
    const { cautionCodes, cautions } = result('old-phone').recording;
    expect(cautionCodes[0]).toEqual({ code: 'speech-coding' });
    expect(cautions[0]).toMatch(/^Die Aufnahme ist so gespeichert, wie es für Sprache am Telefon gedacht ist: /);
    const thin = result('thin').recording;
    expect(thin.cautionCodes[0]).toEqual({ code: 'narrow-band', facts: { kilohertz: 4 } });
    expect(thin.cautions[0]).toMatch(/^Die Aufnahme enthält nichts über 4,0 kHz, wie ein Telefongespräch: /);
    const codes = result('film').recording.cautionCodes.map(({ code }) => code);
    expect(codes).not.toContain('speech-coding');
    expect(codes).not.toContain('narrow-band');
  });
});
