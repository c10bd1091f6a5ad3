import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonPieces } from '../../src/result/index.js';

const written = (document: object): string => [...jsonPieces(document)].join('');

/** The whole text at once, by the engine's own JSON: indented by two, a line break at the end. Source: ECMA-262, 25.5.2. */
const atOnce = (document: object): string => `${JSON.stringify(document, null, 2)}\n`;

describe('a document in pieces', () => {
  it('is the same text, whatever it holds', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 8 })), (document) => {
        expect(written(document)).toBe(atOnce(document));
      }),
    );
  });

  it('leaves out what is not there', () => {
    const document = { a: undefined, b: [undefined, { c: undefined }], d: {}, e: [] };
    expect(written(document)).toBe(atOnce(document));
  });

  it('asks for what a function gives only when it is come to', () => {
    const asked: string[] = [];
    const players = function* (): Generator<object> {
      for (const name of ['Ada', 'Ben']) {
        asked.push(name);
        yield { name, days: [1, 2] };
      }
    };
    const pieces = jsonPieces({ first: 1, pieces: [{ players, section: () => ({ of: 2 }) }] });
    let text = '';
    for (const piece of pieces) {
      text += piece;
      if (!text.includes('Ada')) expect(asked.includes('Ben')).toBe(false);
    }
    const people = ['Ada', 'Ben'].map((name) => ({ name, days: [1, 2] }));
    expect(text).toBe(atOnce({ first: 1, pieces: [{ players: people, section: { of: 2 } }] }));
  });
});
