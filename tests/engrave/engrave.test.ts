import { beforeAll, describe, expect, it } from 'vitest';
import { readDemoScore } from '../../src/demo/index.js';
import { type Excerpt, engraveExcerpt } from '../../src/engrave/engrave-excerpt.js';
import { type EngravedPart, engravePart } from '../../src/engrave/engrave-part.js';
import { readPath } from '../../src/engrave/read-path.js';
import { readTransform } from '../../src/engrave/read-transform.js';
import { shifted } from '../../src/engrave/shift-items.js';
import { pathData } from '../../src/page/draw/path-data.js';
import { combined, mapped } from '../../src/page/path/affine-map.js';
import { lineThrough } from '../../src/page/path/line-through.js';
import { mapPath } from '../../src/page/path/map-path.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import { engravingCopy, type Part, readPart, type WrittenPitch } from '../../src/score/index.js';
import { attributes, note, scoreOf } from '../score/score-of.js';

const typesetter = typesetterIn();
const WIDTH = 385;

async function engraved(bytes: Uint8Array): Promise<EngravedPart> {
  return (await engravePart(engravingCopy(bytes))) as EngravedPart;
}

/** Letters above C0. Source: the staff has a place for every letter, sharps and flats on the place of their letter. */
const places = ({ step, octave }: WrittenPitch): number => 7 * octave + 'CDEFGAB'.indexOf(step);

describe('an excerpt', () => {
  let part: Part;
  let engraver: EngravedPart;
  const excerpt = (from: number, to: number): Excerpt =>
    engraveExcerpt(engraver, typesetter, from, to, WIDTH) as Excerpt;

  beforeAll(async () => {
    part = readPart(readDemoScore());
    engraver = await engraved(readDemoScore());
  });

  it('holds the notes of its bars and no others', () => {
    for (const [from, to] of [
      [0, 0],
      [3, 4],
      [16, 19],
    ] as const) {
      const wanted = part.notes
        .filter(({ barIndex }) => barIndex >= from && barIndex <= to)
        .map((one) => one.printedId);
      const { noteheads } = excerpt(from, to);
      for (const id of wanted) expect(noteheads.has(id)).toBe(true);
      // A tied note is one note to play and two on the page.
      expect(noteheads.size).toBe(wanted.length + (from <= 16 && to >= 17 ? 1 : 0));
    }
  });

  // Half a staff space a letter, upwards, in written pitch. Source: common practice notation.
  it('puts noteheads where their written pitch belongs, from left to right', () => {
    const { noteheads } = excerpt(10, 12);
    const notes = part.notes.filter(({ printedId }) => noteheads.has(printedId));
    const heads = notes.map(({ printedId }) => noteheads.get(printedId) as { x: number; y: number; space: number });
    const [first] = heads as [(typeof heads)[0]];
    const lowest = places(part.notes[notes[0]?.index ?? 0]?.written as WrittenPitch);
    // Six, eight and five notes stand in these bars of the page.
    expect(notes).toHaveLength(19);
    for (const [i, { written }] of notes.entries()) {
      const expected = first.y - ((places(written) - lowest) * first.space) / 2;
      expect(heads[i]?.y).toBeCloseTo(expected, 1);
      if (i > 0) expect(heads[i]?.x).toBeGreaterThan(heads[i - 1]?.x as number);
    }
  });

  it('shows the accidental to the left of the head it belongs to', () => {
    const { noteheads } = excerpt(3, 3);
    const [plain, signed] = part.notes.filter(({ bar }) => bar === '4').map((one) => noteheads.get(one.printedId));
    expect((plain?.x ?? 0) - (plain?.left ?? 0)).toBeLessThan(4);
    expect((signed?.x ?? 0) - (signed?.left ?? 0)).toBeGreaterThan(5);
  });

  it('stays within its width and inside its own box', () => {
    for (const [from, to] of [
      [0, 2],
      [8, 10],
      [0, 19],
    ] as const) {
      const { items, width, height, noteheads } = excerpt(from, to);
      expect(width).toBeLessThanOrEqual(WIDTH + 0.5);
      for (const { x, y } of noteheads.values()) {
        expect([x > 0, x < width, y > 0, y < height]).toEqual([true, true, true, true]);
      }
      // The number of a system's first bar is centred over its beginning.
      for (const item of items) if (item.kind === 'text') expect(item.x).toBeGreaterThan(-6);
    }
  });

  it('is the same every time, whatever was engraved in between', async () => {
    const once = excerpt(3, 5);
    const other = await engraved(scoreOf([attributes(1) + note('C5', 4, { type: 'whole' })]));
    expect(engraveExcerpt(other, typesetter, 0, 0, WIDTH)?.noteheads.size).toBe(1);
    expect(excerpt(3, 5)).toEqual(once);
  });

  it('is null where there is no such bar', () => {
    expect(engraveExcerpt(engraver, typesetter, 20, 21, WIDTH)).toBeNull();
    expect(engraveExcerpt(engraver, typesetter, 18, 25, WIDTH)).toBeNull();
  });
});

describe('a document the engraver does not accept', () => {
  it('is null and harms nothing', async () => {
    expect(await engravePart('no music')).toBeNull();
    expect(await engravePart('<score-partwise><part')).toBeNull();
    const engraver = await engraved(readDemoScore());
    expect(engraveExcerpt(engraver, typesetter, 0, 0, WIDTH)).not.toBeNull();
  });
});

describe('path data of the engraver', () => {
  it('with a command the engraver does not use is refused', () => {
    expect(() => readPath('M0 0A5 5 0 1 0 10 0')).toThrow('A');
    expect(() => readPath('M0 0Q1 1 2 0')).toThrow('Q');
  });

  // By hand from SVG 2, path data: lower case is relative, H and V take one number, M goes on as L.
  it.each([
    ['M1 2L3 4', 'M10 20L30 40'],
    ['m1,2 3,4', 'M10 20L40 60'],
    ['M1 1h2v3H0V0z', 'M10 10L30 10L30 40L0 40L0 0Z'],
    ['M1 1c1 0 2 1 2 2s-1 2-2 2', 'M10 10C20 10 30 20 30 30S20 50 10 50'],
    ['M0 0zl1 1', 'M0 0ZL10 10'],
    ['M.5-.5L1e1 0', 'M5 -5L100 0'],
  ])('%s ten times larger', (d, expected) => {
    expect(pathData(mapPath(readPath(d), [10, 0, 0, 10, 0, 0]))).toBe(expected);
  });

  it('moves items by a distance', () => {
    const [text, path] = shifted(
      [
        { kind: 'text', x: 1, baseline: 2, text: 'a', face: 'regular', size: 9, ink: 'text' },
        { kind: 'path', path: readPath('M1 2H3'), stroke: 'text' },
      ],
      10,
      20,
    );
    expect([text, path]).toMatchObject([
      { x: 11, baseline: 22 },
      {
        path: lineThrough([
          [11, 22],
          [13, 22],
        ]),
      },
    ]);
  });

  // SVG 2: the transforms of a list apply from right to left; rotate turns clockwise on the page.
  it('reads transform lists', () => {
    expect(mapped(readTransform('translate(10, 20) scale(2)'), 1, 1)).toEqual([12, 22]);
    expect(mapped(readTransform('scale(1,-1)'), 3, 4)).toEqual([3, -4]);
    expect(mapped(readTransform('matrix(1 2 3 4 5 6)'), 1, 1)).toEqual([9, 12]);
    const [x, y] = mapped(readTransform('rotate(90 1 1)'), 2, 1);
    expect([x, y].map((value) => Math.round(value * 1e6) / 1e6)).toEqual([1, 2]);
    expect(combined([1, 0, 0, 1, 5, 6], [2, 0, 0, 2, 0, 0])).toEqual([2, 0, 0, 2, 5, 6]);
  });
});
