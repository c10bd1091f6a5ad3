import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { retold, type Saying, sentenceIn } from '../../src/judge/index.js';
import { GERMAN_REMARKS } from '../../src/judge/wording/german-remarks.js';
import { GERMAN_SENTENCES } from '../../src/judge/wording/german-sentences.js';
import { summaryRetold } from '../../src/words/index.js';
import { lineOf } from '../helpers/said.js';

const src = resolve(import.meta.dirname, '../../src');

/** Where a room says something in a fixed English sentence. */
const SAID = /(?:^notMeasured$|\bcautions\.push$)/;
/** Fields and functions that hold or make such sentences. */
const HOLDS = /^(?:expected|NOT_REVIEWED)$/;
const MAKES = /(?:Cautions?|otherPitch|nameOf)$/;

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
    // names of channels and the like, which are put into a sentence, are looked up by themselves
    ts.forEachChild(node, gather);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && SAID.test(node.expression.getText())) node.arguments.forEach(gather);
    else if (
      (ts.isPropertyAssignment(node) || ts.isVariableDeclaration(node)) &&
      HOLDS.test(node.name.getText()) &&
      node.initializer !== undefined
    )
      gather(node.initializer);
    else if (ts.isFunctionDeclaration(node) && MAKES.test(node.name?.text ?? '') && node.body) gather(node.body);
    else ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** Words or signs that are put into a sentence and need no translation there. */
const PUT_IN = new Set(['', ', ', 'was', 'were', 'sample was', 'samples were', 'left', 'right', '{} ms of audio']);

const asTemplate = (text: string) => text.replaceAll('{n}', '{}');
const known = new Set(Object.keys(GERMAN_SENTENCES).map(asTemplate));
/** A sentence made of a known one and a number, or one of which the parts are known whole. */
const isKnown = (text: string) =>
  known.has(text) || ['the left channel', 'the right channel'].some((one) => text === one.replace(/left|right/, '{}'));

describe('what the rooms say in fixed sentences', () => {
  const all = ['decode', 'features', 'score', 'align', 'measure', 'judge/judges', 'result'].flatMap(sentencesIn);
  const sentences = [...new Set(all)].filter((text) => !PUT_IN.has(text));

  it('is found in the sources', () => {
    expect(sentences.length).toBeGreaterThan(40);
    expect(sentences).toContain('too few notes were heard under {}');
  });

  it.each(sentences)('has a German form: %s', (text) => {
    expect([text, isKnown(text)]).toEqual([text, true]);
  });

  it('keeps all that is put in', () => {
    const count = (text: string) => text.match(/\{n?\}/g)?.length ?? 0;
    for (const [english, german] of Object.entries(GERMAN_SENTENCES)) {
      const plural = english === '{n} damaged {} replaced by silence';
      expect([english, count(german)]).toEqual([english, plural ? 1 : count(english)]);
      expect([english, german]).not.toEqual([english, '']);
    }
  });
});

describe('what a German result tells', () => {
  // A sentence put into another and those that German says in one way are left out: they have no single way back.
  it('can be said again in English', () => {
    const entries = Object.entries(GERMAN_SENTENCES);
    const times = (german: string) => entries.filter(([, one]) => one === german).length;
    const whole = entries.filter(([english, german]) => !/\{/.test(english) && times(german) === 1);
    expect(whole.length).toBeGreaterThan(40);
    for (const [english, german] of whole) expect([german, retold('en', 'de', german)]).toEqual([german, english]);
    expect(retold('en', 'de', 'zu wenige Noten unter mf waren zu hören')).toBe('too few notes were heard under mf');
    expect(retold('en', 'de', 'etwas anderes')).toBeNull();
  });

  it('says why a criterion was not judged, either way', () => {
    const both = (saying: Saying) => [lineOf('en', saying), lineOf('de', saying)] as const;
    const pairs = [
      both({ code: 'left-out', facts: { why: 'all-slurred' } }),
      both({ code: 'left-out', facts: { why: 'by-brief' } }),
      both({ code: 'level-riding', facts: {} }),
      both({ code: 'no-breath-marked', facts: {} }),
      ['not measured: no note was heard', 'nicht gemessen: kein Ton war zu hören'],
    ] as const;
    for (const [one, other] of pairs) {
      expect(summaryRetold('de', 'en', one)).toBe(other);
      expect(summaryRetold('en', 'de', other)).toBe(one);
      expect(summaryRetold('de', 'de', other)).toBe(other);
    }
    expect(summaryRetold('en', 'de', '3 von 4 Noten')).toBeNull();
  });
});

/** Texts in the files of a folder that end like a sentence: errors of a user end without a full stop. */
function fullStopsIn(folder: string): string[] {
  const files = readdirSync(join(src, folder), { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) found.push(node.text);
    if (ts.isTemplateExpression(node))
      found.push(node.head.text + node.templateSpans.map((span) => `{}${span.literal.text}`).join(''));
    ts.forEachChild(node, visit);
  };
  for (const file of files)
    visit(ts.createSourceFile(file, readFileSync(join(src, folder, file), 'utf8'), ts.ScriptTarget.ES2023, true));
  return [...new Set(found)].filter((text) => / .*\.$/.test(text));
}

describe('what a copyist would point out', () => {
  const remarks = fullStopsIn('score');
  /** With the parts that another template of the same room puts in: the bar, what it holds, how many notes there are. */
  const forms = new Set(
    Object.keys(GERMAN_REMARKS).map((form) =>
      asTemplate(form)
        .replace('it holds {}, its time signature asks for {}', '{}')
        .replace(/; (?:1 note is|\{\} notes are) in/, '; {} in'),
    ),
  );
  const whole = new Set(Object.keys(GERMAN_REMARKS).map(asTemplate));
  const place = /^(?:Bar \{\}|\{\}): /;

  it('is found in the sources', () => {
    expect(remarks.length).toBeGreaterThan(12);
    expect(remarks).toContain('Bar {}: a slur begins and has no end.');
  });

  it.each(remarks)('has a German form: %s', (text) => {
    const known = [text, `Bar {}: ${text}`, text.replace(place, 'Bar {}: ')].some(
      (form) => whole.has(form) || forms.has(form),
    );
    expect([text, known]).toEqual([text, true]);
  });

  it('keeps all that is put in', () => {
    const count = (text: string) => text.match(/\{n?\}/g)?.length ?? 0;
    for (const [english, german] of Object.entries(GERMAN_REMARKS))
      expect([english, count(german)]).toEqual([english, count(english)]);
  });

  it.each([
    [
      'Bar 7 is too long: it holds 4.5 quarters, its time signature asks for 4 quarters.',
      'Takt 7 ist zu lang: Er enthält 4,5 Viertel, die Taktart verlangt 4 Viertel.',
    ],
    [
      'Bar 3: the sign at B4 says flat, the file means another pitch; the pitch counts.',
      'Takt 3: Das Zeichen bei h′ (Be) passt nicht zur Tonhöhe in der Datei; die Tonhöhe zählt.',
    ],
    [
      'Voice 1 is read; 12 notes are in other voices or on other staves.',
      'Gelesen wird Stimme 1; 12 Noten stehen in anderen Stimmen oder Systemen.',
    ],
  ])('%s', (english, german) => {
    expect(sentenceIn('de', english)).toBe(german);
  });
});

describe('a fixed sentence in German', () => {
  it.each([
    ['too few notes were heard under mf', 'zu wenige Noten unter mf waren zu hören'],
    [
      'the file breaks off: it should hold 42.0 s and holds 17.3 s',
      'Die Datei bricht ab: Sie sollte 42,0 s lang sein und ist 17,3 s lang.',
    ],
    ['the left channel is empty and was left out', 'Leer und darum weggelassen: linker Kanal.'],
    ['channel 3, channel 4 are empty and were left out', 'Leer und darum weggelassen: Kanal 3, Kanal 4.'],
    ['1 damaged sample was replaced by silence', '1 beschädigter Abtastwert wurde durch Stille ersetzt.'],
    ['12 damaged samples were replaced by silence', '12 beschädigte Abtastwerte wurden durch Stille ersetzt.'],
    [
      'The whole take sounds 2 semitones lower than this part. It may have been read from the part for another instrument. Everything else here is compared at that pitch.',
      'Die ganze Aufnahme klingt 2 Halbtöne tiefer als diese Noten. Vielleicht wurde aus den Noten für ein anderes Instrument gespielt. Alles andere hier ist in dieser Tonhöhe verglichen.',
    ],
    [
      'The whole take sounds an octave higher than this part. Everything else here is compared at that pitch.',
      'Die ganze Aufnahme klingt eine Oktave höher als diese Noten. Alles andere hier ist in dieser Tonhöhe verglichen.',
    ],
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
