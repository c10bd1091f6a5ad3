import { beforeAll, describe, expect, it } from 'vitest';
import { applyBrief, readBrief } from '../../src/brief/index.js';
import { readDemoScore } from '../../src/demo/index.js';
import { engraveExcerpt, engraveLines, engravePart } from '../../src/engrave/index.js';
import { boundsOf, type DrawingElement, type Item, type PathItem, type TextItem } from '../../src/page/index.js';
import { layoutStudySheet } from '../../src/report/study/layout-study-sheet.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';
import { type StudyPlan, studyPlan } from '../../src/study/index.js';
import { attributes, note, scoreOf } from '../score/score-of.js';

const typesetter = typesetterIn('en');
/** Points between the margins of A4. Source: ISO 216, less the margins of the sheet. */
const WIDTH = 595.28 - 2 * 54;

interface Laid {
  readonly plan: StudyPlan;
  readonly part: Part;
  readonly figures: readonly DrawingElement[];
  readonly lines: ReturnType<typeof engraveLines>;
}

async function laid(score: Uint8Array, page = ''): Promise<Laid> {
  const read = readPart(score);
  const brief = readBrief(page, read);
  const [plan, part] = [studyPlan(read, brief), applyBrief(read, brief)];
  const engraved = await engravePart(engravingCopy(score));
  if (engraved === null) throw new Error('not engraved');
  const engrave = (from: number, to: number, width: number) => engraveExcerpt(engraved, typesetter, from, to, width);
  const drawing = layoutStudySheet({ plan, part, paper: 'a4' }, typesetter, engrave);
  const last = Math.max(...part.bars.map(({ barIndex }) => barIndex));
  return {
    plan,
    part,
    figures: (drawing.root.children as DrawingElement[]).filter(({ tag }) => tag === 'Figure'),
    lines: engraveLines(engrave, 0, last, WIDTH),
  };
}

const itemsOf = (figure: DrawingElement): Item[] =>
  figure.children.flatMap((child) => ('items' in child ? [...child.items] : []));
const pencilText = (items: readonly Item[]) =>
  items.filter((item): item is TextItem => item.kind === 'text' && item.ink === 'accent');
const rings = (items: readonly Item[]) =>
  items
    .filter((item): item is PathItem => item.kind === 'path' && item.stroke === 'accent' && item.dash === undefined)
    .map(({ path }) => boundsOf(path));
/** Letters reach about so far above their line, shares of their size. Source: common practice in type. */
const boxOf = ({ x, baseline, text, face, size }: TextItem) => ({
  left: x,
  right: x + typesetter.widthOf(text, face, size),
  top: baseline - 0.7 * size,
  bottom: baseline,
});

const sixteenths = (names: readonly (readonly [string, string?])[]) =>
  names
    .map(([name, accidental]) => note(name, 1, { type: '16th', ...(accidental === undefined ? {} : { accidental }) }))
    .join('');
const filled = (first: readonly (readonly [string, string?])[]) =>
  sixteenths([...first, ...Array.from({ length: 16 - first.length }, () => ['A5'] as const)]);

describe('numbers over ringed notes', () => {
  let figure: DrawingElement;

  beforeAll(async () => {
    // Bars of sixteen notes fill a line each, so the second trap stands on another line than the first.
    const bars = [
      attributes(4) + filled([['F#5', 'sharp'], ['G5'], ['F#5']]),
      filled([['A5'], ['A5'], ['A5'], ['A5'], ['A5'], ['A5'], ['F5']]),
      filled([['A5']]),
    ];
    const { plan, figures } = await laid(scoreOf(bars));
    expect(plan.traps.map(({ bar, kind }) => [bar, kind])).toEqual([
      ['1', 'dropped-within-bar'],
      ['2', 'carried-past-barline'],
    ]);
    figure = figures.find(({ alternative }) => alternative?.includes('with rings around')) as DrawingElement;
  });

  it('stand over their own note, on the line of that note', () => {
    const items = itemsOf(figure);
    const numbers = pencilText(items);
    expect(numbers.map(({ text }) => text)).toEqual(['1', '2']);
    const around = rings(items);
    expect(around).toHaveLength(2);
    for (const [i, { x, baseline, size }] of numbers.entries()) {
      const ring = around[i] as (typeof around)[number];
      const gap = ring.top - baseline;
      expect(Math.abs(x + size / 4 - (ring.left + ring.right) / 2)).toBeLessThan(3);
      // nearer than one staff is high (four spaces of 4.4 points), and not in the ring
      expect([gap >= 0, gap < 2 * 4 * 4.4]).toEqual([true, true]);
    }
  });
});

describe('the étude with pencil marks', () => {
  let sheet: Laid;
  let shown: readonly DrawingElement[];

  beforeAll(async () => {
    sheet = await laid(readDemoScore());
    shown = sheet.figures.filter(({ alternative }) => /[Pp]encil mark/.test(alternative ?? ''));
  });

  it('shows all bars once, line by line', () => {
    expect(shown).toHaveLength(sheet.lines.length);
    const heads = sheet.lines.reduce((sum, { excerpt }) => sum + excerpt.noteheads.size, 0);
    expect(heads).toBeGreaterThanOrEqual(new Set(sheet.part.notes.map(({ printedId }) => printedId)).size);
  });

  it('rings every note that is easily misread, on the line in which it stands', () => {
    const ringed = new Set(sheet.plan.traps.filter(({ rank }) => rank < 3).flatMap(({ printedIds }) => printedIds));
    for (const [i, { excerpt }] of sheet.lines.entries()) {
      const here = [...ringed].filter((id) => excerpt.noteheads.has(id));
      expect(rings(itemsOf(shown[i] as DrawingElement))).toHaveLength(here.length);
    }
  });

  it('writes full breaths, holds, steps and ends of hairpins beside the staff, where nothing else is written', () => {
    const texts = shown.flatMap((figure) => pencilText(itemsOf(figure)).map(({ text }) => text));
    const { breaths, fermatas, hairpins } = sheet.plan;
    const wanted = breaths.filter(({ kind, from }) => kind === 'full' || from === 'rest').length;
    expect(texts.filter((text) => text.endsWith('breath'))).toHaveLength(wanted);
    expect(texts.filter((text) => text.startsWith('hold'))).toHaveLength(fermatas.length);
    expect(texts.filter((text) => text === 'arrive here')).toHaveLength(hairpins.length);
    expect(wanted + fermatas.length + hairpins.length).toBeGreaterThan(4);
    for (const figure of shown) {
      const [left, top, right, bottom] = figure.box as [number, number, number, number];
      const boxes = pencilText(itemsOf(figure)).map(boxOf);
      for (const [i, box] of boxes.entries()) {
        expect(box.left >= left - 0.5 && box.right <= right + 0.5).toBe(true);
        expect(box.top >= top - 0.5 && box.bottom <= bottom + 0.5).toBe(true);
        for (const other of boxes.slice(i + 1)) {
          const apart =
            other.left >= box.right || other.right <= box.left || other.top >= box.bottom || other.bottom <= box.top;
          expect(apart).toBe(true);
        }
      }
    }
  });

  it('marks the bars a teacher wants watched', async () => {
    const page = 'watch:\n  - { bar: 9, toBar: 10, reason: "Keep the triplets equal." }';
    const { figures } = await laid(readDemoScore(), page);
    const marked = figures.filter((figure) => pencilText(itemsOf(figure)).some(({ text }) => text === 'watch'));
    expect(marked.map(({ alternative }) => alternative)).toEqual([expect.stringMatching(/bar 9, beat 1, watch/)]);
  });

  it('colours no note: what is engraved is all in the ink of the text', () => {
    for (const [i, { excerpt }] of sheet.lines.entries()) {
      const inks = new Set(excerpt.items.map((item) => (item.kind === 'text' ? item.ink : (item.stroke ?? item.fill))));
      expect([...inks]).toEqual(['text']);
      const plain = itemsOf(shown[i] as DrawingElement).filter((item) =>
        item.kind === 'text' ? item.ink === 'text' : (item.stroke ?? item.fill) === 'text',
      );
      expect(plain).toHaveLength(excerpt.items.length);
    }
  });
});

describe('tonguing and slurring', () => {
  it('is shown in notes, a bar a pattern, and told where it cannot be seen', async () => {
    const { plan, figures } = await laid(readDemoScore());
    const bars = figures.filter(({ alternative }) => alternative?.includes('shown in notes'));
    expect(bars.length).toBe(Math.min(6, plan.articulation.length));
    expect(bars.length).toBeGreaterThan(1);
    for (const { alternative } of bars) expect(alternative).toMatch(/slurred|tongued|short/);
  });
});
