import { describe, expect, it } from 'vitest';
import type { Expected, Saying } from '../../src/judge/index.js';
import { tuningSaying } from '../../src/judge/pitch-and-tempo-sayings.js';
import { wordsIn } from '../../src/words/words-in.js';
import { lineOf } from '../helpers/said.js';

describe('the German names of notes', () => {
  // Source: common practice of German-speaking countries; e.g. Ziegenrücker, Allgemeine Musiklehre (from memory).
  it.each([
    ['C', 'C'],
    ['B', 'H'],
    ['B♭', 'B'],
    ['B♯', 'His'],
    ['B♭♭', 'Heses'],
    ['C♯', 'Cis'],
    ['F♯♯', 'Fisis'],
    ['E♯', 'Eis'],
    ['E♭', 'Es'],
    ['A♭', 'As'],
    ['A♭♭', 'Ases'],
    ['D♭', 'Des'],
    ['G♭', 'Ges'],
    ['C♭', 'Ces'],
  ])('%s is %s', (english, german) => {
    expect(wordsIn('de').note(english)).toBe(german);
    expect(wordsIn('en').note(english)).toBe(english);
  });
});

describe('the German lines of the criteria', () => {
  const line = (...sayings: readonly Saying[]) => lineOf('de', ...sayings);

  it('have a decimal comma, and forms for one and for many', () => {
    expect(line(tuningSaying(442.13, 8.4))).toBe('gut auf A = 440 Hz gestimmt; 8 Cent zu hoch, kaum zu hören');
    expect(line(tuningSaying(436.2, -15))).toBe('zu tief gestimmt: 15 Cent, ab 10 hört man es (A = 436,2 Hz)');
    expect(line(tuningSaying(440, -0.2))).toBe('auf A = 440 Hz gestimmt');
    expect(line({ code: 'restarts', facts: { count: 1 } })).toBe('einmal neu begonnen');
    expect(line({ code: 'hairpins', facts: { plain: 1, of: 1 } })).toBe('die Gabel ist deutlich');
    expect(line({ code: 'breaths-beyond', facts: { count: 1 } })).toMatch(/^1 weiteres steht/);
    expect(line({ code: 'breaths-beyond', facts: { count: 2 } })).toMatch(/^2 weitere stehen/);
  });

  it('name other bars in one sentence', () => {
    const { also } = wordsIn('de').otherBars;
    expect(also(['9'])).toBe('Dasselbe geschieht in Takt 9.');
    expect(also(['9', '12', '14'])).toBe('Dasselbe geschieht in den Takten 9, 12 und 14.');
  });
});

describe('what is expected, in German', () => {
  it.each<[Expected, string]>([
    [{ code: 'at-least-down', facts: { value: 3 } }, 'mindestens 3 leiser'],
    [{ code: 'between', facts: { least: 1.25, most: 3 } }, '1,25 bis 3'],
    [{ code: 'within-percent', facts: { percent: 10 } }, 'innerhalb von 10 %'],
    [{ code: 'about', facts: { value: 132.5 } }, 'etwa 132,5'],
  ])('%j is %s', (expected, german) => {
    const say = wordsIn('de').expected[expected.code] as (facts: Expected['facts']) => string;
    expect(say(expected.facts)).toBe(german);
  });
});
