import { describe, expect, it } from 'vitest';
import { InputError, printable } from '../../src/base/index.js';
import { defaultBrief, readBrief, writeStarterBrief } from '../../src/brief/index.js';
import { type Part, readPart } from '../../src/score/index.js';
import { saidOf } from '../helpers/in-words.js';
import { attributes, bytesOf, note, scoreOf } from '../score/score-of.js';
import { expectPlayable } from './expect-playable.js';

/** What the damaged files have found, one case each, so that it is found at once if it comes back. */

function refusal(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof InputError) return `${error.code}: ${(saidOf(error) as InputError).message}`;
    throw error;
  }
  return 'not refused';
}

function playable(...bars: string[]): Part {
  const part = readPart(scoreOf(bars));
  expectPlayable(part);
  return part;
}

describe('words out of a file', () => {
  // Sources: ECMA-48 (escape sequences), Unicode Standard 3.9 (surrogates), UAX 9 (direction overrides).
  it('are printed on one line, without what a terminal obeys', () => {
    expect(printable('a\u001b[2Jb\r\nc\u2028d\ud834e\u202ef 𝄞 é')).toBe('a\ufffd[2Jb c d\ufffde\ufffdf 𝄞 é');
    expect(refusal(() => readPart(bytesOf('<\u0001')))).toMatch(/^not-musicxml: [^\p{Cc}]+$/u);
  });

  // XML 1.0, section 2.2: neither may stand in a document, written out or as a reference.
  it('hold no character that XML does not have', () => {
    const titled = (title: string) =>
      readPart(scoreOf([attributes(1) + note('C4', 4)], `<work><work-title>${title}</work-title></work>`)).title;
    expect(titled('a\u0007b')).toBe('a\ufffdb');
    expect(titled('a&#27;b&#xD800;c')).toBe('a\ufffdb\ufffdc');
    expect(titled('x'.repeat(5000))).toHaveLength(200);
  });
});

describe('numbers no score can mean', () => {
  const opening = attributes(1);

  it.each([
    ['a step ahead', `${opening}<forward><duration>1e300</duration></forward>${note('C4', 4)}`],
    ['divisions', `<attributes><divisions>1e-320</divisions></attributes>${note('C4', 4)}`],
    [
      'a transposition',
      `${opening}<attributes><transpose><chromatic>1e999</chromatic></transpose></attributes>${note('C4', 4)}`,
    ],
    ['a tempo', `<sound tempo="1e-320"/>${opening}${note('C4', 4)}`],
    [
      'a unit of time',
      `<attributes><time><beats>4</beats><beat-type>1e-300</beat-type></time></attributes>${note('C4', 4)}`,
    ],
  ])('are not read: %s', (_, bar) => {
    expect(playable(bar).notes).toHaveLength(1);
  });

  it('are refused where they make a bar nobody plays', () => {
    const bar = `${opening}<forward><duration>100000</duration></forward>${note('C4', 4)}`;
    expect(refusal(() => playable(bar))).toBe('score-refused: bar 1 is 100000 quarters long; at most 4000 are read');
  });

  // MIDI 1.0: C0 is note 12, two octaves lower is below 0.
  it('are refused where they make a note no instrument plays', () => {
    const down =
      '<attributes><transpose><chromatic>0</chromatic><octave-change>-2</octave-change></transpose></attributes>';
    expect(refusal(() => playable(`${opening}${down}${note('C0', 4)}`))).toMatch(
      /^score-refused: a note of bar 1 sounds lower/,
    );
  });

  it('make no part of millions of notes', () => {
    const bar = Array.from({ length: 50 }, () => note('C4', 1)).join('');
    const again = '<barline location="right"><repeat direction="backward" times="999999"/></barline>';
    expect(refusal(() => playable(opening + bar + again))).toMatch(
      /^score-refused: the part has more than 20000 notes/,
    );
  });
});

describe('a note that lasts no time', () => {
  it('counts as a grace note', () => {
    const { notes } = playable(attributes(1) + note('C4', 0) + note('D4', 4));
    expect(notes.map(({ grace, durationQuarters }) => [grace, durationQuarters])).toEqual([
      [true, 0],
      [false, 4],
    ]);
  });
});

describe('a starter brief', () => {
  it('can be read back for a bar of more than a hundred beats', () => {
    const breath = { notations: '<articulations><breath-mark/></articulations>' };
    const free = '<attributes><divisions>1</divisions><time><senza-misura/></time></attributes>';
    const part = playable(`${free}${note('C4', 120)}${note('D4', 4, breath)}${note('E4', 4)}`);
    expect(readBrief(writeStarterBrief(part), part)).toEqual(defaultBrief(part));
  });

  it('can be read back for bars numbered 007', () => {
    const part = playable(`<measure number="007">${attributes(1)}${note('C4', 4)}</measure>`);
    expect(readBrief('watch:\n  - bar: 007\n', part).watch).toEqual([{ bar: '007', toBar: '007', reason: '' }]);
  });
});
