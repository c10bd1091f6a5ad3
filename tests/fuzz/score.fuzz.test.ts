import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { defaultBrief, readBrief, writeStarterBrief } from '../../src/brief/index.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';
import { studyPlan } from '../../src/study/index.js';
import { bytesOf } from '../score/score-of.js';
import { damagedBytes } from './damaged-bytes.js';
import { damagedXml } from './damaged-xml.js';
import { expectPlayable } from './expect-playable.js';
import { shareRead } from './how-much.js';
import { megabytesGrown, readOrRefuse } from './read-or-refuse.js';

const folder = join(import.meta.dirname, '../../fixtures/scores');
const files = [...readdirSync(folder), ...readdirSync(join(folder, 'compared')).map((file) => `compared/${file}`)];
const texts = files
  .filter((file) => /\.(musicxml|xml)$/.test(file))
  .map((file) => readFileSync(join(folder, file), 'utf8'));
const container = '<container><rootfiles><rootfile full-path="part.xml"/></rootfiles></container>';
const zips = texts.slice(0, 6).map((text, i) => {
  const named = i < 3 ? { 'META-INF/container.xml': bytesOf(container) } : {};
  return zipSync({ ...named, 'part.xml': bytesOf(text) }, { level: i % 2 === 0 ? 6 : 0 });
});

/** No two notes share a name of a place: a brief names places by printed bar, pass and beat. */
function placesAreClear({ notes }: Part): boolean {
  const names = notes.filter((note) => !note.grace).map(({ bar, pass, beat }) => `${bar} ${pass} ${beat.toFixed(1)}`);
  return new Set(names).size === names.length;
}

/** Reads a score and, when it can be read, does with it all that is done with scores before anyone plays. */
function expectPart(bytes: Uint8Array): boolean {
  const part = readOrRefuse(() => readPart(bytes));
  if (part === null) return false;
  expectPlayable(part);
  const brief = defaultBrief(part);
  expect(readOrRefuse(() => studyPlan(part, brief))).not.toBeNull();
  const again = readOrRefuse(() => readBrief(writeStarterBrief(part), part));
  expect(again).toEqual(placesAreClear(part) ? brief : expect.objectContaining({ title: brief.title }));
  expect(readOrRefuse(() => engravingCopy(bytes))).toContain('<score-');
  return true;
}

describe('the reader of scores', () => {
  it('can read the scores that are damaged below', () => {
    expect(texts.length).toBeGreaterThan(40);
    for (const bytes of [...texts.map(bytesOf), ...zips]) expect(readPart(bytes).notes.length).toBeGreaterThan(0);
  });

  it('reads or refuses any bytes and any text', async () => {
    const heads = [
      '',
      '<',
      '<?xml version="1.0"?><score-partwise>',
      '\ufeff<score-timewise>',
      'PK\x03\x04',
      '<!DOCTYPE ',
    ];
    const text = fc.tuple(fc.constantFrom(...heads), fc.string({ unit: 'binary' })).map(([a, b]) => bytesOf(a + b));
    expect(await shareRead(1000, fc.oneof(fc.uint8Array(), text), expectPart)).toBeLessThan(0.5);
  });

  it('reads or refuses scores whose bytes are damaged, compressed or not', async () => {
    const read = await shareRead(800, damagedBytes([...texts.map(bytesOf), ...zips]), expectPart);
    // hardly any damaged document is still well-formed
    expect(read).toBeGreaterThan(0.02);
    expect(read).toBeLessThan(0.9);
  });

  it('reads or refuses scores whose music is damaged, without growing', async () => {
    const grown = await megabytesGrown(async () => {
      const read = await shareRead(600, damagedXml(texts), (xml) => expectPart(bytesOf(xml)));
      expect(read).toBeGreaterThan(0.3);
      expect(read).toBeLessThan(0.95);
    });
    // documents of at most some hundred kilobytes, some of which unfold to very many bars
    expect(grown).toBeLessThan(600);
  });
});
