import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import {
  applyBrief,
  type Brief,
  defaultBrief,
  readBrief,
  secondsBetween,
  writeStarterBrief,
} from '../../src/brief/index.js';
import { readDemoScore } from '../../src/demo/index.js';
import { type Part, readPart } from '../../src/score/index.js';
import { saidOf } from '../helpers/in-words.js';
import { attributes, direction, dynamic, note, scoreOf } from '../score/score-of.js';

const scores = join(import.meta.dirname, '../../fixtures/scores');
const demo = readPart(readDemoScore());

/** Two bars played twice; the breath in bar 1 has a rest after it, the one at the end of bar 2 has none. */
const breath = '<articulations><breath-mark/></articulations>';
const twice = readPart(
  scoreOf([
    attributes(2) +
      direction(
        '<metronome><beat-unit>quarter</beat-unit><per-minute>60</per-minute></metronome>',
        '<sound tempo="60"/>',
      ) +
      dynamic('p') +
      note('G4', 2, { notations: breath }) +
      note('r', 2) +
      note('A4', 3) +
      note('B4', 1),
    `${dynamic('f')}${note('C5', 6)}${note('D5', 1)}${note('E5', 1, { notations: breath })}<barline location="right"><repeat direction="backward"/></barline>`,
  ]),
);
const unmarked = readPart(scoreOf([attributes(1) + note('C5', 4)]));

function refusal(text: string, part: Part = demo): string {
  try {
    readBrief(text, part);
  } catch (error) {
    if (error instanceof InputError) return `${error.code}: ${(saidOf(error) as InputError).message}`;
    throw error;
  }
  return 'not refused';
}

describe('an empty brief', () => {
  it.each(['', '\n\n', '# nothing yet\n', '---\n', 'title:\ntempo:\nbreaths:\n'])('is the default one: %j', (text) => {
    expect(readBrief(text, demo)).toEqual(defaultBrief(demo));
  });

  // Source: fermatas from 1.25 to 3 times (common practice, from memory), levels 3 dB apart (common practice), a tolerance of 25 cents
  // (Larrouy-Maestri 2018) and 10 cents of measuring error.
  it('has the thresholds of the house', () => {
    const { fermata, contrast, hairpin, intonation } = defaultBrief(demo);
    expect([fermata.leastTimes, fermata.mostTimes]).toEqual([1.25, 3]);
    expect([contrast.leastDb, hairpin.leastDb]).toEqual([3, 3]);
    expect([intonation.watchCents, intonation.fixCents]).toEqual([25, 35]);
  });

  it('has the tempo of the part, and none where the part marks none', () => {
    expect(defaultBrief(demo).tempo?.quarterBpm).toBe(92);
    expect(defaultBrief(unmarked).tempo).toBeNull();
  });

  // A quarter at 60 lasts a second: the rest leaves one second, which is a full breath; an eighth of 0.5 s leaves no time.
  // Source: quick breaths 0.2–0.5 s, full up to 1 s (from memory).
  it('breathes fully where a rest leaves time and quickly elsewhere, in both passes', () => {
    const breaths = defaultBrief(twice).breaths.map(({ bar, beat, pass, kind }) => [bar, beat, pass, kind]);
    expect(breaths).toEqual([
      ['1', 1, 1, 'full'],
      ['2', 4.5, 1, 'quick'],
      ['1', 1, 2, 'full'],
      ['2', 4.5, 2, 'full'],
    ]);
  });
});

describe('the starter brief', () => {
  it.each(['morning-round.musicxml', 'river-stones.musicxml', 'three-gates.xml'])(
    'of %s reads back as the default',
    (file) => {
      const part = readPart(readFileSync(join(scores, file)));
      expect(readBrief(writeStarterBrief(part), part)).toEqual(defaultBrief(part));
    },
  );

  it('reads back as the default where passes differ, where no tempo is marked, and for any title', () => {
    for (const part of [demo, twice, unmarked]) {
      expect(readBrief(writeStarterBrief(part), part)).toEqual(defaultBrief(part));
    }
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (words) => {
        const part = { ...unmarked, title: words.replace(/\s+/g, ' ').trim() };
        expect(readBrief(writeStarterBrief(part), part)).toEqual(defaultBrief(part));
      }),
      { numRuns: 60 },
    );
  });

  it('explains every field', () => {
    const text = writeStarterBrief(demo);
    // whose the breaths are follows from them
    const fields = Object.keys(defaultBrief(demo)).filter((field) => field !== 'ownBreaths');
    for (const field of fields) expect(text).toMatch(new RegExp(`^(# )?${field}:`, 'm'));
  });
});

describe('a brief', () => {
  // A dotted quarter is a quarter and a half, so 60 of them are 90 quarters. Source: definition of note values.
  it('counts the tempo in any beat, and the range in the same', () => {
    const { tempo } = readBrief('tempo: { beat: dotted-quarter, bpm: 60, lowest: 54, highest: 64 }', demo);
    expect(tempo).toEqual({ quarterBpm: 90, lowestQuarterBpm: 81, highestQuarterBpm: 96 });
    expect(readBrief('tempo: { lowest: 60 }', demo).tempo).toEqual({
      ...defaultBrief(demo).tempo,
      lowestQuarterBpm: 60,
    });
  });

  // Definition of note values: a half is two quarters, a dot adds a half of the value.
  it.each([
    ['half', 50, 100],
    ['dotted-half', 30, 90],
    ['quarter', 80, 80],
    ['dotted-quarter', 60, 90],
    ['eighth', 160, 80],
    ['dotted-eighth', 80, 60],
  ])('counts a tempo in %s notes: %d a minute are %d quarters', (beat, bpm, quarters) => {
    const { tempo } = readBrief(`tempo: { beat: ${beat}, bpm: ${bpm}, lowest: ${bpm / 2}, highest: ${2 * bpm} }`, demo);
    expect(tempo).toEqual({
      quarterBpm: quarters,
      lowestQuarterBpm: quarters / 2,
      highestQuarterBpm: 2 * quarters,
    });
  });

  // Without a range it is a tenth on both sides (standard tempoWatch), told in whole numbers.
  it('has a range of a tenth where none is given', () => {
    expect(readBrief('tempo: { quarterBpm: 100 }', demo).tempo).toEqual({
      quarterBpm: 100,
      lowestQuarterBpm: 90,
      highestQuarterBpm: 110,
    });
  });

  // Working values: what lies beyond is taken for a slip of the pen.
  it.each([
    ['tempo: { quarterBpm: X }', 10, 1000, 9.9, 1001],
    ['fermata: { leastTimes: X, mostTimes: 20 }', 0.5, 20, 0.4, 21],
    ['contrast: { leastDb: X }', 0, 40, -0.1, 41],
    ['hairpin: { leastDb: X }', 0, 40, -0.1, 41],
    ['intonation: { watchCents: X, fixCents: 100 }', 1, 100, 0.9, 101],
    ['criteria: { notes: X }', 0, 1000, -1, 1001],
  ])('%s takes %d to %d, not %d nor %d', (page, least, most, below, above) => {
    const said = (value: number) => refusal(page.replace('X', String(value)));
    expect([said(least), said(most)]).toEqual(['not refused', 'not refused']);
    for (const value of [below, above]) {
      expect(said(value)).toMatch(new RegExp(`is "?${value}"?; a number from ${least} to ${most}\\b`));
    }
  });

  it('says where to breathe, for every pass or for one', () => {
    const where = (text: string): unknown[] => readBrief(text, twice).breaths.map(({ index, kind }) => [index, kind]);
    expect(where('breaths:\n  - { after: { bar: 1, beat: 3 }, kind: full }')).toEqual([
      [1, 'full'],
      [7, 'full'],
    ]);
    expect(where('breaths:\n  - after: { bar: 2, beat: 1, pass: 2 }')).toEqual([[9, 'quick']]);
    expect(where('breaths: []')).toEqual([]);
  });

  it('carries points, leaves out what is off, and what the way of playing says nothing about', () => {
    const criteria = (text: string): Brief['criteria'] => readBrief(text, demo).criteria;
    expect(criteria('criteria: { notes: 40, breath: off }')).toMatchObject({
      notes: { judged: true, points: 40 },
      breath: { judged: false, points: 0 },
      rhythm: { judged: true, points: 1 },
    });
    const left = (text: string): string[] =>
      Object.entries(criteria(text)).flatMap(([name, { judged }]) => (judged ? [] : [name]));
    expect(left('played: all-slurred')).toEqual(['articulation']);
    expect(left('played: under-tempo')).toEqual(['tempo']);
    expect(left('played: as-written')).toEqual([]);
  });

  it('sets thresholds for all, for one bar, and for a pair of marks', () => {
    const brief = readBrief(
      'fermata:\n  mostTimes: 2.5\n  bars:\n    - { bar: 15, mostTimes: 2 }\ncontrast:\n  leastDb: 4\n  places:\n    - { from: p, to: f, leastDb: 8 }\n    - { bar: 8, leastDb: 6 }\nwatch:\n  - { bar: 3, toBar: 5, reason: "Equal eighths." }\n',
      demo,
    );
    expect(brief.fermata).toEqual({
      leastTimes: 1.25,
      mostTimes: 2.5,
      bars: [{ bar: '15', leastTimes: 1.25, mostTimes: 2 }],
    });
    expect(brief.contrast).toEqual({
      leastDb: 4,
      places: [
        { from: 'p', to: 'f', leastDb: 8 },
        { bar: '8', leastDb: 6 },
      ],
    });
    expect(brief.watch).toEqual([{ bar: '3', toBar: '5', reason: 'Equal eighths.' }]);
  });
});

describe('a brief with a mistake', () => {
  it.each([
    [
      'tempoo: 3',
      /^bad-brief: line 1: there is no field "tempoo" in this page \(did you mean tempo\?\); the fields are: title/,
    ],
    ['\n\ntempo:\n  quarterbpm: 90', /line 4: there is no field "quarterbpm" in tempo \(did you mean quarterBpm\?\)/],
    ['tempo:\n  quarterBpm: fast', /line 2: tempo\.quarterBpm is "fast"; a number from 10 to 1000 is needed$/],
    ['tempo: 90', /line 1: tempo is "90"; fields are needed: quarterBpm/],
    ['tempo: { quarterBpm: 90, bpm: 45 }', /tempo\.bpm stands beside tempo\.quarterBpm; give either/],
    ['tempo: { quarterBpm: 90, lowest: 95 }', /tempo\.lowest is 95; at most the tempo itself, 90, is needed/],
    ['tempo: { beat: half }', /tempo\.beat stands without a number; tempo\.bpm is needed/],
    [
      'played: slurred',
      /played is "slurred"( \(did you mean all-slurred\?\))?; one of these is needed: as-written, all-slurred/,
    ],
    [
      'breaths:\n  - { after: { bar: 99, beat: 1 } }',
      /line 2: breaths\[1\]\.after\.bar is "99"; the part has bars 1 to 20/,
    ],
    ['breaths:\n  - { after: { bar: 3, beat: 1.2 } }', /after\.beat is 1\.2; notes of bar 3 begin on 1, 2\.5, 3, 4/],
    ['breaths:\n  - { after: { bar: 3, beat: 1, pass: 2 } }', /after\.pass is 2; bar 3 is played once/],
    ['breaths:\n  - { after: { bar: 3, beat: 1 }, kind: deep }', /kind is "deep"; one of these is needed: full, quick/],
    ['breaths: 3', /breaths is "3"; a list is needed/],
    ['fermata: { bars: [ { bar: 3 } ] }', /is 3, where no fermata stands; fermatas stand in bar 15, 20/],
    ['fermata: { leastTimes: 4 }', /fermata\.leastTimes is 4; at most mostTimes, 3, is needed/],
    ['contrast: { places: [ { from: p, to: fff, leastDb: 3 } ] }', /to is "fff".*one of these is needed: p, f/],
    ['contrast: { places: [ { bar: 2, leastDb: 3 } ] }', /is 2, where no dynamic mark stands; marks stand in bar 1, 8/],
    [
      'contrast: { places: [ { from: p, leastDb: 3 } ] }',
      /places\[1\] names no place; give either bar, or from and to/,
    ],
    ['contrast: { places: [ { to: f, leastDb: 3 } ] }', /places\[1\] names no place; give either bar, or from and to/],
    ['contrast: { places: [ { bar: 8, from: p, leastDb: 3 } ] }', /places\[1\]\.from stands beside a bar/],
    ['contrast: { places: [ { bar: 8, to: f, leastDb: 3 } ] }', /places\[1\]\.to stands beside a bar/],
    ['contrast: { places: [ { bar: 8 } ] }', /places\[1\] says no level; leastDb is needed/],
    ['fermata: { mostTimes: 1 }', /fermata\.mostTimes is 1; at least leastTimes, 1\.25, is needed/],
    ['fermata: { bars: [ { mostTimes: 2 } ] }', /bars\[1\] names no bar; bar is needed/],
    ['tempo: { bpm: 60 }', /tempo\.bpm stands without a beat; tempo\.beat is needed/],
    ['tempo: { beat: half, bpm: 45, quarterBpm: 90 }', /tempo\.beat stands beside tempo\.quarterBpm; give either/],
    ['tempo: { quarterBpm: 90, highest: 85 }', /tempo\.highest is 85; at least the tempo itself, 90, is needed/],
    // counted in the beat of the page: 45 halves are 90 quarters
    ['tempo: { beat: half, bpm: 45, lowest: 46 }', /tempo\.lowest is 46; at most the tempo itself, 45, is needed/],
    ['intonation: { fixCents: 10 }', /intonation\.fixCents is 10; at least watchCents, 25, is needed/],
    ['criteria: { notes: of }', /criteria\.notes is "of"; a number from 0 to 1000, or off, is needed/],
    ['watch:\n  - { reason: x }', /line 2: watch\[1\] names no bar; bar is needed/],
    ['- 1', /line 1: the page is a list; fields are needed/],
    ['title: [', /line 1: this is no YAML: /],
    ['title: a\ntitle: b', /line 2: this is no YAML: this field stands there twice/],
    ['title: a\n---\ntitle: b', /a second page begins here/],
  ])('%j is told where, what and what is needed', (text, message) => {
    expect(refusal(text)).toMatch(message);
    expect(refusal(text)).not.toMatch(/\n/);
  });

  it('is told what it lacks where the part lacks it, too', () => {
    for (const field of ['lowest', 'highest']) {
      const needed = `tempo.${field} stands without a tempo; the part marks none, so tempo.quarterBpm is needed`;
      expect(refusal(`tempo: { ${field}: 60 }`, unmarked)).toContain(needed);
    }
    const place = 'contrast: { places: [ { from: p, to: f, leastDb: 3 } ] }';
    expect(refusal(place, unmarked)).toContain('from names a mark; the part has no dynamic marks');
  });

  // A page of a few lines that unfolds to billions of values ("billion laughs"), and one nested beyond any use.
  it('cannot blow up: references, size and depth are refused', () => {
    expect(refusal('title: &a x\nplayed: *a')).toMatch(/line 2: played is a reference to another place/);
    expect(refusal('a: &a [x, x]\nb: &b [*a, *a]\n<<: *b')).toMatch(/^bad-brief: line 1: there is no field "a"/);
    expect(refusal('#'.repeat(70_000))).toMatch(/^bad-brief: the brief has 70000 letters/);
    expect(refusal('['.repeat(50_000))).toMatch(/^bad-brief: .*(too deep|no YAML)/);
    expect(refusal(`breaths: [${'1,'.repeat(2000)}]`)).toMatch(/is too long; at most 1000 entries are read/);
  });

  it('is refused in one line or read whole, whatever it holds', () => {
    const fields = fc.constantFrom(
      'title',
      'tempo',
      'breaths',
      'fermata',
      'criteria',
      'watch',
      'bar',
      'beat',
      '- ',
      '{',
      '[',
      '*a',
    );
    const page = fc.array(fc.tuple(fields, fc.string({ maxLength: 12 })), { maxLength: 6 });
    fc.assert(
      fc.property(page, (parts) => {
        const said = refusal(parts.map(([field, value]) => `${field}: ${value}`).join('\n'));
        expect(said).toMatch(/^(not refused|bad-brief: [^\n]+)$/);
      }),
      { numRuns: 200 },
    );
  });
});

describe('the part by a brief', () => {
  it('is the part itself when the brief is the default', () => {
    for (const part of [demo, twice, unmarked]) expect(applyBrief(part, defaultBrief(part))).toEqual(part);
  });

  it('has the tempo, title and breaths asked for, and no remark about a missing tempo', () => {
    const brief = readBrief('title: New\ntempo: { quarterBpm: 72 }\nbreaths: []', unmarked);
    const part = applyBrief(unmarked, brief);
    expect(part).toMatchObject({ title: 'New', tempos: [{ quarterBpm: 72, printed: true }], remarks: [] });
    expect(unmarked.remarks).toHaveLength(1);
    expect(applyBrief(twice, { ...defaultBrief(twice), breaths: [] }).notes.every((n) => n.breathAfter === null)).toBe(
      true,
    );
  });
});

describe('the length of a stretch', () => {
  // 60 quarters a minute: one second each; 120: half a second each. Definition of the metronome mark.
  it('adds up over tempos', () => {
    const tempos = [
      { atQuarters: 0, quarterBpm: 60, printed: true },
      { atQuarters: 4, quarterBpm: 120, printed: true },
    ];
    expect(secondsBetween(tempos, 2, 8)).toBe(4);
    expect(secondsBetween(tempos, 8, 2)).toBe(0);
  });
});
