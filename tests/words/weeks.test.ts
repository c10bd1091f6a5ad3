import { describe, expect, it } from 'vitest';
import { FINDING_KINDS } from '../../src/judge/index.js';
import { MEASURE_IDS } from '../../src/standards/index.js';
import { wordsIn } from '../../src/words/words-in.js';

const { figure, list, missingWeeks, told } = wordsIn('en').weeks;

describe.each(['en', 'de'] as const)('how a player stands, in %s', (language) => {
  const { goal, topic } = wordsIn(language).weeks;
  const kinds = FINDING_KINDS.filter((kind) => kind !== 'went-well');

  // Source: common practice: a note between lessons fits one line, and is read at a glance.
  it('has for every kind a short topic and a goal of one sentence that fits a line', () => {
    for (const kind of kinds) {
      const said = [goal({ about: 'bars', kind, bars: ['9', '10'] }), goal({ about: 'throughout', kind })];
      for (const text of said)
        expect([text, text.length < 75, /^\p{Lu}.*[^.]\.$/u.test(text)]).toEqual([text, true, true]);
      for (const bars of [[], ['4'], ['4', '14']]) {
        const told = topic(kind, bars);
        expect([told, told.length < 55, /^\p{Ll}/u.test(told)]).toEqual([told, true, true]);
        for (const bar of bars) expect(told).toContain(bar);
      }
    }
    for (const measure of MEASURE_IDS) expect(goal({ about: 'measure', measure })).toMatch(/^\p{Lu}.{5,60}\.$/u);
  });
});

describe('words over weeks', () => {
  it('name weeks one by one, and long rows of them as a span', () => {
    const all = ['2026-03-02', '2026-03-09', '2026-03-16', '2026-03-23', '2026-04-13', '2026-04-20'];
    expect(missingWeeks([], all)).toBeNull();
    expect(missingWeeks(['2026-03-09'], all)).toBe('No take of this étude in the week of 9 March.');
    expect(missingWeeks(['2026-03-09', '2026-03-16'], all)).toMatch(/the weeks of 9 March and 16 March\.$/);
    expect(missingWeeks([all[0], all[2], all[3], all[4]] as string[], all)).toMatch(
      /the weeks of 2 March and 16 March to 13 April\.$/,
    );
  });

  it('join names as a sentence does', () => {
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(list)).toEqual(['', 'a', 'a and b', 'a, b and c']);
  });

  it('show days without the year', () => {
    expect([
      wordsIn('en').day('2026-03-02'),
      wordsIn('en').shortDay('2026-05-31'),
      wordsIn('en').shortDay('soon'),
    ]).toEqual(['2 March', '31 May', 'soon']);
  });

  it('tell every change with both numbers, true minus signs, and the day', () => {
    for (const measure of MEASURE_IDS) {
      for (const verdict of ['better', 'worse', 'different'] as const) {
        const said = told({ measure, verdict, fromDay: '2026-03-02', from: -12, to: 34 });
        expect(said).toMatch(/^\p{Lu}[^:]+: .*34.*\(2 March: −12\)\.$/u);
      }
    }
    expect([figure('tuning', 4.2), figure('tuning', -0.2), figure('stops', 1)]).toEqual(['+4', '0', '1']);
  });
});
