import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import type { InputErrorCode } from '../../src/base/index.js';
import { readPart } from '../../src/score/index.js';
import { attributes, bytesOf, note, scoreOf } from './score-of.js';
import { zipOfSpaces } from './zip-bytes.js';

/** Files made to exhaust the machine or to reach out of it: each is met without much memory. */

const MOST_MEGABYTES = 64;
const plain = new TextDecoder().decode(scoreOf([attributes(1) + note('C4', 4)]));
const withDoctype = (doctype: string, name = 'Flute'): Uint8Array =>
  bytesOf(plain.replace('<score-partwise', `${doctype}\n<score-partwise`).replace('Flute', name));

/** Megabytes by which the greatest memory the process ever held has grown. */
function megabytesOf(work: () => void): number {
  const before = process.resourceUsage().maxRSS;
  work();
  return (process.resourceUsage().maxRSS - before) / 1024;
}

function refusedCheaply(bytes: Uint8Array, code: InputErrorCode): void {
  const megabytes = megabytesOf(() =>
    expect(() => readPart(bytes)).toThrow(expect.objectContaining({ name: 'InputError', code })),
  );
  expect(megabytes).toBeLessThan(MOST_MEGABYTES);
}

describe('refused at once and without much memory', () => {
  // Ten entities, each ten times the one before: 10^9 words ("billion laughs", CWE-776, from memory).
  test('an entity bomb', () => {
    const levels = Array.from({ length: 9 }, (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`);
    refusedCheaply(
      withDoctype(`<!DOCTYPE score-partwise [<!ENTITY e0 "ha">${levels.join('')}]>`, '&e9;'),
      'score-refused',
    );
  });

  // One long entity named often: 50 000 times 50 000 characters (quadratic blow-up, CWE-776, from memory).
  test('a long entity named often', () => {
    const doctype = `<!DOCTYPE score-partwise [<!ENTITY a "${'a'.repeat(50_000)}">]>`;
    refusedCheaply(withDoctype(doctype, '&a;'.repeat(50_000)), 'score-refused');
  });

  test.each([200, 200_000])('elements nested %i deep', (depth) => {
    const deep = `${'<a>'.repeat(depth)}${'</a>'.repeat(depth)}`;
    refusedCheaply(bytesOf(plain.replace('<part-list>', `${deep}<part-list>`)), 'score-refused');
  });

  test('a zip entry of 1 GB', () => {
    const zip = zipOfSpaces('score.xml', 64, 2 ** 30);
    expect(zip.length).toBeLessThan(2 * 1024 * 1024);
    refusedCheaply(zip, 'score-refused');
  });

  test('a zip entry of 1 GB that says it is small', () => {
    refusedCheaply(zipOfSpaces('score.xml', 64, 1000), 'not-musicxml');
    refusedCheaply(zipOfSpaces('score.xml', 64, 12 * 1024 * 1024), 'not-musicxml');
  });

  test('a container of 1 GB', () => {
    refusedCheaply(zipOfSpaces('META-INF/container.xml', 64, 2 ** 30), 'score-refused');
  });
});

// XML 1.0, section 4.2.2: a processor that does not validate need not fetch external definitions. Every notation program
// names the MusicXML DTD this way, so the line itself is no reason to refuse a score.
describe('an external DTD', () => {
  test('is not fetched', async () => {
    let connections = 0;
    const server = createServer((_request, response) => response.end('<!ENTITY x "fetched">'));
    server.on('connection', () => connections++);
    await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
    const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/score.dtd`;
    try {
      const part = readPart(withDoctype(`<!DOCTYPE score-partwise SYSTEM "${url}">`, '&x;'));
      const megabytes = megabytesOf(() =>
        readPart(withDoctype(`<!DOCTYPE score-partwise PUBLIC "-//X//EN" "${url}">`)),
      );
      expect(part.partName).toBe('&x;');
      expect(megabytes).toBeLessThan(MOST_MEGABYTES);
      await pause(100);
      expect(connections).toBe(0);
      await (await fetch(url)).text();
      expect(connections).toBe(1);
    } finally {
      server.closeAllConnections();
      server.close();
    }
  });

  test.each([
    [
      'drawn in by a parameter entity',
      '<!DOCTYPE score-partwise [<!ENTITY % d SYSTEM "http://127.0.0.1:9/d.dtd"> %d;]>',
    ],
    ['beside definitions of its own', '<!DOCTYPE score-partwise SYSTEM "d.dtd" [<!ENTITY x SYSTEM "file:///d.txt">]>'],
  ])('%s is refused', (_name, doctype) => {
    refusedCheaply(withDoctype(doctype), 'score-refused');
  });
});

// Last, as the greatest memory never falls.
test('the measure of memory sees what is used', () => {
  let held = 0;
  const megabytes = megabytesOf(() => {
    held = Buffer.alloc(400 * 1024 * 1024, 1).length;
  });
  expect(held).toBe(400 * 1024 * 1024);
  expect(megabytes).toBeGreaterThan(MOST_MEGABYTES);
});
