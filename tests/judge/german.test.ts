import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { noteNameIn, sentenceIn } from '../../src/judge/index.js';
import { GERMAN_SENTENCES } from '../../src/judge/wording/german-sentences.js';
import { wordsIn } from '../../src/judge/wording/words-in.js';

const src = resolve(import.meta.dirname, '../../src');

/** Fields that hold a fixed English sentence. */
const HOLDS = /^expected$/;

/** Sentences in the files of a folder, with `{}` for what is put in. */
function sentencesIn(folder: string): string[] {
  const files = readdirSync(join(src, folder), { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));
  return files.flatMap((file) => {
    const text = readFileSync(join(src, folder, file), 'utf8');
    return sentencesOf(ts.createSourceFile(file, text, ts.ScriptTarget.ES2023, true));
  });
}

function sentencesOf(file: ts.SourceFile): string[] {
  const found: string[] = [];
  const gather = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isBinaryExpression(node)) {
      if (ts.isBinaryExpression(node) && /[?|&+]/.test(node.operatorToken.getText())) ts.forEachChild(node, gather);
      return;
    }
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) found.push(node.text);
    else if (ts.isTemplateExpression(node))
      found.push(node.head.text + node.templateSpans.map((span) => `{}${span.literal.text}`).join(''));
    ts.forEachChild(node, gather);
  };
  const visit = (node: ts.Node): void => {
    if (
      (ts.isPropertyAssignment(node) || ts.isVariableDeclaration(node)) &&
      HOLDS.test(node.name.getText()) &&
      node.initializer !== undefined
    )
      gather(node.initializer);
    else ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const asTemplate = (text: string) => text.replaceAll('{n}', '{}');
const known = new Set(Object.keys(GERMAN_SENTENCES).map(asTemplate));

describe('what the judges expect', () => {
  const sentences = [...new Set(sentencesIn('judge/judges'))].filter((text) => text !== '');

  it('is found in the sources', () => {
    expect(sentences.length).toBeGreaterThan(12);
    expect(sentences).toContain('at least {} softer after the attack');
  });

  it.each(sentences)('has a German form: %s', (text) => {
    expect([text, known.has(text)]).toEqual([text, true]);
  });

  it('keeps all that is put in', () => {
    const count = (text: string) => text.match(/\{n?\}/g)?.length ?? 0;
    for (const [english, german] of Object.entries(GERMAN_SENTENCES)) {
      expect([english, count(german)]).toEqual([english, count(english)]);
      expect([english, german]).not.toEqual([english, '']);
    }
  });

  it.each([
    ['at most −3', 'höchstens −3'],
    ['1.25 to 3', '1,25 bis 3'],
    ['within 10 %', 'innerhalb von 10 %'],
  ])('%s', (english, german) => {
    expect(sentenceIn('de', english)).toBe(german);
    expect(sentenceIn('en', english)).toBe(english);
  });

  it('comes back as it is when it is not known', () => {
    expect(sentenceIn('de', 'back to the beginning')).toBe('back to the beginning');
  });
});

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
    expect(noteNameIn('de', english)).toBe(german);
    expect(noteNameIn('en', english)).toBe(english);
  });
});

describe('the German lines of the criteria', () => {
  const { summaries } = wordsIn('de');

  it('have a decimal comma, and forms for one and for many', () => {
    expect(summaries.tuning(442.13, 8.4)).toBe('nahe an A = 440 Hz gestimmt: 8 Cent zu hoch, 442,1 Hz');
    expect(summaries.tuning(436.2, -15)).toBe('15 Cent zu tief gestimmt: A = 436,2 Hz');
    expect(summaries.tuning(440, -0.2)).toBe('auf A = 440 Hz gestimmt');
    expect(summaries.stops(1, 0)).toBe('einmal neu begonnen');
    expect(summaries.hairpins(1, 1)).toBe('die Gabel ist deutlich');
    expect(summaries.breathsBeyond(1)).toMatch(/^1 weiteres steht/);
    expect(summaries.breathsBeyond(2)).toMatch(/^2 weitere stehen/);
  });

  it('name other bars in one sentence', () => {
    const { alsoIn, perhapsIn } = wordsIn('de');
    expect(alsoIn(['9'])).toBe(' Dasselbe geschieht in Takt 9.');
    expect(alsoIn(['9', '12', '14'])).toBe(' Dasselbe geschieht in den Takten 9, 12 und 14.');
    expect(perhapsIn([])).toBe('');
  });
});
