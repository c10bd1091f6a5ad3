import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Excerpt, engraveExcerpt, type Notehead } from '../../src/engrave/engrave-excerpt.js';
import { type EngravedPart, engravePart } from '../../src/engrave/engrave-part.js';
import { readPath } from '../../src/engrave/read-path.js';
import { pathData } from '../../src/page/draw/path-data.js';
import { pointsAlong } from '../../src/page/path/points-along.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import { engravingCopy, readPart, type WrittenPitch } from '../../src/score/index.js';
import { attributes, direction, dynamic, note, scoreOf, wedge } from '../score/score-of.js';

const typesetter = typesetterIn();
const WIDTH = 385;

async function opened(bars: readonly string[]): Promise<EngravedPart> {
  return (await engravePart(engravingCopy(scoreOf(bars)))) as EngravedPart;
}
const excerptOf = (engraver: EngravedPart, from: number, to: number): Excerpt =>
  engraveExcerpt(engraver, typesetter, from, to, WIDTH) as Excerpt;

/** Places of all paths in one ink and way of drawing, as points. */
function points({ items }: Excerpt, wanted: 'fill' | 'stroke'): (readonly [number, number])[][] {
  return items.flatMap((item) => (item.kind === 'path' && item[wanted] !== undefined ? pointsAlong(item.path) : []));
}

const slur = (type: 'start' | 'stop') => `<slur type="${type}" number="1"/>`;
const quarters = (names: readonly string[]) => names.map((name) => note(name, 2, { type: 'quarter' })).join('');
const eighths = (names: readonly string[]) =>
  names
    .map((name, i) => note(name, 1, { type: 'eighth', beam: i === 0 ? 'begin' : i === 3 ? 'end' : 'continue' }))
    .join('');

describe('bars taken out of a long line', () => {
  it('look the same wherever in the piece they stand', async () => {
    const phrase = [
      quarters(['C5', 'D5', 'E5', 'F5']),
      eighths(['G5', 'F5', 'E5', 'D5']) + quarters(['C5', 'C5']),
      quarters(['A4', 'F5', 'D5', 'C5']),
    ];
    const long = Array.from({ length: 30 }, () => phrase).flat();
    const engraver = await opened([attributes(2) + long[0], ...long.slice(1)]);
    const [early, late] = [excerptOf(engraver, 3, 5), excerptOf(engraver, 87, 89)];
    const headsOf = ({ noteheads }: Excerpt) => [...noteheads.values()].map(({ x, y }) => [x, y].map(Math.round));
    expect(headsOf(late).slice(0, 10)).toEqual(headsOf(early).slice(0, 10));
    expect(early.barsOfSystems).toEqual([3]);
    expect(early.items.find(({ kind }) => kind === 'text')).toMatchObject({ text: '4' });
    expect(late.items.find(({ kind }) => kind === 'text')).toMatchObject({ text: '88' });
  });

  // Source: common practice, a line of music begins with the clef and key that hold there; positions on the staff: the
  // bass clef's second line from above is F3, the treble clef's second from below G4.
  it('begin with the clef and key that hold there', async () => {
    const clef = (sign: string, line: number) =>
      `<attributes><clef><sign>${sign}</sign><line>${line}</line></clef></attributes>`;
    const key = '<attributes><key><fifths>3</fifths></key></attributes>';
    const engraver = await opened([
      attributes(2, 0, '4/4', '<clef><sign>G</sign><line>2</line></clef>') + note('G4', 8, { type: 'whole' }),
      clef('F', 4) + note('F3', 8, { type: 'whole' }),
      note('F3', 8, { type: 'whole' }),
      key + note('F#3', 8, { type: 'whole' }),
      note('F#3', 8, { type: 'whole' }),
    ]);
    const lineOf = (bar: number): number => {
      const { noteheads, staff } = excerptOf(engraver, bar, bar);
      const [head] = [...noteheads.values()];
      return ((head?.y ?? 0) - staff[0]) / ((staff[1] - staff[0]) / 4);
    };
    expect([0, 1, 2, 4].map((bar) => Math.round(lineOf(bar) * 10) / 10)).toEqual([3, 1, 1, 1]);
    const widthOf = (bar: number) => [...excerptOf(engraver, bar, bar).noteheads.values()][0]?.x ?? 0;
    // Three sharps stand before the note where there were none.
    expect(widthOf(3)).toBeGreaterThan(widthOf(2) + 15);
    expect(Math.abs(widthOf(4) - widthOf(3))).toBeLessThan(8);
  });

  it('keep slurs, ties and wedges that go on outside, cut off at the ends', async () => {
    const tied = (type: 'start' | 'stop') =>
      note('C5', 4, { type: 'half', tie: [type], notations: `<tied type="${type}"/>` });
    const engraver = await opened([
      attributes(2) + wedge('crescendo') + note('E5', 8, { type: 'whole', notations: slur('start') }),
      quarters(['F5', 'E5', 'D5', 'C5']),
      note('E5', 4, { type: 'half', notations: slur('stop') }) + wedge('stop') + tied('start'),
      tied('stop') + note('C5', 4, { type: 'half' }),
    ]);
    const middle = excerptOf(engraver, 1, 1);
    const both = [...points(middle, 'fill'), ...points(middle, 'stroke')].flat();
    for (const [x] of both) expect(x).toBeGreaterThanOrEqual(-0.01);
    for (const [x] of both) expect(x).toBeLessThanOrEqual(middle.width + 0.3);
    // Two lines of the wedge reach the end of the bar, and the slur reaches it as an area with an outline.
    const far = (all: (readonly [number, number])[][]) =>
      all.filter((line) => line.some(([x]) => x > middle.width - 0.3) && line.some(([x]) => x < middle.width - 20));
    expect(far(points(middle, 'stroke')).length).toBeGreaterThanOrEqual(5 + 2);
    expect(middle.items.some((item) => item.kind === 'path' && item.fill && item.stroke)).toBe(true);
    const alone = await opened([attributes(2) + quarters(['F5', 'E5', 'D5', 'C5'])]);
    expect(excerptOf(alone, 0, 0).items.some((item) => item.kind === 'path' && item.fill && item.stroke)).toBe(false);
  });

  // Source: common practice in engraving, a beam ends at the outer edges of its first and last stem.
  it('are spread without tearing beams from their stems', async () => {
    const bar = eighths(['C5', 'D5', 'E5', 'F5']) + eighths(['G5', 'F5', 'E5', 'D5']);
    const engraver = await opened([attributes(2) + bar, bar, bar]);
    const excerpt = excerptOf(engraver, 0, 1);
    expect(excerpt.width).toBeCloseTo(WIDTH, 0);
    const stems = points(excerpt, 'stroke').flatMap(([a, b]) =>
      a !== undefined && b !== undefined && a[0] === b[0] && Math.abs(a[1] - b[1]) < 20 ? [a[0]] : [],
    );
    const beams = excerpt.items
      .flatMap((item) =>
        item.kind === 'path' && item.fill
          ? pathData(item.path)
              .split('Z')
              .filter((data) => data !== '' && !/[CS]/.test(data))
          : [],
      )
      .map((data) => pointsAlong(readPath(`${data}Z`)).flat())
      .filter((corners) => Math.max(...corners.map(([x]) => x)) - Math.min(...corners.map(([x]) => x)) > 20);
    expect(beams).toHaveLength(4);
    for (const corners of beams) {
      for (const x of [Math.min(...corners.map(([x]) => x)), Math.max(...corners.map(([x]) => x))])
        expect(Math.min(...stems.map((stem) => Math.abs(stem - x)))).toBeLessThan(0.4);
    }
    const xs = [...excerpt.noteheads.values()].map(({ x }) => x);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
  });

  it('show the rehearsal mark of their own first bar whole, and none of the next bar', async () => {
    const mark = direction('<rehearsal>Q</rehearsal>');
    const engraver = await opened([
      attributes(2) + note('B4', 8, { type: 'whole' }),
      mark + note('B4', 8, { type: 'whole' }),
    ]);
    const [before, own] = [excerptOf(engraver, 0, 0), excerptOf(engraver, 1, 1)];
    const overStaff = (excerpt: Excerpt) =>
      points(excerpt, 'stroke')
        .flat()
        .filter(([, y]) => y < excerpt.staff[0] - 1);
    expect(overStaff(before)).toEqual([]);
    const [xs, ys] = [overStaff(own).map(([x]) => x), overStaff(own).map(([, y]) => y)];
    const letter = own.items.find((item) => item.kind === 'text' && item.text === 'Q');
    expect(letter).toBeDefined();
    const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
    const width = letter?.kind === 'text' ? typesetter.widthOf('Q', letter.face, letter.size) : 0;
    expect(Math.abs(middle - ((letter?.kind === 'text' ? letter.x : 0) + width / 2))).toBeLessThan(1.5);
    expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(6);
  });

  // Source: common practice, marks of loudness stand close under the staff, lower only where notes are in the way.
  it('have their marks of loudness as near to the staff as their own notes allow', async () => {
    const engraver = await opened([
      attributes(2) + dynamic('mf') + quarters(['G4', 'G4', 'G4', 'G4']),
      dynamic('p') + quarters(['F3', 'F3', 'F3', 'F3']),
    ]);
    const underStaff = (bar: number): number => {
      const excerpt = excerptOf(engraver, bar, bar);
      return excerpt.height - excerpt.staff[1];
    };
    expect(underStaff(0)).toBeLessThan(20);
    expect(underStaff(1)).toBeGreaterThan(underStaff(0) + 8);
  });
});

describe('every score of the fixtures', () => {
  const folder = join(import.meta.dirname, '../../fixtures/scores/compared');
  const letters = ({ step, octave }: WrittenPitch): number => 7 * octave + 'CDEFGAB'.indexOf(step);

  // Source: common practice, half a staff space a letter. Under an octave line notes stand where they do not sound.
  it.each(readdirSync(folder))('%s has the notes of each bar in this bar, at their heights', async (file) => {
    const bytes = readFileSync(join(folder, file));
    const part = readPart(bytes);
    const engraver = (await engravePart(engravingCopy(bytes))) as EngravedPart;
    expect(engraver.bars).toHaveLength(part.printedBars);
    for (let bar = 0; bar < part.printedBars; bar++) {
      const { noteheads, width } = excerptOf(engraver, bar, bar);
      const notes = part.notes.filter(({ barIndex }) => barIndex === bar);
      for (const { printedId } of notes) expect(noteheads.get(printedId)?.x).toBeLessThanOrEqual(width);
      const heads = notes.map(({ printedId, written }) => ({ written, ...(noteheads.get(printedId) as Notehead) }));
      const [first] = heads;
      if (first === undefined || file.includes('octave-lines')) continue;
      // Grace notes are smaller than the others, and so is the space that goes with them.
      const staffSpace = Math.max(...heads.map(({ space }) => space));
      for (const head of heads) {
        const letter = letters(head.written) - letters(first.written);
        expect(head.y).toBeCloseTo(first.y - (letter * staffSpace) / 2, 0);
      }
    }
  });
});
