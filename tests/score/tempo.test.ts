import { describe, expect, test } from 'vitest';
import { type Part, readPart } from '../../src/score/index.js';
import { remarksOf } from '../helpers/remarks-of.js';
import { attributes, direction, note, scoreOf, words } from './score-of.js';

const bars = (...contents: string[]): Part =>
  readPart(scoreOf(contents.map((bar, i) => `${i === 0 ? attributes(1) : ''}${bar}${note('C4', 4)}`)));
const tempos = (part: Part): unknown[] => part.tempos.map((t) => [t.atQuarters, t.quarterBpm, t.printed]);
const bends = (part: Part): unknown[] => part.tempoBends.map((b) => [b.kind, b.startQuarters, b.endQuarters]);
const metronome = (unit: string, perMinute: string, after = ''): string =>
  direction(
    `<metronome><beat-unit>${unit.replace('.', '')}</beat-unit>${unit.endsWith('.') ? '<beat-unit-dot/>' : ''}<per-minute>${perMinute}</per-minute></metronome>`,
    after,
  );
const sound = (tempo: number): string => `<sound tempo="${tempo}"/>`;

// MusicXML 4.0, metronome and sound tempo ("expressed in quarter notes per minute").
describe('tempo marks', () => {
  test.each([
    ['quarter', '96', 96],
    ['half', '60', 120],
    ['eighth', '120', 60],
    ['quarter.', '60', 90],
    ['half.', '40', 120],
    ['quarter', 'c. 72', 72],
    ['quarter', '60–66', 63],
  ])('%s = %s', (unit, perMinute, quarterBpm) => {
    expect(tempos(bars(metronome(unit, perMinute)))).toEqual([[0, quarterBpm, true]]);
  });

  test('a playback tempo counts where nothing else is printed', () => {
    expect(tempos(bars(words('Allegro', sound(132)), sound(80)))).toEqual([
      [0, 132, true],
      [4, 80, true],
    ]);
  });

  test('the printed mark goes before a playback tempo that says otherwise', () => {
    const part = bars(metronome('quarter', '96', sound(120)));
    expect(tempos(part)).toEqual([[0, 96, true]]);
    expect(remarksOf(part)).toEqual([
      'Bar 1: the metronome mark means 96 quarters a minute, the file plays 120; the mark counts.',
    ]);
  });

  // Common practice: the old unit stands left, the new right, and both last as long.
  test('metric modulation: quarter = dotted quarter', () => {
    const modulation = direction(
      '<metronome><beat-unit>quarter</beat-unit><beat-unit>quarter</beat-unit><beat-unit-dot/></metronome>',
    );
    expect(tempos(bars(metronome('quarter', '60'), modulation))).toEqual([
      [0, 60, true],
      [4, 90, true],
    ]);
  });

  // MusicXML 4.0, metronome-note: here two eighths in a triplet equal one eighth, a quarter third for a half quarter.
  test('metric modulation written in notes', () => {
    const tuplet =
      '<metronome-tuplet type="start"><actual-notes>3</actual-notes><normal-notes>2</normal-notes></metronome-tuplet>';
    const one = (inner: string): string =>
      `<metronome-note><metronome-type>eighth</metronome-type>${inner}</metronome-note>`;
    const modulation = direction(
      `<metronome>${one(tuplet)}<metronome-relation>equals</metronome-relation>${one('')}</metronome>`,
    );
    expect(tempos(bars(metronome('quarter', '80'), modulation))).toEqual([
      [0, 80, true],
      [4, 120, true],
    ]);
  });

  test('a mark after the pick-up counts from the start; one that comes much later is only assumed there', () => {
    const pickup = `<measure number="0" implicit="yes">${attributes(1)}${note('G4', 1)}</measure>`;
    expect(tempos(readPart(scoreOf([pickup, metronome('quarter', '100') + note('C4', 4)])))).toEqual([[0, 100, true]]);
    expect(tempos(bars('', '', metronome('quarter', '100')))).toEqual([[0, 100, false]]);
  });

  test('without any tempo one is assumed and said so', () => {
    const part = bars('');
    expect(tempos(part)).toEqual([[0, 100, false]]);
    expect(remarksOf(part)).toEqual(['No tempo is marked at the start; 100 quarters a minute are assumed.']);
    expect(bars(words('Adagio')).tempos[0]).toMatchObject({ printed: false });
    expect(bars(words('Adagio')).tempos[0]?.quarterBpm).toBeLessThan(bars(words('Allegro')).tempos[0]?.quarterBpm ?? 0);
  });

  test('a repeat brings the tempo of its beginning back', () => {
    const back = '<barline location="right"><repeat direction="backward"/></barline>';
    expect(tempos(bars(metronome('quarter', '80'), metronome('quarter', '120') + back))).toEqual([
      [0, 80, true],
      [4, 120, true],
      [8, 80, true],
      [12, 120, true],
    ]);
  });

  test('tempo primo', () => {
    expect(tempos(bars(metronome('quarter', '80'), metronome('quarter', '60'), words('Tempo I')))).toEqual([
      [0, 80, true],
      [4, 60, true],
      [8, 80, true],
    ]);
  });
});

// The words: common practice.
describe('tempo that bends', () => {
  const start = metronome('quarter', '80');
  test.each([
    ['rit.', 'slower'],
    ['ritardando', 'slower'],
    ['poco rall.', 'slower'],
    ['allargando', 'slower'],
    ['molto ritenuto', 'slower'],
    ['meno mosso', 'slower'],
    ['accel.', 'faster'],
    ['stringendo', 'faster'],
    ['più mosso', 'faster'],
  ])('%s until a tempo', (text, kind) => {
    const part = bars(start, words(text), words('a tempo'), '');
    expect(bends(part)).toEqual([[kind, 4, 8]]);
    expect(tempos(part)).toEqual([[0, 80, true]]);
  });

  test.each([['ritmico'], ['senza rit.'], ['cantabile'], ['spiritoso']])('not %s', (text) => {
    expect(bends(bars(start, words(text), ''))).toEqual([]);
  });

  test('to the next mark, the next word, the end of its dashes, or the end of the piece', () => {
    expect(bends(bars(start, words('rit.'), metronome('quarter', '60'), ''))).toEqual([['slower', 4, 8]]);
    expect(bends(bars(start, words('rit.'), words('accel.'), ''))).toEqual([
      ['slower', 4, 8],
      ['faster', 8, 16],
    ]);
    const dashes = (type: string): string => direction(`<dashes type="${type}"/>`);
    expect(bends(bars(start, words('rit.') + dashes('start'), dashes('stop'), ''))).toEqual([['slower', 4, 8]]);
  });

  test('to a repeat sign', () => {
    const back = '<barline location="right"><repeat direction="backward"/></barline>';
    expect(bends(bars(start, words('rit.') + back))).toEqual([
      ['slower', 4, 8],
      ['slower', 12, 16],
    ]);
  });

  test('to a tempo word with another tempo', () => {
    const part = bars(start, words('rit.'), words('Presto', sound(160)), '');
    expect(bends(part)).toEqual([['slower', 4, 8]]);
    expect(tempos(part).at(-1)).toEqual([8, 160, true]);
  });

  test('playback tempos that only act out a ritardando are not marks', () => {
    const part = bars(start, words('rit.', sound(74)), sound(66), words('a tempo', sound(80)), '');
    expect(tempos(part)).toEqual([[0, 80, true]]);
    expect(bends(part)).toEqual([['slower', 4, 12]]);
  });

  test('meno mosso with a number is a new tempo', () => {
    const part = bars(start, words('meno mosso', sound(66)), '');
    expect(tempos(part)).toEqual([
      [0, 80, true],
      [4, 66, true],
    ]);
    expect(bends(part)).toEqual([]);
  });
});
