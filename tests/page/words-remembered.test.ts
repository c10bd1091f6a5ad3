import { describe, expect, it } from 'vitest';
import { openFaces } from '../../src/page/index.js';

describe('words that were set before', () => {
  it('are set the same, whether they are still remembered or were forgotten meanwhile', () => {
    const { regular } = openFaces();
    const set = () => {
      const { advanceWidth, glyphs, positions } = regular.layout('Waveform');
      return { advanceWidth, codes: glyphs.map(({ codePoints }) => [...codePoints]), positions };
    };
    const first = set();
    expect(first.codes.flat()).toEqual([...'Waveform'].map((letter) => letter.codePointAt(0)));
    for (const words of [10, 600, 3000]) {
      for (let i = 0; i < words; i += 1) regular.layout(`${words} ${i}`);
      expect(set()).toEqual(first);
    }
  });
});
