import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyBrief, type Brief, readBrief, writeStarterBrief } from '../../src/brief/index.js';
import { readDemoScore } from '../../src/demo/index.js';
import { readPart } from '../../src/score/index.js';
import { studyPlan } from '../../src/study/index.js';
import { damagedBytes } from './damaged-bytes.js';
import { anywhere, shareRead } from './how-much.js';
import { ODD_NUMBERS, ODD_TEXTS } from './odd-words.js';
import { megabytesGrown, readOrRefuse } from './read-or-refuse.js';

const part = readPart(readDemoScore());

const PAGES = [
  writeStarterBrief(part),
  'title: "Étude"\ntempo: { quarterBpm: 88, lowest: 80, highest: 100 }\nplayed: all-slurred\n',
  'tempo:\n  beat: dotted-quarter\n  bpm: 60\nbreaths:\n  - after: { bar: 4, beat: 4, pass: 1 }\n    kind: full\n',
  'fermata:\n  mostTimes: 2.5\n  bars:\n    - { bar: 15, mostTimes: 2 }\ncontrast:\n  places:\n    - { from: p, to: f, leastDb: 8 }\n',
  'watch:\n  - { bar: 3, toBar: 5, reason: "Equal eighths." }\nintonation: { watchCents: 12, fixCents: 30 }\ncriteria: { notes: 40, breath: off }\n',
];

/** What YAML has besides plain values: references, tags, merges, long texts, other pages, odd keys, deep and wide nesting. */
const YAML_ODDITIES = [
  '&a [*a, *a]',
  '*nobody',
  '!!js/function "f"',
  '!!binary "aGk="',
  '<<: { title: x }',
  '? { a: b }\n: c',
  '|2-\n   text',
  '>+\n\n\n',
  '---\n---',
  '%YAML 9.9\n---',
  '2026-03-02',
  '0o17',
  '.inf',
  '~',
  '"\\u0000\\ud800"',
  '\t- x',
  '[[[[[[]]]]]]',
  '['.repeat(3000),
  '{a: '.repeat(500),
  '- '.repeat(2000),
  `[${'1,'.repeat(2000)}]`,
  `&a [1, 2]\nb: [${'*a,'.repeat(500)}]`,
  'title: { tempo: { title: { tempo: {} } } }',
];

/** A value of the page replaced by another, once or several times. */
const changed = fc
  .tuple(
    fc.constantFrom(...PAGES),
    fc.array(fc.tuple(anywhere, fc.constantFrom(...ODD_NUMBERS, ...ODD_TEXTS, ...YAML_ODDITIES)), {
      minLength: 1,
      maxLength: 4,
    }),
  )
  .map(([page, changes]) =>
    changes.reduce((text, [at, by]) => {
      const words = [...text.matchAll(/[^\s:,{}[\]#-]+/g)];
      const word = words[Math.floor(at * words.length)];
      return word === undefined ? text : text.slice(0, word.index) + by + text.slice(word.index + word[0].length);
    }, page),
  );

/** A brief that was read can be used: its numbers are in order, and the part can be studied with it. */
function expectBrief(text: string): boolean {
  const brief = readOrRefuse(() => readBrief(text, part));
  if (brief === null) return false;
  expect(outOfOrder(brief)).toEqual([]);
  expect(readOrRefuse(() => studyPlan(part, brief))).not.toBeNull();
  for (const { quarterBpm } of applyBrief(part, brief).tempos) expect(quarterBpm).toBeGreaterThan(0);
  return true;
}

function outOfOrder({ tempo, fermata, contrast, hairpin, intonation, breaths, title }: Brief): string[] {
  const pairs: readonly (readonly [string, number, number])[] = [
    ['tempo', tempo?.lowestQuarterBpm ?? 0, tempo?.quarterBpm ?? 0],
    ['tempo', tempo?.quarterBpm ?? 0, tempo?.highestQuarterBpm ?? 0],
    ['fermata', fermata.leastTimes, fermata.mostTimes],
    ...fermata.bars.map(({ leastTimes, mostTimes }) => ['fermata of a bar', leastTimes, mostTimes] as const),
    ['contrast', 0, contrast.leastDb],
    ['hairpin', 0, hairpin.leastDb],
    ['intonation', intonation.watchCents, intonation.fixCents],
    ...breaths.map(({ index }) => ['breath', index, part.notes.length - 1] as const),
  ];
  const wrong = pairs.filter(([, low, high]) => !(low <= high && Number.isFinite(high)));
  return [...wrong.map(String), ...(/[\p{Cc}\p{Cs}]/u.test(title) ? ['title'] : [])];
}

describe('the reader of briefs', () => {
  it('can read the pages that are damaged below', () => {
    for (const page of PAGES) expect(readBrief(page, part).title).not.toBe('');
  });

  it('reads or refuses any text', async () => {
    const read = await shareRead(600, fc.string({ unit: 'binary', maxLength: 300 }), expectBrief);
    expect(read).toBeLessThan(0.5);
  });

  it('reads or refuses pages whose letters are damaged', async () => {
    const pages = PAGES.map((page) => new TextEncoder().encode(page));
    const text = damagedBytes(pages).map((bytes) => new TextDecoder().decode(bytes));
    const read = await shareRead(500, text, expectBrief);
    expect(read).toBeGreaterThan(0.04);
    expect(read).toBeLessThan(0.9);
  });

  it('reads or refuses pages with odd values, without growing', async () => {
    const grown = await megabytesGrown(async () => {
      const read = await shareRead(600, changed, expectBrief);
      expect(read).toBeGreaterThan(0.05);
      expect(read).toBeLessThan(0.9);
    });
    expect(grown).toBeLessThan(300);
  });
});
