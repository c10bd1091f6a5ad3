import { inflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawPdf } from '../../src/page/draw/draw-pdf.js';
import { pathData } from '../../src/page/draw/path-data.js';
import { toSvg } from '../../src/page/draw/to-svg.js';
import { areaOf } from '../../src/page/path/area-of.js';
import { areaUnder } from '../../src/page/path/area-under.js';
import { boundsOf } from '../../src/page/path/bounds-of.js';
import { circle } from '../../src/page/path/circle.js';
import { clipPath } from '../../src/page/path/clip-path.js';
import { ellipse } from '../../src/page/path/ellipse.js';
import { joinPaths } from '../../src/page/path/join-paths.js';
import { lineAcross } from '../../src/page/path/line-across.js';
import { lineThrough } from '../../src/page/path/line-through.js';
import { mapPath } from '../../src/page/path/map-path.js';
import { mapPoints } from '../../src/page/path/map-points.js';
import type { Path } from '../../src/page/path/path.js';
import { pointsAlong } from '../../src/page/path/points-along.js';

describe('cutting off a path', () => {
  it('cuts lines and areas where they cross the edge', () => {
    const line = lineThrough([
      [0, 0],
      [10, 10],
      [20, 0],
    ]);
    expect(pathData(clipPath(line, false, 5, 15) as Path)).toBe('M5 5L10 10M10 10L15 5');
    const area = areaOf([
      [0, 0],
      [10, 0],
      [10, 4],
      [0, 4],
    ]);
    const corners = pointsAlong(clipPath(area, true, 2, 30) as Path).flat();
    expect([Math.min(...corners.map(([x]) => x)), Math.max(...corners.map(([x]) => x))]).toEqual([2, 10]);
    expect(clipPath(line, false, 30, 40)).toBeNull();
    expect(clipPath(line, false, 0, 20)).toBe(line);
  });

  it('leaves nothing outside, whatever the path', () => {
    const coordinate = fc.integer({ min: -50, max: 50 });
    const chain = fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 9 });
    fc.assert(
      fc.property(chain, fc.boolean(), coordinate, fc.integer({ min: 1, max: 40 }), (corners, filled, left, span) => {
        const cut = clipPath(filled ? areaOf(corners) : lineThrough(corners), filled, left, left + span);
        for (const [x] of cut === null ? [] : pointsAlong(cut).flat()) {
          expect(x).toBeGreaterThanOrEqual(left - 0.01);
          expect(x).toBeLessThanOrEqual(left + span + 0.01);
        }
      }),
    );
  });
});

describe('a path', () => {
  const square = areaOf([
    [0, 0],
    [10, 0],
    [10, 4],
    [0, 4],
  ]);

  it('has its points on a grid of 1/100 point, wherever it was built or moved', () => {
    expect(lineThrough([[1 / 3, 2 / 3]]).points).toEqual([0.33, 0.67]);
    expect(mapPoints(square, (x, y) => [x / 3, y]).points.slice(2, 4)).toEqual([3.33, 0]);
    expect(Object.is(lineThrough([[-0.001, 0]]).points[0], 0)).toBe(true);
  });

  it('is broken where a line has no height', () => {
    const points = [
      [0, 1],
      [1, Number.NaN],
      [2, 3],
      [4, 5],
    ] as const;
    expect(pathData(lineThrough(points))).toBe('M0 1M2 3L4 5');
    expect(pathData(areaUnder(points, 9))).toBe('M2 3L4 5L4 9L2 9Z');
  });

  it('joins others one after the other', () => {
    expect(pathData(joinPaths([lineAcross(1, 2, 3), lineAcross(4, 5, 6)]))).toBe('M2 1L3 1M5 4L6 4');
  });

  // By hand: the ends of each line, the closing line among them.
  it('is seen at its points', () => {
    expect(pointsAlong(square)).toEqual([
      [
        [0, 0],
        [10, 0],
      ],
      [
        [10, 0],
        [10, 4],
      ],
      [
        [10, 4],
        [0, 4],
      ],
      [
        [0, 4],
        [0, 0],
      ],
    ]);
    expect(boundsOf(square)).toEqual({ left: 0, right: 10, top: 0, bottom: 4 });
  });

  // A circle keeps its distance from the centre; four curves come as near as 0.03 % (Source: 4/3 (√2 − 1)).
  it('makes circles and ellipses that are round', () => {
    for (const [x, y] of pointsAlong(circle(5, 7, 3)).flat()) expect(Math.hypot(x - 5, y - 7)).toBeCloseTo(3, 2);
    const turned = mapPath(ellipse(0, 0, 8, 2), [0, 1, -1, 0, 20, 30]);
    for (const [x, y] of pointsAlong(turned).flat()) expect(Math.hypot((x - 20) / 2, (y - 30) / 8)).toBeCloseTo(1, 2);
    const { left, right, top, bottom } = boundsOf(turned);
    expect([left, right, top, bottom]).toEqual([18, 22, 22, 38]);
  });
});

describe('a path on paper and in markup', () => {
  // SVG 2, path data: the control point left out of S mirrors the one before it at the point where both curves meet.
  const path: Path = {
    steps: ['M', 'C', 'S', 'L', 'S', 'Z'],
    points: [0, 0, 1, 0, 2, 1, 2, 2, 1, 4, 0, 4, 5, 5, 6, 7, 8, 9],
  };

  it('is the same', async () => {
    expect(toSvg([{ kind: 'path', path, fill: 'text' }], {} as never)).toContain(
      '"M0 0C1 0 2 1 2 2S1 4 0 4L5 5S6 7 8 9Z"',
    );
    const items = [{ kind: 'path', path, fill: 'text' } as const];
    const drawing = {
      title: 'Path',
      pageWidth: 100,
      pageHeight: 100,
      pages: 1,
      root: { tag: 'Document', children: [] } as const,
      artifacts: [{ page: 0, items }],
    };
    const content = contentOf(await drawPdf(drawing, new Date(0)));
    expect(content).toContain('0 0 m\n1 0 2 1 2 2 c\n2 3 1 4 0 4 c\n5 5 l\n5 5 6 7 8 9 c\nh');
  });
});

/** The streams of a PDF as text. Source: ISO 32000-1, 7.3.8 and 7.4.4 (Flate). */
function contentOf(pdf: Uint8Array): string {
  const file = Buffer.from(pdf);
  return [...file.toString('latin1').matchAll(/stream\r?\n/g)]
    .map((match) => {
      try {
        return inflateSync(file.subarray(match.index + match[0].length)).toString('latin1');
      } catch {
        return '';
      }
    })
    .join('\n');
}
