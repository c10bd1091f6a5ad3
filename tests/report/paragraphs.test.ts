import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setText } from '../../src/page/set-text.js';
import { Sheet } from '../../src/page/sheet.js';
import { STYLES } from '../../src/page/styles.js';
import { widthWithoutLonelyWord } from '../../src/page/width-without-lonely-word.js';
import { writeParagraph } from '../../src/page/write-paragraph.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';

const typesetter = typesetterIn();
const style = STYLES.body;
const WIDTH = 200;

/** The lines as they read. */
const linesOf = (text: string, width: number): string[] =>
  setText(typesetter, text, style, width).lines.map(({ runs }) => runs.map((run) => run.text).join(''));
/** All widths at which a line may end differently. */
const WIDTHS = Array.from({ length: 60 }, (_, i) => 80 + 3 * i);

// Common practice of typography (also DIN 5008, from memory): no break between a number and its unit.
describe('lines', () => {
  it.each(['12.4 dB', '440 Hz', '38 %', '0.2 s', '9 cents', '−1,5 dB', '48 percent', '15 Prozent', '24 Cent'])(
    'never end between %s',
    (measure) => {
      const text = `It was said that the sound had grown by ${measure}, and more was not asked for.`;
      const broken = WIDTHS.map((width) => linesOf(text, width));
      for (const lines of broken) expect(lines.some((line) => line.includes(measure))).toBe(true);
      expect(broken.some((lines) => lines.some((line) => line.startsWith(measure)))).toBe(true);
    },
  );

  it('keep a short remark in brackets whole', () => {
    for (const width of WIDTHS) {
      const lines = linesOf('Bar 12, beat 2½ (second time) and on', width);
      expect(lines.some((line) => line.includes('(second time)'))).toBe(true);
    }
  });

  it('take a name that is too long apart after its hyphens', () => {
    const name = 'Wolfeschlegelsteinhausenbergerdorff-Ammerschwihr-Ottensheim';
    expect(linesOf(name, WIDTH)).toEqual(['Wolfeschlegelsteinhausenbergerdorff-', 'Ammerschwihr-Ottensheim']);
    expect(linesOf('x'.repeat(200), WIDTH).length).toBeGreaterThan(3);
  });

  it('hold every letter, in order, and none is wider than it may be', () => {
    const word = fc.oneof(
      fc.constantFrom('12', '3.5', 'dB', 'Hz', '(second', 'time)', 'a-b-c', 'sound', 'F♯', '%', 's', '('),
      fc.string({ minLength: 1, maxLength: 40, unit: fc.constantFrom('a', 'é', '-', 'm') }),
    );
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 90, max: 400 }),
        (words, width) => {
          const text = words.join(' ');
          const set = setText(typesetter, text, style, width);
          const letters = set.lines.flatMap(({ runs }) => runs.map((run) => run.text)).join('');
          expect(letters.replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
          for (const line of set.lines) expect(line.width).toBeLessThanOrEqual(width + 0.001);
        },
      ),
    );
  });
});

describe('a paragraph', () => {
  const sheet = new Sheet({ typesetter, paper: 'a4', title: 'Lines', foot: 'Lines' });
  const lonely = (text: string, width: number) => {
    const { lines } = sheet.set(text, style, width);
    return lines.length > 1 && lines.at(-1)!.width < 0.16 * WIDTH;
  };
  const sentence = fc
    .array(fc.constantFrom('the', 'slur', 'breaks', 'before', 'this', 'note', 'gap', 'of', 'a', 'second', 'in'), {
      minLength: 8,
      maxLength: 40,
    })
    .map((words) => `${words.join(' ')} 33.`);

  it('never takes more lines to bring its last word company, and mostly does so', () => {
    let [alone, before] = [0, 0];
    fc.assert(
      fc.property(sentence, (text) => {
        const width = widthWithoutLonelyWord(sheet, text, style, WIDTH);
        expect(width).toBeLessThanOrEqual(WIDTH);
        expect(sheet.set(text, style, width).lines).toHaveLength(sheet.set(text, style, WIDTH).lines.length);
        if (lonely(text, WIDTH)) before += 1;
        if (lonely(text, width)) alone += 1;
      }),
      { numRuns: 300, seed: 5 },
    );
    expect(before).toBeGreaterThan(10);
    expect(alone).toBeLessThan(before / 3);
  });

  it('stays as it is where nothing is alone', () => {
    expect(widthWithoutLonelyWord(sheet, 'One line.', style, WIDTH)).toBe(WIDTH);
  });

  it('is written at the left edge of the page', () => {
    const page = new Sheet({ typesetter, paper: 'letter', title: 'Lines', foot: 'Lines', width: WIDTH });
    const top = page.y;
    writeParagraph(page, 'The slur breaks before this note: there is a gap of a tenth of a second.', style);
    expect(page.y - top).toBeCloseTo(2 * style.leading, 6);
    expect(page.width).toBe(WIDTH);
  });
});
