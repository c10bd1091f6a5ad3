import { beforeAll, describe, expect, it } from 'vitest';
import { readDemoScore } from '../../src/demo/index.js';
import { engravePart } from '../../src/engrave/engrave-part.js';
import type { FindingKind } from '../../src/judge/index.js';
import type { Item, PathItem, TextItem } from '../../src/page/drawing.js';
import { pointsAlong } from '../../src/page/path/points-along.js';
import { excerptLines } from '../../src/report/excerpt/excerpt-lines.js';
import { findingExcerpt } from '../../src/report/excerpt/finding-excerpt.js';
import { tempoBars } from '../../src/report/excerpt/marks/tempo-bars.js';
import { drawTakeReport } from '../../src/report/index.js';
import { ReportSheet } from '../../src/report/report-sheet.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import type { TakeResult } from '../../src/result/index.js';
import type { ResultFinding } from '../../src/result/schema/take-result-schema.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';
import { findingAt, opened, playedAsWritten, type Score } from '../helpers/marked-excerpts.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { attributes, note, scoreOf } from '../score/score-of.js';

const WIDTH = 385;
const typesetter = typesetterIn();
const sheet = new ReportSheet({ typesetter, paper: 'a4', title: 'Marks', foot: 'Marks' });

/** A finding about bars, as the judge of tempo makes it: without a note. */
function overBars(part: Part, kind: FindingKind, bar: string, toBar?: string, pass = 1): ResultFinding {
  const { index: _, beat: __, ...found } = findingAt(part, kind, 0, { criterion: 'tempo', weight: 'watch' });
  return { ...found, bar, pass, ...(toBar === undefined ? {} : { toBar }) };
}

/** Each bar two quarters a minute faster than the one before, from 92 on. */
function climbing(part: Part): TakeResult {
  const bars = part.bars.map(({ bar, pass, startQuarters }, i) => ({
    ...{ bar, pass, startQuarters, quarterBpm: 92 + 2 * i },
  }));
  return { ...playedAsWritten(part), tempo: { markedQuarterBpm: 92, playedQuarterBpm: 78.4, bars } };
}

const isMark = (item: Item) => (item.kind === 'text' ? item.ink : (item.stroke ?? item.fill)) === 'accent';
const texts = (items: readonly Item[]) => items.filter((item): item is TextItem => item.kind === 'text');
const paths = (items: readonly Item[]) => items.filter((item): item is PathItem => item.kind === 'path');
const points = (item: PathItem) => pointsAlong(item.path).flat();
/** Barbs are two lines that meet in the point of the arrow. */
const tips = (items: readonly Item[]) =>
  paths(items)
    .map(points)
    .flatMap((corners) => (corners.length === 4 ? [corners[1]!] : []));
const shafts = (items: readonly Item[]) =>
  paths(items)
    .map(points)
    .filter((corners) => corners.length === 2);

describe('the bars that let a tempo be seen', () => {
  const part = readPart(readDemoScore());
  const shown = (finding: ResultFinding) => tempoBars(finding, part).map(({ bars }) => bars.map(({ bar }) => bar));

  it('are all of a short stretch, the ends of a long one, the beginning of the whole take', () => {
    expect(shown(overBars(part, 'rushing', '3', '5'))).toEqual([['3', '4', '5']]);
    expect(shown(overBars(part, 'dragging', '1', '20'))).toEqual([
      ['1', '2'],
      ['19', '20'],
    ]);
    expect(shown(overBars(part, 'off-tempo', '1'))).toEqual([['1', '2']]);
    expect(shown(overBars(part, 'rushing', 'no such bar', '5'))).toEqual([]);
  });

  // Bars 1 to 4, all repeated: played as 1 2 3 4 1 2 3 4. Common practice of repeat signs.
  it('follow the playing through a repeat', () => {
    const bar = ['C5', 'D5', 'E5', 'F5'].map((pitch) => note(pitch, 1, { type: 'quarter' })).join('');
    const repeat = '<barline location="right"><repeat direction="backward"/></barline>';
    const repeated = readPart(scoreOf([attributes(1) + bar, bar, bar, bar + repeat]));
    const named = (finding: ResultFinding) =>
      tempoBars(finding, repeated).map(({ bars }) => bars.map(({ bar: number, pass }) => `${number}/${pass}`));
    expect(repeated.bars).toHaveLength(8);
    expect(named(overBars(repeated, 'rushing', '3', '2'))).toEqual([
      ['3/1', '4/1'],
      ['1/2', '2/2'],
    ]);
    expect(named(overBars(repeated, 'rushing', '2', '4', 2))).toEqual([['2/2', '3/2', '4/2']]);
  });
});

describe('marks for tempo', () => {
  let demo: Score;
  let result: TakeResult;

  beforeAll(async () => {
    demo = await opened(readDemoScore());
    result = climbing(demo.part);
  });

  const excerptOf = (finding: ResultFinding, changed = result) =>
    findingExcerpt(sheet, finding, { ...demo, result: changed }, WIDTH);
  const marks = (finding: ResultFinding, changed = result) => excerptOf(finding, changed)!.items.filter(isMark);
  const words = (finding: ResultFinding, changed = result) =>
    texts(marks(finding, changed)).map(({ text }) => text.trim());

  it('are an arrow forward where the tempo runs ahead, over exactly those bars', () => {
    const finding = overBars(demo.part, 'rushing', '3', '4');
    const drawn = marks(finding);
    const [tip] = tips(drawn);
    const [shaft] = shafts(drawn);
    expect(tip![0]).toBe(Math.max(...shaft!.map(([x]) => x)));
    const [line] = excerptLines(demo.engrave, finding, demo.part, WIDTH);
    const first = demo.part.notes.find(({ bar }) => bar === '3')!;
    const head = line!.excerpt.noteheads.get(first.printedId)!;
    expect(Math.min(...shaft!.map(([x]) => x))).toBeGreaterThanOrEqual(head.left - 2);
    expect(tip![0]).toBeLessThanOrEqual(line!.excerpt.width);
    expect(tip![0]).toBeGreaterThan(line!.excerpt.barlines.at(-1)! - 12);
    expect(words(finding)[0]).toBe('runs ahead');
  });

  it('are an arrow back where it falls behind', () => {
    const drawn = marks(overBars(demo.part, 'dragging', '3', '4'));
    const [tip] = tips(drawn);
    expect(tip![0]).toBe(Math.min(...shafts(drawn)[0]!.map(([x]) => x)));
    expect(texts(drawn)[0]!.text).toBe('falls behind');
  });

  // By construction: bar n was played at 90 + 2n quarters a minute.
  it('tell the tempo of each bar over its first note', () => {
    const finding = overBars(demo.part, 'rushing', '3', '5');
    expect(words(finding).slice(1)).toEqual(['96', '98', '100']);
    const [line] = excerptLines(demo.engrave, finding, demo.part, WIDTH);
    for (const [i, bar] of ['3', '4', '5'].entries()) {
      const first = demo.part.notes.find((one) => one.bar === bar)!;
      const number = texts(marks(finding))[i + 1]!;
      const middle = number.x + typesetter.widthOf(number.text, number.face, number.size) / 2;
      expect(middle).toBeCloseTo(line!.excerpt.noteheads.get(first.printedId)!.x, 0);
    }
  });

  it('leave out the number of a bar that was not measured', () => {
    const tempo = result.tempo as Extract<TakeResult['tempo'], { bars: unknown }>;
    const gap = { ...result, tempo: { ...tempo, bars: tempo.bars.filter(({ bar }) => bar !== '4') } };
    expect(words(overBars(demo.part, 'rushing', '3', '5'), gap).slice(1)).toEqual(['96', '100']);
    const none = { ...result, tempo: { notMeasured: 'too few bars with steady notes' } };
    expect(words(overBars(demo.part, 'rushing', '3', '5'), none)).toEqual(['runs ahead']);
  });

  it('show the beginning and the end of a long stretch, with one arrow from the one to the other', () => {
    const finding = overBars(demo.part, 'rushing', '1', '20');
    expect(words(finding)).toEqual(['runs ahead', '92', '94', '128', '130']);
    expect(shafts(marks(finding))).toHaveLength(2);
    const [tip] = tips(marks(finding));
    expect(tips(marks(finding))).toHaveLength(1);
    expect(tip![1]).toBe(Math.max(...shafts(marks(finding)).map(([start]) => start![1])));
    expect(excerptOf(finding)!.alternative).toMatch(/^Bars 1 to 2 and 19 to 20 of the part in notes/);
    const back = marks(overBars(demo.part, 'dragging', '1', '20'));
    expect(tips(back)[0]![1]).toBe(Math.min(...shafts(back).map(([start]) => start![1])));
    expect(texts(back).filter(({ text }) => text.trim() === 'falls behind')).toHaveLength(1);
  });

  // Source of the code point: SMuFL 1.4, Metronome marks (metNoteQuarterUp, U+ECA5).
  it('are a metronome mark with the tempo that was played, where it is not the one that is written', () => {
    const finding = overBars(demo.part, 'off-tempo', '1');
    expect(words(finding)).toEqual(['\u{ECA5}', '= 78 as played']);
    const unmeasured = { ...result, tempo: { notMeasured: 'too few bars with steady notes' } };
    expect(excerptOf(finding, unmeasured)).toBeNull();
  });

  it('come with the pages, though such a finding names no note', async () => {
    const found = [overBars(demo.part, 'rushing', '1', '20'), overBars(demo.part, 'off-tempo', '1')];
    const pdf = inspectPdf(
      await drawTakeReport({
        result: { ...result, findings: found },
        part: demo.part,
        loudness: { hopSeconds: 0.02, levelDb: new Float32Array(3000).fill(-30) },
        paper: 'letter',
        creationDate: new Date('2026-03-02T00:00:00Z'),
        engraved: () => engravePart(engravingCopy(readDemoScore())),
      }),
    );
    // two excerpts, loudness, tempo
    expect(pdf.elements.filter(({ tag }) => tag === 'Figure')).toHaveLength(4);
    expect(pdf.pageTexts[0]).toContain('runs ahead');
  });
});
