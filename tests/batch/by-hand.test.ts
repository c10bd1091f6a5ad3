import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { fittingName } from '../../src/batch/disk/fitting-name.js';
import { numberedPath } from '../../src/batch/disk/numbered-path.js';
import { exitCode } from '../../src/batch/exit-code.js';
import { chosenTakes } from '../../src/batch/handout/chosen-takes.js';
import { folderNames } from '../../src/batch/handout/folder-names.js';
import { mailOf } from '../../src/batch/handout/mail-of.js';
import type { ReviewSummary } from '../../src/batch/index.js';
import { matchEtude } from '../../src/batch/plan/match-etude.js';
import { namesInShard } from '../../src/batch/plan/names-in-shard.js';
import { numberTakes, type Unnumbered } from '../../src/batch/plan/number-takes.js';
import { type DateOrder, readDates } from '../../src/batch/plan/read-dates.js';
import { realDay } from '../../src/batch/plan/real-day.js';
import { secondsFor, takeLimits } from '../../src/batch/pool/limits.js';
import type { SectionRow } from '../../src/result/index.js';

/**
 * Names, numbers, days and limits of a round, worked out by hand; the disk is not touched.
 *
 * Source: exit statuses as the contract has them; names of devices and letters that disks refuse: usual systems; days: ISO 8601.
 */
describe('the exit status', () => {
  const end = (outcome: string) => ({ row: { take: { outcome } } });
  const summary = (change: object) =>
    ({ notReached: 0, ends: [end('reviewed')], failures: [], ...change }) as unknown as ReviewSummary;

  it('is 0 for a round without trouble, 1 for one with some, 130 for one broken off', () => {
    expect(exitCode(summary({}))).toBe(0);
    expect(exitCode(summary({ ends: [] }))).toBe(0);
    expect(exitCode(summary({ ends: [end('reviewed'), end('too-poor')] }))).toBe(1);
    expect(exitCode(summary({ failures: [{}] }))).toBe(1);
    expect(exitCode(summary({ ends: [{ failure: {} }] }))).toBe(0);
    expect(exitCode(summary({ notReached: 1, failures: [{}] }))).toBe(130);
  });

  it('is 2 for what the user can mend and 1 for a fault of the program', () => {
    expect([exitCode(new InputError('no-recording-found', { inputs: [] })), exitCode(new Error('x'))]).toEqual([2, 1]);
  });
});

describe('the limits of a take', () => {
  it('grow with the file: heap by powers of two from 512 MB and 8 MB for each, buffers by 16 MB for each', () => {
    expect(takeLimits(0, {})).toEqual({ firstSeconds: 90, heapMb: 512, totalMb: 1024 });
    // 512 + 8 · 10 = 592, the next power of two
    expect(takeLimits(10 * 2 ** 20, {})).toEqual({ firstSeconds: 90, heapMb: 1024, totalMb: 1024 + 512 + 160 });
    expect(takeLimits(64 * 2 ** 20, {}).heapMb).toBe(1024);
    expect(takeLimits(65 * 2 ** 20, {}).heapMb).toBe(2048);
    expect(takeLimits(64 * 2 ** 20, { seconds: 7, megabytes: 99 })).toEqual({
      firstSeconds: 7,
      heapMb: 99,
      totalMb: 99,
    });
  });

  it('in time are a minute and a half, and four times the take for each étude', () => {
    expect([secondsFor(0, 3, {}), secondsFor(60, 1, {}), secondsFor(60, 3, {})]).toEqual([90, 330, 810]);
    expect(secondsFor(60, 3, { seconds: 7 })).toBe(7);
  });
});

describe('the takes that are handed out', () => {
  const row = (name: string, player: string | null, date: string | null, file = 'a.xml', title = 'A') =>
    ({ take: { name, player, date }, score: { file, title } }) as unknown as SectionRow;
  const names = (rows: readonly SectionRow[], all = false) =>
    chosenTakes(rows, all).map(({ player, row: { take } }) => `${player} ${take.name}`);

  it('are those of the latest day of each player, étude by étude', () => {
    const rows = [
      row('a1', 'Ada', '2026-03-09'),
      row('a2', 'Ada', '2026-03-02'),
      row('a3', 'Ada', '2026-03-09'),
      row('a4', 'Ada', '2026-03-01', 'b.xml'),
      row('a5', 'Ada', '2026-03-01', 'a.xml', 'B'),
      row('b', 'Bo', null),
      row('c', null, null),
    ];
    expect(names(rows)).toEqual(['Ada a4', 'Ada a5', 'Ada a1', 'Ada a3', 'Bo b', 'c c']);
    expect(names(rows, true)).toEqual(['Ada a4', 'Ada a5', 'Ada a2', 'Ada a1', 'Ada a3', 'Bo b', 'c c']);
    expect(names([row('x', 'Ada', null), row('y', 'Ada', '2026-03-02')])).toEqual(['Ada y']);
  });

  it('go to folders that differ in more than letter case, without dots at their ends', () => {
    const folders = (...all: readonly string[]) => [...folderNames(all).values()];
    expect(folders('Ada', 'ada', 'ADA', 'Bo')).toEqual(['Ada', 'ada 2', 'ADA 3', 'Bo']);
    expect(folders('..Ada. ', '. .')).toEqual(['Ada', '_']);
    expect(folders('a/b')).toEqual(['a_b']);
    expect(folders('x'.repeat(121))[0]).toHaveLength(120);
  });

  it('go to the mail address of the roster, whatever its column is called', () => {
    for (const head of ['mail', 'E-Mail', 'email', 'Mail address', 'e-mail-adresse', 'MAIL_ADDRESS']) {
      expect(mailOf({ desk: '2', [head]: 'a@b' })).toBe('a@b');
    }
    expect([
      mailOf({ mailbox: 'a@b' }),
      mailOf({ mail: '' }),
      mailOf({ mail: '', 'e-mail': 'c@d' }),
      mailOf({}),
    ]).toEqual(['', '', 'c@d', '']);
  });
});

describe('names of files', () => {
  it('hold what every disk takes', () => {
    expect(fittingName('a<b>c:d"e/f\\g|h?i*j', 200)).toBe('a_b_c_d_e_f_g_h_i_j');
    expect([
      fittingName('a\u202eb\u0007', 200),
      fittingName('  a', 200),
      fittingName('a. .', 200),
      fittingName('a.b', 200),
    ]).toEqual(['a_b_', '_a', 'a_', 'a.b']);
    for (const device of ['con', 'NUL', 'com1', 'lpt9', 'aux.txt', 'prn .x'])
      expect(fittingName(device, 200)).toBe(`_${device}`);
    expect([fittingName('console', 200), fittingName('com', 200), fittingName('', 200)]).toEqual([
      'console',
      'com',
      '_',
    ]);
  });

  it('are so many bytes long at most, never half a letter', () => {
    // an é has two bytes
    expect([fittingName('ééé', 5), fittingName('ééé', 6), fittingName('abc', 2)]).toEqual(['éé', 'ééé', 'ab']);
  });

  it('have their number before the ending, from the second on', () => {
    expect([1, 2, 10].map((n) => numberedPath('x/section.pdf', n))).toEqual([
      'x/section.pdf',
      'x/section-2.pdf',
      'x/section-10.pdf',
    ]);
    expect(numberedPath('section', 2)).toBe('section-2');
  });
});

describe('shares of a round', () => {
  const names = Array.from({ length: 10 }, (_, i) => `take ${i}`);

  it('are every name once, as evenly as can be', () => {
    const shares = [1, 2, 3].map((share) => [...namesInShard(names, { share, of: 3 })]);
    expect(shares.flat().sort()).toEqual([...names].sort());
    expect(shares.map(({ length }) => length).sort()).toEqual([3, 3, 4]);
    expect(namesInShard(names, undefined).size).toBe(10);
    expect([...namesInShard([...names].reverse(), { share: 2, of: 3 })].sort()).toEqual([...shares[1]!].sort());
  });
});

describe('numbers instead of names', () => {
  const take = (file: string, player: string | null): Unnumbered => {
    return { path: `/${file}`, file, who: { player, date: null, instrument: null } } as unknown as Unnumbered;
  };
  const told = (takes: readonly Unnumbered[], before: Parameters<typeof numberTakes>[1] = []) =>
    // the lot is drawn by the file's name turned round
    numberTakes(takes, before, ({ file }) => [...file].reverse().join('')).map(
      ({ number, take: name, file }) => `${number} ${name} ${file}`,
    );

  it('are drawn by lot, one for each player, one for each take of nobody', () => {
    expect(told([take('a3', 'Ada'), take('b2', 'Bo'), take('c1', null), take('d4', 'Ada'), take('e5', null)])).toEqual([
      '01 01 c1',
      '02 02 b2',
      '03 03 a3',
      '03 03-2 d4',
      '04 04 e5',
    ]);
  });

  it('go on where an earlier key ends', () => {
    const before = numberTakes([take('a3', 'Ada'), take('b2', 'Bo')], [], ({ file }) => file);
    expect(told([take('a3', 'Ada'), take('b2', 'Bo'), take('d4', 'Ada'), take('f6', 'Flo')], before)).toEqual([
      '01 01 a3',
      '02 02 b2',
      '01 01-2 d4',
      '03 03 f6',
    ]);
    const many = Array.from({ length: 100 }, (_, i) => take(`t${String(i).padStart(3, '0')}`, null));
    expect(told(many)[0]).toMatch(/^001 /);
    expect(told(many.slice(0, 99))[0]).toMatch(/^01 /);
  });
});

describe('days', () => {
  // Source: ISO 8601; 2024 was a leap year.
  it('are real ones', () => {
    expect([realDay('2024', '02', '29'), realDay('2026', '02', '29'), realDay('2026', '13', '01'), realDay()]).toEqual([
      '2024-02-29',
      null,
      null,
      null,
    ]);
  });

  const read = (order: DateOrder | undefined, ...texts: readonly string[]) => {
    try {
      return readDates(
        texts.map((text, i) => ({ line: i + 2, text })),
        order,
      );
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return error.fault;
    }
  };

  it('are read in the order that all of them fit', () => {
    expect(read(undefined, '3/4/2026', '13/4/2026')).toEqual(['2026-04-03', '2026-04-13']);
    expect(read(undefined, '3/4/2026', '4/13/2026')).toEqual(['2026-03-04', '2026-04-13']);
    expect(read(undefined, '3.4.26', '')).toEqual(['2026-04-03', '']);
    expect(read(undefined, '2026-04-03', '20260404', '2026/4/5 10:30')).toEqual([
      '2026-04-03',
      '2026-04-04',
      '2026-04-05',
    ]);
    expect(read('mdy', '3/4/2026')).toEqual(['2026-03-04']);
    expect(read(undefined, '3. 4. 2026', '3.4.2026.')).toEqual(['2026-04-03', '2026-04-03']);
  });

  it('are refused where the order is open, or a cell is no day', () => {
    expect(read(undefined, '5/5/2026', '3/4/2026')).toEqual({
      code: 'roster-days-unclear',
      facts: { line: 3, days: ['2026-04-03', '2026-03-04'], orders: ['dmy', 'mdy'] },
    });
    expect(read(undefined, '5/5/2026')).toEqual(['2026-05-05']);
    expect(read(undefined, '13/4/2026', '4/13/2026')).toEqual({ code: 'roster-no-day', facts: { line: 3 } });
    expect(read(undefined, '3/4-2026')).toEqual({ code: 'roster-no-day', facts: { line: 2 } });
    expect(read(undefined, '3/4/026')).toEqual({ code: 'roster-no-day', facts: { line: 2 } });
    expect(read('dmy', '4/13/2026')).toEqual({ code: 'roster-no-day', facts: { line: 2 } });
  });
});

describe('the étude that a word means', () => {
  const etude = (file: string, title: string, partName: string) =>
    ({ score: { file }, part: { title, partName } }) as never;
  const etudes = [
    etude('one.musicxml', 'River', 'Oboe'),
    etude('two.xml', 'ONE', 'Oboe'),
    etude('three.mxl', 'Gates', 'one'),
  ];

  it('is found by file, then by title, then by part', () => {
    expect(
      ['one', ' ONE.MusicXML ', 'river', 'oboe', 'gates', 'nothing'].map((word) => matchEtude(word, etudes)),
    ).toEqual([[0], [0], [0], [0, 1], [2], []]);
    expect(matchEtude('one', etudes.slice(1))).toEqual([0]);
    expect(matchEtude('one', etudes.slice(2))).toEqual([0]);
  });
});
