import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readDemoScore } from '../../src/demo/index.js';
import { shifted } from '../../src/engrave/shift-items.js';
import type { FindingKind } from '../../src/judge/index.js';
import { drawPdf } from '../../src/page/draw/draw-pdf.js';
import type { Item, PathItem, TextItem } from '../../src/page/drawing.js';
import { pointsAlong } from '../../src/page/path/points-along.js';
import { type FindingExcerpt, findingExcerpt } from '../../src/report/excerpt/finding-excerpt.js';
import { ReportSheet } from '../../src/report/report-sheet.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import type { TakeResult } from '../../src/result/index.js';
import { findingKindSchema, type ResultFinding } from '../../src/result/schema/take-result-schema.js';
import { wordsIn } from '../../src/words/words-in.js';
import { findingAt, opened, playedAsWritten, type Score } from '../helpers/marked-excerpts.js';
import { type Raster, rasters } from '../helpers/raster.js';

const WIDTH = 385;
const typesetter = typesetterIn();
const sheet = new ReportSheet({ typesetter, paper: 'a4', title: 'Marks', foot: 'Marks' });

/** Marks are drawn in the accent ink, the engraving in black. */
const isMark = (item: Item) => (item.kind === 'text' ? item.ink : (item.stroke ?? item.fill)) === 'accent';
const paths = (items: readonly Item[]) => items.filter((item): item is PathItem => item.kind === 'path');
const texts = (items: readonly Item[]) => items.filter((item): item is TextItem => item.kind === 'text');
const pointsOf = (item: PathItem) => pointsAlong(item.path).flat();
const ends = (item: PathItem): [number, number, number, number] => {
  const [first, last] = [
    pointsOf(item)[0] as readonly [number, number],
    pointsOf(item).at(-1) as readonly [number, number],
  ];
  return [...first, ...last];
};
function boxOf(item: PathItem) {
  const points = pointsOf(item);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

describe('pencil marks', () => {
  let demo: Score;
  let result: TakeResult;

  beforeAll(async () => {
    demo = await opened(readDemoScore());
    result = playedAsWritten(demo.part);
  });

  const shown = (finding: ResultFinding, changed: TakeResult = result): FindingExcerpt =>
    findingExcerpt(sheet, finding, { ...demo, result: changed }, WIDTH) as FindingExcerpt;
  const marks = (finding: ResultFinding, changed: TakeResult = result) => shown(finding, changed).items.filter(isMark);
  /** The head of a note in the excerpt of a finding: engraving items come first, moved by the same distance as the marks. */
  const headOf = (index: number, finding: ResultFinding, changed: TakeResult = result) => {
    const { barIndex, printedId } = demo.part.notes[index]!;
    const fits = (from: number) => demo.engrave(from, barIndex, WIDTH);
    const before = barIndex > 0 ? fits(barIndex - 1) : null;
    const excerpt = before !== null && before.barsOfSystems.length === 1 ? before : fits(barIndex);
    const head = excerpt!.noteheads.get(printedId)!;
    const moved = paths(shown(finding, changed).items)[0]!;
    const rise = boxOf(moved).top - boxOf(paths(excerpt!.items)[0]!).top;
    return { ...head, y: head.y + rise };
  };
  const heard = (index: number, away: number): TakeResult => ({
    ...result,
    notes: result.notes.map((note) =>
      note.index === index ? { ...note, status: 'other-pitch', playedMidi: note.soundingMidi + away } : note,
    ),
  });

  // The very note of the finding: bar 5, beat 2 of the étude is a B♭, a semitone higher a B. Source: the score.
  it('ring the very note and name what sounded in written pitch', () => {
    const finding = findingAt(demo.part, 'accidental', 20);
    expect(demo.part.notes[20]).toMatchObject({ bar: '5', beat: 2, written: { step: 'B', alter: -1 } });
    const drawn = marks(finding, heard(20, 1));
    const ring = boxOf(paths(drawn)[0]!);
    const [head, next] = [headOf(20, finding, heard(20, 1)), headOf(21, finding)];
    expect(Math.abs((ring.left + ring.right) / 2 - head.x)).toBeLessThan(1);
    expect(Math.abs((ring.top + ring.bottom) / 2 - head.y)).toBeLessThan(1);
    expect(ring.right).toBeLessThan(next.x);
    expect(texts(drawn).map(({ text }) => text)).toEqual(['(B)']);
    expect(texts(drawn)[0]!.baseline).toBeLessThan(ring.top);
  });

  it('say when the octave was another one', () => {
    const words = texts(marks(findingAt(demo.part, 'wrong-note', 20), heard(20, -12)));
    expect(words.map(({ text }) => text).join('')).toBe('(B♭, octave lower)');
  });

  it('point with a caret at the note that was left out, from below', () => {
    const finding = findingAt(demo.part, 'missed-note', 48);
    const [caret] = paths(marks(finding));
    const box = boxOf(caret!);
    const tip = pointsOf(caret!).find(([, y]) => y === box.top)!;
    expect(tip[0]).toBeCloseTo(headOf(48, finding).x, 1);
    expect(box.top).toBeGreaterThan(headOf(48, finding).y);
  });

  // Bar 11, beat 2: the added pitch is MIDI 72 sounding on a B♭ clarinet, written D (MIDI 1.0: middle C = 60; a tone higher).
  it('cross the place where a note was added, after the note it followed', () => {
    const finding = findingAt(demo.part, 'added-note', 55, { onset: 33.25 });
    const added = [{ onset: 33.25, offset: 33.4, midi: 72, afterIndex: 55 }];
    const drawn = marks(finding, { ...result, added });
    const [one, other] = paths(drawn).map(boxOf);
    expect(one).toEqual(other);
    expect(one!.left).toBeGreaterThan(headOf(55, finding).x);
    expect(texts(drawn).map(({ text }) => text)).toEqual(['(D)']);
  });

  // Common practice: sharp is up, flat is down.
  it.each([
    [38, 'too high', -1],
    [-34, 'too low', 1],
  ])('show a note %d cents away as %s', (value, words, way) => {
    const finding = findingAt(demo.part, 'note-out-of-tune', 37, { measured: { value, unit: 'cents' } });
    const drawn = marks(finding);
    const [x0, tail, x1, tip] = ends(paths(drawn)[0]!);
    expect(x0).toBe(x1);
    expect(Math.sign(tip - tail)).toBe(way);
    expect(x0).toBeCloseTo(headOf(37, finding).x, 1);
    expect(texts(drawn)[0]!.text).toBe(words);
  });

  it('point late entries to the right and early ones to the left, longer when they are further off', () => {
    const arrowOf = (kind: FindingKind, value: number) => {
      const [, shaft] = paths(marks(findingAt(demo.part, kind, 67, { measured: { value, unit: 's' } })));
      const [from, , to] = ends(shaft!);
      return to - from;
    };
    expect(arrowOf('late-entry', 0.3)).toBeGreaterThan(arrowOf('late-entry', 0.2));
    expect(arrowOf('early-entry', -0.2)).toBeLessThan(0);
  });

  // By definition: the divisions stand at the running sums of the shares, of the played bracket and of the written one.
  it('stretch the bracket of an uneven group as it was played', () => {
    const [shares, writtenShares] = [
      [0.5, 0.2, 0.3],
      [1 / 3, 1 / 3, 1 / 3],
    ];
    const measured = { value: 50, unit: '%', shares, writtenShares };
    const drawn = paths(marks(findingAt(demo.part, 'uneven-group', 59, { toIndex: 61, measured })));
    const level = drawn.filter((item) => ends(item)[1] === ends(item)[3]).map(boxOf);
    const [played, written] = level as [ReturnType<typeof boxOf>, ReturnType<typeof boxOf>];
    expect(played.top).toBeLessThan(written.top);
    expect([played.left, played.right]).toEqual([written.left, written.right]);
    const divisions = (top: number) =>
      drawn
        .filter((item) => ends(item)[0] === ends(item)[2] && boxOf(item).top === top && boxOf(item).bottom - top < 5.5)
        .map((item) => (ends(item)[0] - played.left) / (played.right - played.left))
        .slice(0, 4);
    for (const [i, sum] of [0, 0.5, 0.7, 1].entries()) expect(divisions(played.top)[i]).toBeCloseTo(sum, 2);
    for (const [i, sum] of [0, 1 / 3, 2 / 3, 1].entries()) expect(divisions(written.top)[i]).toBeCloseTo(sum, 2);
  });

  it('open the played wedge in proportion to the decibels, below the written one', () => {
    const hairpin = result.hairpins[0]!;
    const finding = findingAt(demo.part, 'weak-hairpin', hairpin.index, {
      toIndex: hairpin.toIndex,
      toBar: hairpin.toBar,
    });
    const growth = (riseDb: number) => {
      const changed = { ...result, hairpins: [{ ...hairpin, riseDb }, ...result.hairpins.slice(1)] };
      const [one, other] = paths(marks(finding, changed)).map(ends) as unknown as [number[], number[]];
      return Math.abs(other[3]! - one[3]!) - Math.abs(other[1]! - one[1]!);
    };
    expect(growth(8)).toBeCloseTo(2 * growth(4), 1);
    expect(growth(0)).toBeCloseTo(0, 2);
    expect(growth(-4)).toBeCloseTo(-growth(4), 1);
    const engraved = shown(finding).items.filter((item) => !isMark(item));
    const lowest = Math.max(...paths(engraved).map((item) => boxOf(item).bottom));
    for (const item of paths(marks(finding))) expect(boxOf(item).bottom).toBeGreaterThan(lowest);
  });

  it('set the two levels of a contrast apart by the decibels, the louder one higher', () => {
    const contrast = result.contrasts.find(({ bar }) => bar === '11')!;
    const finding = findingAt(demo.part, 'weak-contrast', contrast.index);
    const step = (differenceDb: number) => {
      const changed = { ...result, contrasts: [{ ...contrast, differenceDb }] };
      const [before, after] = paths(marks(finding, changed)).map(ends) as unknown as [number[], number[]];
      return after[1]! - before[1]!;
    };
    expect(step(4)).toBeLessThan(0);
    expect(step(8)).toBeCloseTo(2 * step(4), 1);
    expect(step(-4)).toBeCloseTo(-step(4), 1);
  });

  it('draw a held note against its written length in the measured ratio', () => {
    const fermata = demo.part.notes.find((note) => note.fermata)!.index;
    for (const value of [0.8, 2.2, 3.3]) {
      const finding = findingAt(demo.part, 'fermata-long', fermata, { measured: { value, unit: 'times' } });
      const [held, written] = paths(marks(finding)).map(boxOf) as [ReturnType<typeof boxOf>, ReturnType<typeof boxOf>];
      expect((held.right - held.left) / (written.right - written.left)).toBeCloseTo(value, 1);
    }
  });

  it('put the comma of a breath between its note and the next one', () => {
    const finding = findingAt(demo.part, 'breath-unmarked', 55);
    const comma = texts(marks(finding)).find(({ face }) => face === 'music')!;
    expect(comma.x).toBeGreaterThan(headOf(55, finding).x);
    expect(comma.x).toBeLessThan(headOf(56, finding).x);
  });

  it('strike through the slur before the note at which it broke', () => {
    const finding = findingAt(demo.part, 'slur-broken', 26);
    for (const item of paths(marks(finding))) {
      expect(boxOf(item).left).toBeGreaterThan(headOf(25, finding).x);
      expect(boxOf(item).right).toBeLessThan(headOf(26, finding).x);
    }
  });

  it('lead back from where the playing stopped to where it began again', () => {
    const finding = findingAt(demo.part, 'restart', 24, { toBar: '7' });
    const [, shaft] = paths(marks(finding));
    expect(ends(shaft!)[0]).toBeGreaterThan(ends(shaft!)[2]);
  });

  it('go over as many lines as a passage takes, the words once', () => {
    const finding = findingAt(demo.part, 'skipped-bars', 38, { toIndex: 66, toBar: '12' });
    const drawn = marks(finding);
    expect(paths(drawn).length).toBeGreaterThan(1);
    expect(texts(drawn).map(({ text }) => text)).toEqual(['not played']);
  });

  it('tell in words where they are and what they mean', () => {
    const finding = findingAt(demo.part, 'accidental', 20);
    expect(shown(finding).alternative).toMatch(/^Bars 4 to 5 of the part in notes/);
    expect(shown(finding).alternative).toContain(finding.text);
  });

  it('are left out where there is no place for them', () => {
    const source = { ...demo, result };
    const whole = findingAt(demo.part, 'tuning-off', 0);
    expect(findingExcerpt(sheet, whole, source, WIDTH)).toBeNull();
    const { index: _, ...nowhere } = findingAt(demo.part, 'accidental', 0);
    expect(findingExcerpt(sheet, nowhere, source, WIDTH)).toBeNull();
    expect(
      findingExcerpt(sheet, findingAt(demo.part, 'accidental', 3), { ...source, engrave: null }, WIDTH),
    ).toBeNull();
    const unknown = findingAt(demo.part, 'uneven-group', 59, { toIndex: 61, measured: { value: 50, unit: '%' } });
    expect(findingExcerpt(sheet, unknown, source, WIDTH)).toBeNull();
  });
});

/** Ink that is meant to lie on the notes: rings, and strokes through a slur. */
const TOUCHING: readonly FindingKind[] = ['accidental', 'wrong-note', 'slur-broken'];

function measuredFor(kind: FindingKind, notes: number): ResultFinding['measured'] {
  if (kind.startsWith('fermata')) return { value: 2.4, unit: 'times the written length' };
  if (kind === 'staccato-long') return { value: 84, unit: '%' };
  if (kind === 'note-out-of-tune') return { value: 30, unit: 'cents' };
  const even = Array.from({ length: notes }, () => 1 / notes);
  return { value: 0.2, unit: 's', shares: even, writtenShares: even };
}

describe.each(['demo', 'morning-round.musicxml', 'river-stones.musicxml', 'three-gates.xml'])('marks in %s', (name) => {
  const kinds = findingKindSchema.options.filter((kind) => wordsIn('en').caption(kind) !== null);
  const excerpts: { readonly kind: FindingKind; readonly index: number; readonly excerpt: FindingExcerpt }[] = [];

  beforeAll(async () => {
    const folder = join(import.meta.dirname, '../../fixtures/scores');
    const score = await opened(name === 'demo' ? readDemoScore() : readFileSync(join(folder, name)));
    const result = playedAsWritten(score.part);
    for (const [k, kind] of kinds.entries()) {
      for (let index = k % 7; index < score.part.notes.length; index += 7) {
        const last = Math.min(index + 2, score.part.notes.length - 1);
        const long = kind === 'uneven-group' || kind === 'skipped-bars';
        const stretch = kind === 'rushing' || kind === 'dragging';
        const toBar = score.part.notes[Math.min(index + (index % 40), score.part.notes.length - 1)]!.bar;
        const measured = measuredFor(kind, last - index + 1)!;
        const finding = findingAt(score.part, kind, index, {
          measured,
          ...(long ? { toIndex: last } : {}),
          ...(stretch ? { toBar } : {}),
        });
        const excerpt = findingExcerpt(sheet, finding, { ...score, result }, WIDTH);
        if (excerpt !== null) excerpts.push({ kind, index, excerpt });
      }
    }
  });

  it('stay in the column and above and below nothing but paper', () => {
    expect(excerpts.length).toBeGreaterThan(10);
    for (const { kind, index, excerpt } of excerpts) {
      for (const item of excerpt.items.filter(isMark)) {
        const [left, right, top, bottom] =
          item.kind === 'text'
            ? [
                item.x,
                item.x + typesetter.widthOf(item.text, item.face, item.size),
                item.baseline - (item.face === 'music' ? 0.4 : 0.6) * item.size,
                item.baseline,
              ]
            : Object.values(boxOf(item));
        expect([kind, index, left! > -20, right! < WIDTH + 20]).toEqual([kind, index, true, true]);
        expect([kind, index, top! > -2, bottom! < excerpt.height + 2]).toEqual([kind, index, true, true]);
      }
    }
  });

  // Painted by poppler, the engraving and the marks each alone: no point is dark in both.
  it('touch nothing that is printed', async () => {
    const apart = excerpts.filter(({ kind }) => !TOUCHING.includes(kind));
    const [printed, pencilled] = await Promise.all(
      [(item: Item) => !isMark(item), isMark].map((wanted) =>
        painted(apart.map(({ excerpt }) => excerpt.items.filter(wanted))),
      ),
    );
    for (const [page, { kind, index }] of apart.entries()) {
      const [a, b] = [printed![page]!.greys, pencilled![page]!.greys];
      const both = a.reduce((count, grey, i) => count + (grey < 128 && (b[i] as number) < 128 ? 1 : 0), 0);
      expect([kind, index, both]).toEqual([kind, index, 0]);
    }
  });
});

/** Each list of items on a page of its own. */
async function painted(lists: readonly (readonly Item[])[]): Promise<Raster[]> {
  const pdf = await drawPdf(
    {
      title: 'Marks',
      pageWidth: WIDTH + 60,
      pageHeight: 320,
      pages: lists.length,
      root: {
        tag: 'Document',
        children: lists.map((items, page) => ({ tag: 'P', children: [{ page, items: shifted(items, 30, 20) }] })),
      },
      artifacts: [],
    },
    new Date('2026-03-02T00:00:00Z'),
  );
  return rasters(pdf, 100);
}
