import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrawingElement } from '../../src/page/drawing.js';
import { INKS } from '../../src/page/inks.js';
import type { Point } from '../../src/page/path/path.js';
import { pointsAlong } from '../../src/page/path/points-along.js';
import { placeText, setText } from '../../src/page/set-text.js';
import { STYLES } from '../../src/page/styles.js';
import { barRows, numberedBars } from '../../src/report/bars/bar-rows.js';
import { dynamicsLane } from '../../src/report/bars/dynamics-lane.js';
import { loudnessCurve } from '../../src/report/curves/loudness-curve.js';
import { loudnessPanel } from '../../src/report/curves/loudness-panel.js';
import { timeStretches } from '../../src/report/curves/score-axis.js';
import { ReportSheet } from '../../src/report/report-sheet.js';
import { layoutTakeReport } from '../../src/report/take/layout-take-report.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import { resultOf, samplePart, sampleReview } from '../helpers/sample-review.js';

const typesetter = typesetterIn();

describe('setting text', () => {
  const character = fc.constantFrom(...'abc WÉé♭♯♮–…½→中ᚠ '.split(''), ' ', 'ffi', 'Wort');
  const words = fc.array(character, { maxLength: 60 }).map((parts) => parts.join(''));
  const width = fc.double({ min: 40, max: 400, noNaN: true });

  it('loses no letter and lets no line grow wider than it may', () => {
    fc.assert(
      fc.property(words, width, (text, points) => {
        const set = setText(typesetter, text, STYLES.body, points);
        const squeezed = text.replace(/\s+/g, '').normalize('NFC');
        const named = text
          .normalize('NFC')
          .replace(/ᚠ(?:\s*ᚠ)*/g, (runes) => {
            const numbers = Array.from(runes.replace(/\s/g, ''), () => '16A0').slice(0, 40);
            return `[other letters ${numbers.join('-')}]`;
          })
          .replace(/\s+/g, '');
        const drawn = placeText(set, 0, 0)
          .map((item) => item.text)
          .join('')
          .replace(/ /g, '');
        expect(drawn).toBe(named);
        for (const line of set.lines) expect(line.width).toBeLessThanOrEqual(points + 1e-9);
        expect(set.actualText ?? squeezed.replace(/[中ᚠ]/g, '')).toBe(
          /[中ᚠ]/.test(text) ? text.replace(/\s+/g, ' ').trim().normalize('NFC') : squeezed,
        );
      }),
    );
  });

  it('takes flats, sharps and naturals from a face that has them', () => {
    const items = placeText(setText(typesetter, 'B♭ and F♯, then F♮.', STYLES.practice, 400), 0, 0);
    expect(items.filter((item) => item.face === 'music').map((item) => item.text)).toEqual(['♭', '♯', '♮']);
    expect(items.every((item) => [...item.text].every((one) => typesetter.hasGlyph(one, item.face)))).toBe(true);
  });

  // Source: Unicode Standard Annex 15: e + U+0301 is é. macOS writes file names that way.
  it('composes letters and their accents', () => {
    expect(placeText(setText(typesetter, 'e\u0301tude', STYLES.body, 400), 0, 0)[0]?.text).toBe('étude');
  });

  it('has every sign that the pages’ own words use, in every text face', () => {
    for (const face of ['regular', 'semibold', 'italic'] as const) {
      for (const sign of `→–—…é½⅓⅔¼¾·−×±%“”’[]`)
        expect([face, sign, typesetter.hasGlyph(sign, face)]).toEqual([face, sign, true]);
    }
  });
});

describe('inks', () => {
  // Source: WCAG 2.2, definitions of relative luminance and contrast ratio; 4.5:1 for text (1.4.3).
  const luminance = (hex: string) => {
    const [r, g, b] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };

  it('can be read on white paper', () => {
    for (const ink of ['text', 'soft', 'accent'] as const)
      expect(1.05 / (luminance(INKS[ink]) + 0.05)).toBeGreaterThan(4.5);
  });

  it('are neither red nor green: blue is the strongest share of every one', () => {
    for (const hex of Object.values(INKS)) {
      const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as [number, number, number];
      expect(b).toBeGreaterThanOrEqual(Math.max(r, g));
    }
  });
});

describe('bars in rows', () => {
  it('show every bar once, in order, none wider than the page', () => {
    for (const bars of [1, 2, 47, 48, 49, 97, 300]) {
      const part = samplePart(bars);
      const rows = barRows(part, 460);
      expect(rows.flatMap((row) => row.bars)).toEqual(part.bars);
      for (const row of rows) expect((row.toQuarters - row.fromQuarters) * row.scale).toBeLessThanOrEqual(460 + 1e-9);
    }
    expect(barRows({ ...samplePart(1), bars: [] }, 460)).toEqual([]);
  });

  it('number bars no closer than asked, and name the bar where a repeat jumps back', () => {
    const part = samplePart(8);
    const again = part.bars.slice(4).map((bar, i) => ({ ...bar, pass: 2, startQuarters: 32 + 4 * i }));
    const [row] = barRows({ ...part, bars: [...part.bars, ...again] }, 460);
    if (row === undefined) throw new Error('no row');
    const numbered = numberedBars(row, 30);
    const places = numbered.map((bar) => (bar.startQuarters - row.fromQuarters) * row.scale);
    for (const [i, x] of places.slice(1).entries()) expect(x - (places[i] as number)).toBeGreaterThanOrEqual(30);
    expect(numbered.some((bar) => bar.bar === '5' && bar.pass === 2)).toBe(true);
  });
});

describe('loudness over score time', () => {
  const even = [{ fromSeconds: 1, toSeconds: 11, fromQuarters: 0, toQuarters: 20 }];
  const frames = (db: (seconds: number) => number) => ({
    hopSeconds: 0.01,
    levelDb: Float32Array.from({ length: 1200 }, (_, f) => db((f + 0.5) * 0.01)),
  });

  it('shows a steady level as it is', () => {
    for (const db of loudnessCurve(
      frames(() => -23),
      even,
      0,
      20,
      100,
    ))
      expect(db).toBeCloseTo(-23, 4);
  });

  // By definition: second 1 + 10 × 15/20 = 8.5 s is quarter 15; half way through the change the mean power counts.
  it('shows a change of level where it stands in the score', () => {
    const curve = loudnessCurve(
      frames((s) => (s < 8.5 ? -30 : -20)),
      even,
      0,
      20,
      200,
    );
    expect(curve[145]).toBeCloseTo(-30, 1);
    expect(curve[155]).toBeCloseTo(-20, 1);
    expect(curve[149]).toBeGreaterThan(-27);
    expect(curve[149]).toBeLessThan(-21);
  });

  it('moves with the file’s gain and with nothing else', () => {
    const shape = (s: number) => -30 + 5 * Math.sin(s);
    const quiet = loudnessCurve(frames(shape), even, 0, 20, 80);
    const loud = loudnessCurve(
      frames((s) => shape(s) + 12),
      even,
      0,
      20,
      80,
    );
    for (const [i, db] of loud.entries()) expect(db - (quiet[i] as number)).toBeCloseTo(12, 3);
  });

  it('says nothing where nothing was played, and takes digital silence', () => {
    const curve = loudnessCurve(
      frames(() => Number.NEGATIVE_INFINITY),
      [{ ...(even[0] as (typeof even)[0]), toQuarters: 10 }],
      0,
      20,
      40,
    );
    expect(curve[10]).toBeLessThan(-90);
    expect(curve[35]).toBeNaN();
  });

  it('joins the notes’ times to the score, and leaves a stop out', () => {
    const sample = sampleReview({ bars: 4 });
    const result = resultOf(sample);
    const stopAfter = 10;
    const notes = result.notes.map((note) =>
      note.index <= stopAfter ? note : { ...note, onset: (note.onset ?? 0) + 9, offset: (note.offset ?? 0) + 9 },
    );
    const stretches = timeStretches({ ...result, notes }, sample.part);
    const longest = Math.max(...stretches.map((stretch) => stretch.toSeconds - stretch.fromSeconds));
    expect(longest).toBeLessThan(2);
    expect(stretches).toHaveLength(sample.part.notes.length);
    for (const [i, stretch] of stretches.slice(1).entries()) {
      expect(stretch.fromSeconds).toBeGreaterThanOrEqual((stretches[i]?.toSeconds ?? 0) - 1e-9);
      expect(stretch.fromQuarters).toBeGreaterThanOrEqual((stretches[i]?.toQuarters ?? 0) - 1e-9);
    }
  });
});

describe('the printed dynamics', () => {
  // Source of the code points: SMuFL 1.4, table “Dynamics”: p U+E520, m U+E521, f U+E522, s U+E524, z U+E525.
  it('stand in order under their bars, in the signs of the standard, none upon another', () => {
    const part = samplePart(24);
    const [row] = barRows(part, 460);
    if (row === undefined) throw new Error('no row');
    const items = dynamicsLane(typesetter, part, row, 0, 0);
    const letters = items
      .filter((item) => item.kind === 'text' && item.face === 'music')
      .map((item) => (item.kind === 'text' ? item : null));
    const signs = {
      p: '\u{E520}',
      mf: '\u{E521}\u{E522}',
      f: '\u{E522}',
      sfz: '\u{E524}\u{E522}\u{E525}',
      mp: '\u{E521}\u{E520}',
    };
    expect(letters.map((item) => item?.text)).toEqual([
      signs.p,
      signs.mf,
      signs.f,
      signs.sfz,
      signs.mp,
      signs.p,
      signs.mf,
    ]);
    const lefts = letters.map((item) => item?.x ?? 0);
    expect(lefts).toEqual(lefts.toSorted((a, b) => a - b));
  });

  it('open a crescendo to the right and close a diminuendo to the right', () => {
    const part = samplePart(40);
    const [row] = barRows(part, 460);
    if (row === undefined) throw new Error('no row');
    const wedges = part.hairpins.filter(({ from }) => from === 'wedge');
    expect(new Set(wedges.map(({ kind }) => kind)).size).toBe(2);
    for (const hairpin of wedges) {
      const items = dynamicsLane(
        typesetter,
        { ...part, dynamics: [], dynamicEvents: [], hairpins: [hairpin] },
        row,
        0,
        0,
      );
      const [path] = items;
      const ys = path?.kind === 'path' ? path.path.points.filter((_, i) => i % 2 === 1) : [];
      const [startUp, endUp, startDown, endDown] = ys as [number, number, number, number];
      const opens = Math.abs(endUp - endDown) > Math.abs(startUp - startDown);
      expect(opens).toBe(hairpin.kind === 'crescendo');
    }
  });
});

describe('the picture of the whole take', () => {
  const pagesOf = (element: DrawingElement): number[] =>
    element.children.flatMap((child) => ('tag' in child ? pagesOf(child) : [child.page]));
  const flat = (element: DrawingElement): DrawingElement[] => [
    element,
    ...element.children.flatMap((child) => ('tag' in child ? flat(child) : [])),
  ];

  // Source: common practice of typesetting: a heading is never the last thing on a page.
  it('stands on the page of its heading, however much is said before it', () => {
    for (const paper of ['a4', 'letter'] as const) {
      for (let more = 0; more <= 60; more += 2) {
        const plain = sampleReview();
        const { findings, criteria } = plain.handWords;
        const wordy = findings.map((f, i) =>
          i === 0 ? { ...f, text: `${f.text}${' Once more.'.repeat(6 * more)}` } : f,
        );
        const { part, loudness, ...rest } = { ...plain, handWords: { findings: wordy, criteria } };
        const content = { result: resultOf({ part, ...rest }), part, loudness, paper };
        const elements = flat(layoutTakeReport(content, typesetter, null).root);
        const figure = elements.findIndex((element) => element.tag === 'Figure');
        const heading = elements.slice(0, figure).findLast((element) => element.tag === 'H2')!;
        expect([paper, more, pagesOf(heading)[0]]).toEqual([paper, more, pagesOf(elements[figure]!)[0]]);
      }
    }
  });
});

describe('the levels in figures', () => {
  // Common practice of typesetting: nothing runs through a figure.
  it.each([0, 1, 2, 3])(
    'stand where the curve of loudness does not run through them, inside the picture (%d)',
    (phase) => {
      const part = samplePart(8);
      const { result } = { result: resultOf(sampleReview({ bars: 8 })) };
      const row = barRows(part, 440)[0]!;
      const bins = 440;
      const curve = Float64Array.from({ length: bins }, (_, i) => -27 + 5 * Math.sin(i / 25 + phase));
      const sheet = new ReportSheet({ typesetter, paper: 'a4', title: 'Levels', foot: 'Levels' });
      const range = { referenceDb: -20, topDb: 5, bottomDb: -20 };
      const items = loudnessPanel(sheet, { part, result, row, curve, range, height: 90 }, 80, 100);
      const labels = items.filter((item) => item.kind === 'text' && item.face === 'semibold');
      const line = items.find(
        (item) => item.kind === 'path' && item.stroke === 'soft' && item.path.steps.length > 100,
      )!;
      const points = line.kind === 'path' ? pointsAlong(line.path).map(([, end]) => end as Point) : [];
      expect(labels.length).toBeGreaterThanOrEqual(2);
      expect(points.length).toBeGreaterThan(400);
      for (const item of labels) {
        if (item.kind !== 'text') continue;
        const right = item.x + typesetter.widthOf(item.text, item.face, item.size);
        expect(right).toBeLessThanOrEqual(80 + 440 + 0.5);
        // figures are about 0.66 of their size high (from memory)
        const top = item.baseline - 0.66 * item.size;
        const through = points.filter(([x, y]) => x > item.x && x < right && y > top && y < item.baseline);
        expect([item.text, through.length]).toEqual([item.text, 0]);
      }
    },
  );
});
