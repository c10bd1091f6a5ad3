import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTypesetter, drawPdf, placeText, Sheet, STYLES, setText } from '../../src/page/index.js';

const typesetter = createTypesetter(() => '[other letters]');
const creationDate = new Date(Date.UTC(2026, 2, 2));

/** Names as people of many countries write them; the spelling is from memory. */
const NAMES: readonly (readonly [script: string, name: string])[] = [
  ['Chinese, simplified', '李明华'],
  ['Chinese, traditional', '陳麗華'],
  ['Japanese', '中村さくら'],
  ['Japanese, katakana', 'サトウ・ケン'],
  ['Korean', '김민준'],
  ['Arabic', 'محمد علي'],
  ['Persian', 'پریسا گلزار'],
  ['Hebrew', 'נועה לוי'],
  ['Devanagari', 'श्रीनिवास शर्मा'],
  ['Thai', 'น้ำฝน ใจดี'],
  ['Cyrillic', 'Ольга Щербакова'],
  ['Greek', 'Ελένη Παπαδοπούλου'],
  ['Vietnamese', 'Nguyễn Thị Hường'],
];

let folder = '';
let bytes: Uint8Array = new Uint8Array();

async function drawn(lines: readonly string[]): Promise<Uint8Array> {
  const sheet = new Sheet({ typesetter, paper: 'a4', title: 'Names', foot: 'Names' });
  for (const [i, line] of lines.entries()) sheet.write('P', line, i % 2 === 0 ? STYLES.body : STYLES.headline);
  return drawPdf(sheet.finish(), creationDate);
}

function read(pdf: Uint8Array, program: 'pdftotext' | 'pdffonts'): string {
  const file = join(folder, 'names.pdf');
  writeFileSync(file, pdf);
  const said = execFileSync(program, program === 'pdftotext' ? ['-layout', file, '-'] : [file], { encoding: 'utf8' });
  return said.replace(/[\u202a-\u202e]/g, '');
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'names-'));
  bytes = await drawn(NAMES.map(([, name]) => name));
});

afterAll(() => {
  rmSync(folder, { recursive: true });
});

describe('names on paper', () => {
  it.each(NAMES)('%s: a reader finds the letters in the order they are written', (_script, name) => {
    expect(read(bytes, 'pdftotext').normalize('NFC')).toContain(name.normalize('NFC'));
  });

  it('embed their faces, cut down to the letters', () => {
    const faces = read(bytes, 'pdffonts')
      .split('\n')
      .slice(2)
      .filter((line) => line !== '');
    expect(faces.length).toBeGreaterThan(8);
    for (const face of faces) expect(face).toMatch(/yes yes yes/);
    expect(bytes.length).toBeLessThan(150_000);
  });

  it('are the same bytes each time', async () => {
    expect(Buffer.from(await drawn(NAMES.map(([, name]) => name))).equals(Buffer.from(bytes))).toBe(true);
  });

  it('stand beside Latin letters and figures in one line', async () => {
    const text = read(await drawn(['Étude 3: 李明华 and محمد علي, bar 12']), 'pdftotext');
    expect(text).toContain('Étude 3: 李明华 and محمد علي, bar 12');
  });
});

/** What is seen from left to right, a word from right to left turned round as its face turns it. */
function seen(text: string, width = 1000): string[] {
  const set = setText(typesetter, text, STYLES.body, width);
  return set.lines.map((_, row) =>
    placeText({ ...set, lines: [set.lines[row] as (typeof set.lines)[number]] }, 0, 0)
      .sort((a, b) => a.x - b.x)
      .map((item) => (/\p{Script=Hebrew}/u.test(item.text) ? [...item.text].reverse().join('') : item.text))
      .join(''),
  );
}

/** Capitals stand for letters from right to left, as in the examples of the standard. */
const inHebrew = (text: string): string =>
  text.replace(/[A-Z]/g, (letter) => String.fromCodePoint(0x05d0 + letter.charCodeAt(0) - 65));

describe('letters from right to left', () => {
  // Source: Unicode Standard Annex 9, 3.4, examples of L2, and by hand for numbers (rule W2, N1) and brackets (L4)
  it.each([
    ['car means CAR.', 'car means RAC.'],
    ['DID YOU SAY car', 'YAS UOY DID car'],
    ['CAR 3', '3 RAC'],
    ['a CAR (RED) b', 'a (DER) RAC b'],
  ])('%s is seen as %s', (memory, display) => {
    expect(seen(inHebrew(memory))).toEqual([inHebrew(display)]);
  });

  it('break into lines before they are turned', () => {
    // the first words stay on the first line
    const width =
      typesetter.widthOf(inHebrew('CAB'), typesetter.faceFor(inHebrew('C'), 'regular', '') as never, 10) * 1.5;
    expect(seen(inHebrew('CAB DAB'), width).map((line) => line.trim())).toEqual([inHebrew('BAC'), inHebrew('BAD')]);
  });
});

describe('letters that change with their neighbours', () => {
  const width = (text: string): number => setText(typesetter, text, STYLES.body, 1000).lines[0]?.width ?? 0;

  // Source: Unicode Standard, 9.2: Arabic letters join; U+200C (zero width non-joiner) keeps them apart
  it('join in Arabic, and are kept apart where it is asked for', () => {
    expect(width('محمد')).toBeLessThan(0.9 * width('م\u200cح\u200cم\u200cد'));
  });

  // Source: Unicode Standard, 12.1: a virama joins two consonants; U+200C keeps it visible
  it('join in Devanagari', () => {
    expect(width('क्ष')).toBeLessThan(0.9 * width('क्\u200cष'));
  });

  it('are set in one face where one holds all of them', () => {
    const faces = (text: string): string[] =>
      placeText(setText(typesetter, text, STYLES.body, 1000), 0, 0).map(({ face }) => face.replace(/\/.*/, ''));
    expect(new Set(faces('中村さくら'))).toEqual(new Set(['lent 400 noto-serif-jp']));
    expect(new Set(faces('李明华'))).toEqual(new Set(['lent 400 noto-serif-sc']));
    expect(new Set(faces('金민준'))).toEqual(new Set(['lent 400 noto-serif-kr']));
  });
});

describe('letters that no face holds', () => {
  it('are named and numbered, so that two names are never alike', () => {
    const named = ['ᚠᚢ', 'ᚠᚦ'].map((name) => seen(name)[0]);
    expect(named).toEqual(['[other letters 16A0-16A2]', '[other letters 16A0-16A6]']);
  });
});
