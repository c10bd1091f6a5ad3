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
import { nearest } from '../../src/brief/nearest.js';
import { roundBeat } from '../../src/brief/places.js';
import type { Part } from '../../src/score/index.js';
import { dynamic, type NoteSketch, smallPart } from '../demo/small-part.js';

/**
 * The teacher's page at its edges: the smallest and largest number that is taken, the beat that is still the beat, and what exactly
 * is told of a value that is refused, as code and facts.
 *
 * Source: definition; note values and seconds by arithmetic; edit distance: Levenshtein 1966.
 */
const part = (count = 12, change: (i: number) => Partial<NoteSketch> = () => ({}), marks: Partial<Part> = {}): Part =>
  smallPart(
    Array.from({ length: count }, (_, i) => ({ midi: 60 + i, quarters: 1, ...change(i) })),
    marks,
  );
const PART = part(12, (i) => (i === 6 ? { fermata: true } : {}), {
  dynamics: [dynamic('p', 0, 0, 5), dynamic('f', 4, 4, 11)],
});

/** What is told of a page that is refused: code and facts; null for one that is read. */
function refused(page: string, of: Part = PART): readonly [code: string, facts: Record<string, unknown>] | null {
  try {
    readBrief(page, of);
    return null;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { code, facts } = error.fault as { code: string; facts: Record<string, unknown> };
    return [code, facts];
  }
}
const isRead = (page: string, of: Part = PART) => refused(page, of) === null;

describe('numbers', () => {
  it.each<readonly [string, string, number | string, number | string, number, number]>([
    ['tempo', 'tempo: { quarterBpm: %, lowest: 1, highest: 2000 }', 9.9, 10, 1000, 1000.1],
    ['lowest tempo', 'tempo: { quarterBpm: 1000, lowest: % }', 0.9, 1, 1000, 1000.1],
    ['highest tempo', 'tempo: { quarterBpm: 10, lowest: 1, highest: % }', 9.9, 10, 2000, 2000.1],
    ['shortest fermata', 'fermata: { leastTimes: %, mostTimes: 20 }', 0.49, 0.5, 20, 20.1],
    ['longest fermata', 'fermata: { leastTimes: 0.5, mostTimes: % }', 0.49, 0.5, 20, 20.1],
    ['contrast', 'contrast: { leastDb: % }', -0.1, 0, 40, 40.1],
    ['contrast at a place', 'contrast: { places: [ { bar: 1, leastDb: % } ] }', -0.1, 0, 40, 40.1],
    ['hairpin', 'hairpin: { leastDb: % }', -0.1, 0, 40, 40.1],
    ['cents worth a listen', 'intonation: { watchCents: %, fixCents: 100 }', 0.9, 1, 100, 100.1],
    ['cents to fix', 'intonation: { watchCents: 1, fixCents: % }', 0.9, 1, 100, 100.1],
    ['points', 'criteria: { notes: % }', -0.1, 0, 1000, 1000.1],
  ])('%s: from the smallest to the largest that is asked for', (_, page, below, least, most, above) => {
    const taken = [below, least, most, above].map((value) => isRead(page.replace('%', String(value))));
    expect(taken).toEqual([false, true, true, false]);
  });

  it('that are none are told with what stands there and what is allowed', () => {
    const told = (value: string) => refused(`hairpin:\n  leastDb: ${value}`);
    const where = { line: 2, field: 'hairpin.leastDb', lowest: 0, highest: 40, orOff: false };
    expect(told('loud')).toEqual(['brief-no-number', { ...where, found: 'text', quoted: 'loud' }]);
    expect(told('[1, 2]')).toEqual(['brief-no-number', { ...where, found: 'list', quoted: '' }]);
    expect(told('{ a: 1 }')).toEqual(['brief-no-number', { ...where, found: 'fields', quoted: '' }]);
    expect(told(`"${'x'.repeat(90)}"`)![1].quoted).toHaveLength(40);
    expect(told('41')![1]).toMatchObject({ found: 'text', quoted: '41' });
    expect(refused('criteria: { notes: yes please }')![1]).toMatchObject({ orOff: true, lowest: 0, highest: 1000 });
  });

  it('may be off where a criterion is not judged, and nowhere else', () => {
    expect(readBrief('criteria: { notes: off }', PART).criteria.notes).toEqual({ judged: false, points: 0 });
    expect(readBrief('criteria: { notes: 7 }', PART).criteria.notes).toEqual({ judged: true, points: 7 });
    expect(readBrief('criteria: { notes: 7 }', PART).criteria.rhythm).toEqual({ judged: true, points: 1 });
    expect(isRead('hairpin: { leastDb: off }')).toBe(false);
  });

  it('in order: what is worth a listen is never more than what is to be fixed', () => {
    const cents = (page: string) => readBrief(`intonation: ${page}`, PART).intonation;
    expect(cents('{ watchCents: 50 }')).toEqual({ watchCents: 50, fixCents: 50 });
    expect(cents('{ watchCents: 20 }')).toEqual({ watchCents: 20, fixCents: 35 });
    expect(cents('{ fixCents: 25 }')).toEqual({ watchCents: 25, fixCents: 25 });
    expect(refused('intonation: { fixCents: 24 }')).toEqual([
      'brief-fix-below-watch',
      { line: 1, field: 'intonation.fixCents', fixCents: 24, watchCents: 25 },
    ]);
    expect(isRead('fermata: { leastTimes: 3, mostTimes: 3 }')).toBe(true);
    expect(refused('fermata: { leastTimes: 3, mostTimes: 2.9 }')![0]).toBe('brief-least-above-most');
  });
});

describe('texts', () => {
  it('are up to 400 letters, with single spaces', () => {
    const title = (text: string) => readBrief(`title: ${JSON.stringify(text)}`, PART).title;
    expect(title('  a \n b\t c ')).toBe('a b c');
    expect(title('x'.repeat(400))).toHaveLength(400);
    expect(refused(`title: ${'x'.repeat(401)}`)).toEqual(['brief-long-text', { line: 1, field: 'title', most: 400 }]);
  });

  it('may be numbers, as they are written, and nothing else', () => {
    expect(readBrief('title: 007', PART).title).toBe('007');
    expect(readBrief('title: 1.50', PART).title).toBe('1.50');
    for (const value of ['[a]', '{ a: b }', 'true']) expect(refused(`title: ${value}`)![0]).toBe('brief-no-text');
    expect(refused('title: true')![1]).toEqual({ line: 1, field: 'title', found: 'text', quoted: 'true' });
    expect(readBrief('title:', PART).title).toBe('Small');
  });

  it('of one of several words are told with the nearest', () => {
    expect(refused('played: as-writen')![1]).toMatchObject({ meant: 'as-written', quoted: 'as-writen' });
    expect(refused('played: xyzzy')![1]).toMatchObject({ meant: '' });
    expect(refused('titel: a')).toEqual([
      'brief-no-such-field',
      expect.objectContaining({ line: 1, field: '', name: 'titel', meant: 'title' }),
    ]);
    expect((refused(`${'n'.repeat(50)}: a`)![1].name as string).length).toBe(40);
    expect(refused('\ntempo:\n  quarter: 3')).toEqual([
      'brief-no-such-field',
      expect.objectContaining({ line: 3, field: 'tempo' }),
    ]);
  });

  it.each([
    ['notse', ['notes', 'rhythm'], 'notes'],
    ['TEMPO', ['temp', 'tempo'], 'tempo'],
    // two letters away from a short word is near enough, three are not
    ['ab', ['abcd'], 'abcd'],
    ['a', ['abcd'], null],
    // five of ten letters, and not six
    ['articxxxxx', ['articulati'], 'articulati'],
    ['artixxxxxx', ['articulati'], null],
    ['', ['ab', 'abc'], 'ab'],
    ['abc', [], null],
  ] as const)('nearest to %j of %j is %j', (word, words, meant) => {
    expect(nearest(word, words)).toBe(meant);
  });
});

describe('lists', () => {
  it('hold up to a thousand', () => {
    const page = (count: number) => `watch:\n${'  - { bar: 1 }\n'.repeat(count)}`;
    expect(readBrief(page(1000), PART).watch).toHaveLength(1000);
    expect(refused(page(1001))).toEqual(['brief-long-list', { line: 2, field: 'watch', most: 1000 }]);
  });

  it('count from one, and name the line of each', () => {
    expect(refused('watch:\n  - { bar: 1 }\n  - { bar: 99 }')).toEqual([
      'brief-no-such-bar',
      { line: 3, field: 'watch[2].bar', bar: '99', first: '1', last: '3' },
    ]);
    expect(refused('watch: 3')).toEqual(['brief-no-list', { line: 1, field: 'watch', found: 'text', quoted: '3' }]);
  });
});

describe('the tempo', () => {
  const tempo = (page: string, of: Part = PART) => readBrief(`tempo: ${page}`, of).tempo;

  // Source: definition of note values: a half is two quarters, a dot adds half.
  it.each([
    ['half', 2],
    ['dotted-half', 3],
    ['quarter', 1],
    ['dotted-quarter', 1.5],
    ['eighth', 0.5],
    ['dotted-eighth', 0.75],
  ])('in a %s is %d times as many quarters', (beat, quarters) => {
    expect(tempo(`{ beat: ${beat}, bpm: 60, lowest: 40, highest: 90 }`)).toEqual({
      ...{ quarterBpm: 60 * quarters, lowestQuarterBpm: 40 * quarters, highestQuarterBpm: 90 * quarters },
    });
  });

  it('has a tenth on both sides, in whole numbers, and never leaves itself out', () => {
    expect(tempo('{ quarterBpm: 100 }')).toEqual({ quarterBpm: 100, lowestQuarterBpm: 90, highestQuarterBpm: 110 });
    expect(tempo('{ quarterBpm: 87 }')).toEqual({ quarterBpm: 87, lowestQuarterBpm: 78, highestQuarterBpm: 96 });
    // the part marks 60
    expect(tempo('{ lowest: 50 }')).toEqual({ quarterBpm: 60, lowestQuarterBpm: 50, highestQuarterBpm: 66 });
    expect(tempo('{ highest: 60 }')).toEqual({ quarterBpm: 60, lowestQuarterBpm: 54, highestQuarterBpm: 60 });
    expect(tempo('{ lowest: 60 }')).toMatchObject({ lowestQuarterBpm: 60 });
  });

  it('is refused where the range leaves it out, with both counted in its beat', () => {
    expect(refused('tempo: { beat: half, bpm: 45, lowest: 45.5 }')).toEqual([
      'brief-above-tempo',
      { line: 1, field: 'tempo.lowest', value: 45.5, tempo: 45 },
    ]);
    expect(refused('tempo: { beat: half, bpm: 45, highest: 44.5 }')).toEqual([
      'brief-below-tempo',
      { line: 1, field: 'tempo.highest', value: 44.5, tempo: 45 },
    ]);
  });

  it('is none where the part marks none, and a range alone is refused', () => {
    const unmarked = { ...PART, tempos: [{ atQuarters: 0, quarterBpm: 90, printed: false }] };
    expect(tempo('{}', unmarked)).toBeNull();
    expect(defaultBrief({ ...PART, tempos: [] }).tempo).toBeNull();
    expect(refused('tempo: { lowest: 50 }', unmarked)).toEqual([
      'brief-range-without-tempo',
      { line: 1, field: 'tempo.lowest' },
    ]);
    expect(refused('tempo: { highest: 50 }', unmarked)).toEqual([
      'brief-range-without-tempo',
      { line: 1, field: 'tempo.highest' },
    ]);
    expect(refused('tempo: { quarterBpm: 90, bpm: 45, beat: half }')![1]).toEqual({ line: 1, field: 'tempo.beat' });
  });
});

describe('places', () => {
  const behind = (place: string, of: Part = PART) => readBrief(`breaths: [ { after: { ${place} } } ]`, of).breaths;

  it('are the note that begins there, within 0.04 of a beat, grace notes left out', () => {
    expect(behind('bar: 2, beat: 3')).toEqual([{ index: 6, bar: '2', beat: 3, pass: 1, kind: 'quick' }]);
    expect(behind('bar: 2, beat: 3.039')[0]!.index).toBe(6);
    expect(refused('breaths: [ { after: { bar: 2, beat: 3.041 } } ]')).toEqual([
      'brief-no-note-there',
      { line: 1, field: 'breaths[1].after.beat', bar: '2', beat: 3.041, beats: ['1', '2', '3', '4'] },
    ]);
    const graced = part(12, (i) => (i === 6 ? { grace: true } : {}));
    expect(refused('breaths: [ { after: { bar: 2, beat: 3 } } ]', graced)![1].beats).toEqual(['1', '2', '4']);
  });

  it('need a bar and a beat, and a pass that there is', () => {
    expect(refused('breaths: [ { after: { bar: 2 } } ]')).toEqual([
      'brief-half-a-place',
      { line: 1, field: 'breaths[1].after' },
    ]);
    expect(refused('breaths: [ { after: { beat: 2 } } ]')![0]).toBe('brief-half-a-place');
    expect(refused('breaths: [ { after: { bar: 2, beat: 3, pass: 2 } } ]')).toEqual([
      'brief-no-such-pass',
      { line: 1, field: 'breaths[1].after.pass', bar: '2', pass: 2, times: 1 },
    ]);
    expect(behind('bar: 2, beat: 3, pass: 1')).toHaveLength(1);
    expect(refused('breaths: [ { kind: full } ]')![0]).toBe('brief-no-place');
    expect(refused('breaths: [ { after: { bar: 2, beat: 3 } }, { after: { bar: 2, beat: 3.01 } } ]')![0]).toBe(
      'brief-place-twice',
    );
  });

  it('come in the order of the music, and are the teacher’s own where they differ from the part', () => {
    const breathed = part(12, (i) => (i === 3 ? { breathAfter: 'breath' } : {}));
    const own = (page: string) => {
      const { breaths, ownBreaths } = readBrief(page, breathed);
      return [breaths.map(({ index }) => index), ownBreaths];
    };
    expect(own('')).toEqual([[3], false]);
    expect(own('breaths: [ { after: { bar: 3, beat: 1 } }, { after: { bar: 1, beat: 2 } } ]')).toEqual([[1, 8], true]);
    expect(own('breaths: [ { after: { bar: 1, beat: 4 }, kind: quick } ]')).toEqual([[3], false]);
    expect(own('breaths: [ { after: { bar: 1, beat: 4 }, kind: full } ]')).toEqual([[3], true]);
    expect(own('breaths: []')).toEqual([[], true]);
  });

  it('of bars to watch go forward', () => {
    const watch = (page: string) => readBrief(`watch: [ ${page} ]`, PART).watch;
    expect(watch('{ bar: 2 }')).toEqual([{ bar: '2', toBar: '2', reason: '' }]);
    expect(watch('{ bar: 2, toBar: 3, reason: why }')).toEqual([{ bar: '2', toBar: '3', reason: 'why' }]);
    expect(watch('{ bar: 2, toBar: 2 }')).toHaveLength(1);
    expect(refused('watch: [ { bar: 3, toBar: 2 } ]')).toEqual([
      'brief-bars-turned',
      { line: 1, field: 'watch[1].toBar', bar: '2', first: '3' },
    ]);
  });

  it('of thresholds stand where the part has something of the kind', () => {
    expect(refused('fermata: { bars: [ { bar: 1 } ] }')![1]).toMatchObject({ bar: '1', bars: ['2'] });
    expect(readBrief('fermata: { mostTimes: 4, bars: [ { bar: 2, leastTimes: 2 } ] }', PART).fermata).toEqual({
      ...{ leastTimes: 1.25, mostTimes: 4 },
      bars: [{ bar: '2', leastTimes: 2, mostTimes: 4 }],
    });
    expect(refused('contrast: { places: [ { bar: 3, leastDb: 3 } ] }')![1]).toMatchObject({
      bar: '3',
      bars: ['1', '2'],
    });
    expect(refused('contrast: { places: [ { from: p, to: f, leastDb: 3 } ] }', part())![0]).toBe('brief-marks-of-none');
  });

  it('are written with two decimals', () => {
    expect([roundBeat(7 / 3), roundBeat(1.005), roundBeat(2)]).toEqual([2.33, expect.closeTo(1, 1), 2]);
  });
});

describe('the ways of playing', () => {
  it('leave out what says nothing then, and keep its points', () => {
    const judged = (played: string) => {
      const { criteria } = readBrief(`played: ${played}\ncriteria: { articulation: 5, tempo: 6 }`, PART);
      return [criteria.articulation, criteria.tempo];
    };
    expect(judged('as-written')).toEqual([
      { judged: true, points: 5 },
      { judged: true, points: 6 },
    ]);
    expect(judged('all-slurred')).toEqual([
      { judged: false, points: 5 },
      { judged: true, points: 6 },
    ]);
    expect(judged('under-tempo')).toEqual([
      { judged: true, points: 5 },
      { judged: false, points: 6 },
    ]);
  });
});

describe('a page that is too much', () => {
  it('has more than 64 times 1024 letters', () => {
    expect(isRead('#'.repeat(65_536))).toBe(true);
    expect(refused('#'.repeat(65_537))).toEqual(['brief-too-long', { letters: 65_537, most: 65_536 }]);
  });
});

describe('the breaths of a part', () => {
  /** The breath after note 4, where note 5 comes after a rest, at so many quarters a minute. */
  const kind = (change: Partial<NoteSketch>, { rest = 0, count = 12, quarterBpm = 60 } = {}) => {
    const breathed = part(count, (i) => (i === 4 ? { breathAfter: 'breath', ...change } : i === 5 ? { rest } : {}));
    return readBrief(`tempo: { quarterBpm: ${quarterBpm} }`, breathed).breaths[0]!.kind;
  };

  // At 100 a quarter lasts 0.6 s and a half 1.2 s.
  it('are full before rests of 0.6 s and after notes of 1.2 s', () => {
    expect(kind({})).toBe('quick');
    expect([100, 101].map((quarterBpm) => kind({}, { rest: 1, quarterBpm }))).toEqual(['full', 'quick']);
    expect([100, 101].map((quarterBpm) => kind({ quarters: 2 }, { quarterBpm }))).toEqual(['full', 'quick']);
  });

  it('are full at fermatas, caesuras and the end', () => {
    expect([kind({ fermata: true }), kind({ breathAfter: 'caesura' }), kind({}, { count: 5 })]).toEqual([
      'full',
      'full',
      'full',
    ]);
  });
});

describe('seconds', () => {
  // A quarter at 60 is a second, at 120 half of one.
  const tempos = [
    { atQuarters: 0, quarterBpm: 60, printed: true },
    { atQuarters: 4, quarterBpm: 120, printed: true },
    { atQuarters: 8, quarterBpm: 30, printed: true },
  ];

  it.each([
    [0, 4, 4],
    [2, 6, 3],
    [5, 7, 1],
    [7, 9, 2.5],
    [0, 10, 10],
    [8, 9, 2],
    [3, 3, 0],
    [6, 2, 0],
    [-2, 1, 3],
  ])('from %d to %d quarters are %d', (from, to, seconds) => {
    expect(secondsBetween(tempos, from, to)).toBeCloseTo(seconds, 9);
  });
});

describe('the part by a brief', () => {
  const two = {
    ...PART,
    tempos: [
      { atQuarters: 0, quarterBpm: 60, printed: false },
      { atQuarters: 4, quarterBpm: 90, printed: false },
      { atQuarters: 8, quarterBpm: 80, printed: true },
    ],
    remarks: [{ code: 'tempo-assumed', facts: {} }] as unknown as Part['remarks'],
  };
  const at = (quarterBpm: number, of: Part = two) => {
    const tempo = { quarterBpm, lowestQuarterBpm: 1, highestQuarterBpm: 999 };
    return applyBrief(of, { ...defaultBrief(of), tempo });
  };

  it('has the tempo asked for, the later ones in proportion, the first as if it were printed', () => {
    expect(at(120).tempos.map(({ quarterBpm, printed }) => [quarterBpm, printed])).toEqual([
      [120, true],
      [180, false],
      [160, true],
    ]);
    expect(at(120).remarks).toEqual([]);
    expect(at(60).tempos[0]).toMatchObject({ quarterBpm: 60, printed: true });
  });

  it('is as it was where that is its own tempo, or none is asked for', () => {
    const printed = { ...two, tempos: two.tempos.map((one) => ({ ...one, printed: true })) };
    expect(at(60, printed).remarks).toHaveLength(1);
    expect(at(60, printed).tempos).toEqual(printed.tempos);
    expect(applyBrief(two, { ...defaultBrief(two), tempo: null }).tempos).toEqual(two.tempos);
    expect(at(120, { ...two, tempos: [] }).tempos).toEqual([]);
  });

  it('has the breaths asked for and no others, and keeps what kind of mark they are', () => {
    const marked = part(12, (i) => (i === 3 ? { breathAfter: 'caesura' } : i === 7 ? { breathAfter: 'breath' } : {}));
    const breath = (index: number): Brief['breaths'][number] => ({ index, bar: '1', beat: 1, pass: 1, kind: 'full' });
    const { notes } = applyBrief(marked, { ...defaultBrief(marked), breaths: [breath(3), breath(5)] });
    expect(notes.flatMap(({ index, breathAfter }) => (breathAfter === null ? [] : [[index, breathAfter]]))).toEqual([
      [3, 'caesura'],
      [5, 'breath'],
    ]);
  });
});

describe('a brief to start from', () => {
  const lines = (of: Part) => writeStarterBrief(of).split('\n');

  it('says what it is for, and gives every value', () => {
    const page = lines(PART);
    expect(page[0]).toBe('# A brief for Small (Clarinet), 3 bars.');
    for (const line of [
      'title: "Small"',
      '  quarterBpm: 60',
      '  lowest: 54',
      '  highest: 66',
      '  leastTimes: 1.25',
      '  mostTimes: 3',
    ]) {
      expect(page).toContain(line);
    }
    for (const line of ['  watchCents: 25', '  fixCents: 35', '  notes: 1', '  sound: 0']) expect(page).toContain(line);
    expect(page.filter((line) => line === '  leastDb: 3')).toHaveLength(2);
    expect(page).toContain('  #   - { bar: 2, leastTimes: 1.5, mostTimes: 2 }');
    expect(page).toContain('  #   - { from: p, to: f, leastDb: 6 }');
    expect(page).toContain('#   - { bar: 2, reason: "Keep the eighths equal." }');
  });

  it('has an example where the part has none', () => {
    const bare = { ...part(4), title: '', partName: '', tempos: [] };
    const page = lines(bare);
    expect(page[0]).toBe('# A brief for an étude (part), 1 bars.');
    for (const line of [
      '# title: "…"',
      '# The part marks no tempo. Without one here, tempo is not judged.',
      '# The part marks none.',
    ]) {
      expect(page).toContain(line);
    }
    expect(page).toContain('#   - { after: { bar: 1, beat: 1 }, kind: quick }');
  });

  it('tells breaths once for all passes where they are alike, and each where they are not', () => {
    const twice = (second: Partial<NoteSketch>) => {
      const one = part(8, (i) => (i === 1 ? { breathAfter: 'breath' } : i === 5 ? second : {}));
      return {
        ...one,
        notes: one.notes.map((n) => ({ ...n, bar: '1', barIndex: 0, pass: n.index < 4 ? 1 : 2 })),
        bars: one.bars.map((b, i) => ({ ...b, bar: '1', barIndex: 0, pass: i + 1 })),
      };
    };
    const told = (of: Part) => lines(of).filter((line) => line.startsWith('  - { after'));
    expect(told(twice({ breathAfter: 'breath' }))).toEqual(['  - { after: { bar: 1, beat: 2 }, kind: quick }']);
    expect(told(twice({}))).toEqual(['  - { after: { bar: 1, beat: 2, pass: 1 }, kind: quick }']);
    expect(told(twice({ breathAfter: 'caesura' }))).toEqual([
      '  - { after: { bar: 1, beat: 2, pass: 1 }, kind: quick }',
      '  - { after: { bar: 1, beat: 2, pass: 2 }, kind: full }',
    ]);
  });

  it('quotes bars that are no plain numbers', () => {
    const named = (bar: string) => {
      const one = part(4, (i) => (i === 1 ? { breathAfter: 'breath' } : {}));
      return lines({ ...one, notes: one.notes.map((n) => ({ ...n, bar })), bars: one.bars.map((b) => ({ ...b, bar })) })
        .find((line) => line.startsWith('  - { after'))!
        .match(/bar: (\S+),/)![1];
    };
    expect(['7', '123456789', '007', 'X1', '1234567890'].map(named)).toEqual([
      '7',
      '123456789',
      '"007"',
      '"X1"',
      '"1234567890"',
    ]);
  });
});
