import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPart } from '../../src/score/index.js';
import { remarksOf } from '../helpers/remarks-of.js';
import { attributes, direction, note, scoreOf, words } from './score-of.js';

/**
 * Bars are written as short texts: `|:` and `:|` repeats (`:|3` plays three times), `[1` and `[1,2` begin an ending, `]` ends
 * it, other tokens are names of sound attributes or words.
 */
function routeOf(bars: readonly string[]): string {
  const part = readPart(scoreOf(bars.map((bar, i) => (i === 0 ? attributes(1) : '') + barXml(bar))));
  return part.bars.map((bar) => bar.bar).join(' ');
}

function barXml(text: string): string {
  const tokens = text.split(' ').filter((token) => token !== '');
  const left = tokens.map((token) => {
    if (token === '|:') return '<barline location="left"><repeat direction="forward"/></barline>';
    if (token.startsWith('['))
      return `<barline location="left"><ending number="${token.slice(1)}" type="start"/></barline>`;
    if (token.startsWith('sound:')) return `<sound ${token.slice(6).replace('=', '="')}"/>`;
    if (token === 'segno' || token === 'coda') return direction(`<${token}/>`);
    return '';
  });
  const right = tokens.map((token) => {
    if (token.startsWith(':|')) {
      const times = token.slice(2);
      return `<barline location="right"><repeat direction="backward"${times ? ` times="${times}"` : ''}/></barline>`;
    }
    if (token === ']') return '<barline location="right"><ending number="1" type="stop"/></barline>';
    if (token.startsWith('words:')) return words(token.slice(6).replaceAll('_', ' '));
    return '';
  });
  return left.join('') + note('C4', 4) + right.join('');
}

// MusicXML 4.0, repeat and ending: times "indicates the number of times the repeated section is played"; default twice.
describe('repeats and endings', () => {
  test.each([
    ['no repeat', ['', '', ''], '1 2 3'],
    ['repeat from the start', ['', ':|', ''], '1 2 1 2 3'],
    ['repeat with both signs', ['', '|:', ':|', ''], '1 2 3 2 3 4'],
    ['three times', ['|:', ':|3', ''], '1 2 1 2 1 2 3'],
    ['one bar repeated', ['', '|: :|', ''], '1 2 2 3'],
    ['two sections', ['|:', ':|', '|:', ':|'], '1 2 1 2 3 4 3 4'],
    // common practice: a repeat without a beginning goes back to the end of the last repeated section
    ['two sections, the second without a beginning', ['', ':|', '', ':|'], '1 2 1 2 3 4 3 4'],
    ['nested', ['|:', '|: :|', ':|', ''], '1 2 2 3 1 2 2 3 4'],
    ['first and second ending', ['|:', '[1 :| ]', '[2 ]', ''], '1 2 1 3 4'],
    ['endings of two bars', ['', '[1', ':| ]', '[2', ']', ''], '1 2 3 1 4 5 6'],
    ['three endings', ['|:', '[1 :| ]', '[2 :| ]', '[3 ]'], '1 2 1 3 1 4'],
    ['one ending for two passes', ['|:', '[1,2 :| ]', '[3 ]', ''], '1 2 1 2 1 3 4'],
    [
      'a second ending that is closed with a repeat sign is not played again',
      ['|:', '[1 :| ]', '[2 :| ]', ''],
      '1 2 1 3 4',
    ],
    ['a second ending without a first is played', ['|:', '[2 :| ]', ''], '1 2 1 2 3'],
    ['a section after endings', ['|:', '[1 :| ]', '[2 ]', '|:', '[1 :| ]', '[2 ]'], '1 2 1 3 4 5 4 6'],
    ['endings within a nested repeat', ['|:', '|:', '[1 :| ]', '[2 ]', ':|'], '1 2 3 2 4 5 1 2 3 2 4 5'],
  ])('%s', (_name, bars, expected) => {
    expect(routeOf(bars)).toBe(expected);
  });
});

// MusicXML 4.0, sound: dacapo, dalsegno, segno, coda, tocoda, fine. Without repeats after the jump: common practice.
describe('D.C., D.S., Fine, Coda', () => {
  test.each([
    ['da capo al fine', ['', 'sound:fine=yes', '', 'sound:dacapo=yes'], '1 2 3 4 1 2'],
    ['the same in words', ['', 'words:Fine', '', 'words:D.C._al_Fine'], '1 2 3 4 1 2'],
    ['words written out', ['', 'words:FINE', '', 'words:Da_Capo_al_Fine'], '1 2 3 4 1 2'],
    ['da capo without an end plays to the end once', ['', '', 'words:D.C.'], '1 2 3 1 2 3'],
    ['da capo without repeats', ['|: :|', 'sound:fine=yes', 'sound:dacapo=yes'], '1 1 2 3 1 2'],
    [
      'da capo with repeats when the words say so',
      ['|: :|', 'words:Fine', 'words:D.C._al_Fine_with_repeats'],
      '1 1 2 3 1 1 2',
    ],
    ['da capo takes the last ending', ['|:', '[1 :| ]', '[2 ] words:Fine', 'words:D.C._al_Fine'], '1 2 1 3 4 1 3'],
    ['da capo leaves open repeats behind', [':|', '|:', 'words:D.C._with_repeats'], '1 1 2 3 1 1 2 3'],
    ['dal segno', ['', 'sound:segno=a', 'sound:fine=yes', 'sound:dalsegno=a'], '1 2 3 4 2 3'],
    ['dal segno in words and signs', ['', 'segno', 'words:Fine', 'words:D.S._al_Fine'], '1 2 3 4 2 3'],
    ['two segni', ['sound:segno=a', 'sound:segno=b', 'sound:fine=yes', 'sound:dalsegno=a'], '1 2 3 4 1 2 3'],
    [
      'dal segno al coda',
      ['', 'sound:segno=s', 'sound:tocoda=c', '', 'sound:dalsegno=s', 'sound:coda=c', ''],
      '1 2 3 4 5 2 3 6 7',
    ],
    [
      'the same in words and signs',
      ['', 'segno', 'words:To_Coda', '', 'words:D.S._al_Coda', 'coda', ''],
      '1 2 3 4 5 2 3 6 7',
    ],
    ['two coda signs without words', ['', 'coda', '', 'words:D.C._al_Coda', 'coda', ''], '1 2 3 4 1 2 5 6'],
    ['the jump waits for the repeat', ['|:', 'sound:dacapo=yes :|'], '1 2 1 2 1 2'],
    ['fine is not the end before the jump', ['sound:fine=yes', ''], '1 2'],
    [
      'al fine passes the way to the coda',
      ['words:To_Coda', 'words:Fine', 'words:D.C._al_Fine', 'words:Coda'],
      '1 2 3 1 2',
    ],
  ])('%s', (_name, bars, expected) => {
    expect(routeOf(bars)).toBe(expected);
  });

  test('what leads nowhere is remarked on', () => {
    const part = readPart(scoreOf([attributes(1) + note('C4', 4), note('C4', 4) + words('D.S.')]));
    expect(part.bars).toHaveLength(2);
    expect(remarksOf(part)).toContain('Bar 2: D.S. is written, but there is no segno.');
  });
});

test('passes count how often a bar was reached', () => {
  const part = readPart(scoreOf([attributes(1) + barXml('|:'), barXml(':|'), barXml('words:D.C.')]));
  expect(part.bars.map((b) => `${b.bar}/${b.pass}`).join(' ')).toBe('1/1 2/1 1/2 2/2 3/1 1/3 2/3 3/2');
  expect(part.notes.map((n) => n.printedId)).toEqual(['n1', 'n2', 'n1', 'n2', 'n3', 'n1', 'n2', 'n3']);
});

// Law: whatever signs stand where, the order ends, begins at the first bar, and passes count up without gaps.
test('any mixture of signs comes to an end', () => {
  const token = fc.constantFrom(
    '',
    '|:',
    ':|',
    ':|3',
    '[1',
    '[2',
    ']',
    'segno',
    'coda',
    'words:D.C.',
    'words:D.S._al_Coda',
    'words:Fine',
    'words:To_Coda',
  );
  fc.assert(
    fc.property(fc.array(fc.array(token, { maxLength: 3 }), { minLength: 1, maxLength: 10 }), (bars) => {
      const part = readPart(
        scoreOf(bars.map((tokens, i) => (i === 0 ? attributes(1) : '') + barXml(tokens.join(' ')))),
      );
      const reached = new Map<number, number>();
      for (const bar of part.bars) {
        expect(bar.pass).toBe((reached.get(bar.barIndex) ?? 0) + 1);
        reached.set(bar.barIndex, bar.pass);
      }
      expect(part.bars.length).toBeLessThanOrEqual(20_000);
      expect(part.notes).toHaveLength(part.bars.length);
    }),
    { numRuns: 200 },
  );
});
