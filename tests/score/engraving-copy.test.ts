import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { engravingCopy, readPart } from '../../src/score/index.js';
import { attributes, note, scoreOf } from './score-of.js';

const scores = join(import.meta.dirname, '../../fixtures/scores');
const eighth = (pitch: string, more = {}): string => note(pitch, 1, { type: 'eighth', ...more });
const beamsIn = (copy: string): string =>
  [...copy.matchAll(/<beam number="1">(\w)|<note/g)].map((m) => m[1] ?? '|').join('');

describe('the copy for engraving', () => {
  it.each(['morning-round.musicxml', 'river-stones.musicxml', 'three-gates.xml'])('of %s is the same part', (file) => {
    const bytes = readFileSync(join(scores, file));
    const copy = engravingCopy(bytes);
    expect(XMLValidator.validate(copy)).toBe(true);
    const [before, after] = [readPart(bytes), readPart(new TextEncoder().encode(copy))];
    const said = ({ notes }: typeof before): unknown[] =>
      notes.map(({ printedId, bar, beat, writtenMidi, durationQuarters, misreadings }) => {
        return { printedId, bar, beat, writtenMidi, durationQuarters, misreadings };
      });
    expect(said(after)).toEqual(said(before));
    expect(after.printedBars).toBe(before.printedBars);
  });

  it('carries the printed id on every note element, rests included', () => {
    const copy = engravingCopy(scoreOf([attributes(1) + note('C5', 2) + note('r', 2), note('D5', 4)]));
    expect([...copy.matchAll(/<note id="(n\d+)"/g)].map((m) => m[1])).toEqual(['n1', 'n2', 'n3']);
  });

  // Beams: b begins, c continues, e ends. Plain eighths in common time by half bars, broken by rests. Source: common practice.
  it('is beamed by the beat where the file has no beam', () => {
    const plain = scoreOf([
      attributes(2) +
        'CDEFGABC'
          .split('')
          .map((step) => eighth(`${step}5`))
          .join(''),
    ]);
    expect(beamsIn(engravingCopy(plain))).toBe('|b|c|c|e|b|c|c|e');
    const rest = scoreOf([
      attributes(2) + eighth('C5') + eighth('r') + eighth('E5') + eighth('F5') + note('G5', 4, { type: 'half' }),
    ]);
    expect(beamsIn(engravingCopy(rest))).toBe('|||b|e|');
    const compound = scoreOf([
      attributes(2, 0, '6/8') +
        'CDEFGA'
          .split('')
          .map((step) => eighth(`${step}5`))
          .join(''),
    ]);
    expect(beamsIn(engravingCopy(compound))).toBe('|b|c|e|b|c|e');
  });

  it('keeps the beams a file has', () => {
    const own = scoreOf([
      attributes(2) + eighth('C5', { beam: 'begin' }) + eighth('D5', { beam: 'end' }) + eighth('E5') + eighth('F5'),
    ]);
    expect(beamsIn(engravingCopy(own))).toBe('|b|e||');
  });

  // Divisions 2: a duration of 3 is a dotted quarter. Source: MusicXML 4.0, `duration`, `type`, `dot`.
  it('writes the value and the sign that a sparse file leaves out', () => {
    const copy = engravingCopy(scoreOf([attributes(2, 1) + note('F5', 3) + note('F5', 5)]));
    expect(copy).toContain('<type>quarter</type><dot/><accidental>natural</accidental>');
    expect(copy.match(/<accidental>/g)).toHaveLength(1);
  });

  it('leaves out the page, the player and the words sung', () => {
    const lyric = note('C5', 4).replace('</note>', '<lyric><text>la</text></lyric></note>');
    const credit = '<credit><credit-words>For Ada</credit-words></credit>';
    const copy = engravingCopy(
      scoreOf([`${attributes(1)}<print new-system="yes"/><sound tempo="60"/>${lyric}`], credit),
    );
    expect(copy).not.toMatch(/Ada|<print|<sound|<lyric|Flute/);
  });

  it('leaves out what would draw several bars as one', () => {
    const style = '<attributes><measure-style><multiple-rest>2</multiple-rest></measure-style></attributes>';
    const copy = engravingCopy(scoreOf([attributes(1) + note('C5', 4), style + note('r', 4), note('r', 4)]));
    expect(copy).not.toContain('measure-style');
    expect(copy.match(/<measure /g)).toHaveLength(3);
  });

  it('stays well-formed whatever words stand in the part', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
        const inXml = text
          .replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, '')
          .replace(/[&<>]/g, (c) => `&#${c.charCodeAt(0)};`);
        const words = `<direction><direction-type><words font-family="a &quot; b">${inXml}</words></direction-type></direction>`;
        const copy = engravingCopy(scoreOf([attributes(1) + words + note('C5', 4)]));
        expect(XMLValidator.validate(copy)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});
