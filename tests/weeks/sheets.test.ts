import { describe, expect, it } from 'vitest';
import { numbersOfBlind } from '../../src/weeks/blind-numbers.js';
import { keepResult } from '../../src/weeks/index.js';
import { type PieceInParts, type ProgressInParts, progressInParts } from '../../src/weeks/progress-in-parts.js';
import { progressSheets } from '../../src/weeks/progress-sheets.js';
import type { FoundResult, KeptResult, LostTake } from '../../src/weeks/types.js';
import { day, takeOfWeeks } from '../helpers/weeks.js';

/**
 * The document in parts and on sheets: who stands where, counted by hand.
 *
 * Source: definition; a player's number stands for one person only within one folder.
 */
const TOOL = { name: 'takesheet', version: '1.0.0' };
const parts = (results: readonly FoundResult[], lost: readonly LostTake[] = []): ProgressInParts =>
  progressInParts({ tool: TOOL, results: results.map((one) => keepResult(one)), lost, failures: [] });

describe('sheets', () => {
  /** Two études of three and of four players, each with ten takes more than the one before. */
  const piece = (name: string, count: number): PieceInParts =>
    ({
      about: { title: name },
      count,
      takes: (from: number, to: number) => 10 * (to - from) + from,
      players: (from: number, to: number) => Array.from({ length: to - from }, (_, k) => `${name}${from + k}`),
      section: (from: number, to: number) => `${from} to ${to}`,
    }) as unknown as PieceInParts;
  const whole = {
    about: { takes: 70, unplaced: [1], repeated: [2], failures: [3] },
    pieces: [piece('a', 3), piece('b', 4)],
  };
  const sheets = (most: number) => [...progressSheets(whole as unknown as ProgressInParts, most)];
  const players = (most: number) =>
    sheets(most).map(({ progress }) => progress.pieces.map((one) => (one.players as unknown as string[]).join(' ')));

  it('hold so many players each, through all études', () => {
    expect(players(3)).toEqual([['a0 a1 a2'], ['b0 b1 b2'], ['b3']]);
    expect(players(2)).toEqual([['a0 a1'], ['a2', 'b0'], ['b1 b2'], ['b3']]);
    expect(players(5)).toEqual([['a0 a1 a2', 'b0 b1'], ['b2 b3']]);
    expect(sheets(5).map(({ progress }) => progress.pieces.map(({ section }) => section))).toEqual([
      ['0 to 3', '0 to 2'],
      ['2 to 4'],
    ]);
  });

  it('say which they are, and how many takes stand behind them', () => {
    expect(sheets(5).map(({ sheet, of, progress }) => [sheet, of, progress.takes])).toEqual([
      [1, 2, 30 + 20],
      [2, 2, 20 + 2],
    ]);
  });

  it('name what could not be placed on the first of them alone', () => {
    const named = sheets(3).map(({ progress: { unplaced, repeated, failures } }) => [unplaced, repeated, failures]);
    expect(named).toEqual([
      [[1], [2], [3]],
      [[], [], []],
      [[], [], []],
    ]);
  });

  it('are one where all have room, with all takes, and one where there is nobody', () => {
    expect(sheets(7)).toHaveLength(1);
    expect(players(7)).toEqual([['a0 a1 a2', 'b0 b1 b2 b3']]);
    expect(sheets(7)[0]).toMatchObject({ sheet: 1, of: 1, progress: { takes: 70, unplaced: [1] } });
    expect([...progressSheets({ ...whole, pieces: [] } as unknown as ProgressInParts, 3)]).toHaveLength(1);
  });
});

describe('the document in parts', () => {
  it('has players by name, those who have a name and a day', () => {
    const made = parts([
      takeOfWeeks({ player: 'Cy' }),
      takeOfWeeks({ player: 'Ada', date: day(7) }),
      takeOfWeeks({ player: 'ada' }),
      takeOfWeeks({ player: null }),
      takeOfWeeks({ player: 'Bo', date: null }),
      takeOfWeeks({ player: 'Bo', date: '2026-02-30' }),
    ]);
    const [piece] = made.pieces;
    expect(piece!.count).toBe(2);
    expect([...piece!.players(0, 2)].map(({ player, days }) => [player, days.length])).toEqual([
      ['Ada', 2],
      ['Cy', 1],
    ]);
    expect([piece!.takes(0, 2), piece!.takes(0, 1), piece!.takes(1, 2)]).toEqual([3, 2, 1]);
    expect(made.about).toMatchObject({ format: 'progress-result', version: 1, takes: 6, tool: TOOL, language: 'en' });
    expect(made.about.unplaced.map(({ player, date }) => [player, date])).toEqual([
      [null, day(0)],
      ['Bo', null],
      ['Bo', '2026-02-30'],
    ]);
    expect('blind' in made.about).toBe(false);
  });

  it('has the bars of the longest reading of the étude', () => {
    const [first] = [takeOfWeeks()];
    const cut = { notes: first!.result.notes.filter(({ bar }) => Number(bar) <= 3) };
    const long = parts([takeOfWeeks({ changed: cut }), takeOfWeeks({ date: day(1) })]).pieces[0]!.about.bars;
    expect(long).toHaveLength(24);
    expect(parts([takeOfWeeks({ changed: cut })]).pieces[0]!.about.bars).toEqual(['1', '2', '3']);
  });

  it('lists takes that were lost, unless they belong to a player or were reviewed later', () => {
    const found = takeOfWeeks();
    const lost = (file: string, player: string | null, scoreSha256 = found.result.score.sha256): LostTake => {
      return { file, scoreSha256, player, date: day(1), fault: { code: 'wav-format-cut', facts: {} } };
    };
    const unplaced = (...all: readonly LostTake[]) =>
      parts([found], all).about.unplaced.map(({ file, outcome }) => `${file} ${outcome}`);
    expect(unplaced(lost('x.wav', null), lost('y.wav', 'Bo'))).toEqual(['x.wav failed', 'y.wav failed']);
    expect(unplaced(lost('y.wav', 'ada lindqvist'))).toEqual([]);
    expect(unplaced(lost('y.wav', 'Ada Lindqvist', 'another'))).toEqual(['y.wav failed']);
    expect(unplaced(lost('y.wav', null), lost('y.wav', null))).toEqual(['y.wav failed']);
    expect(unplaced(lost(`elsewhere/${found.result.take.file}`, null))).toEqual([]);
    expect(unplaced(lost(found.result.take.file, null, 'another'))).toHaveLength(1);
  });
});

describe('numbers instead of names', () => {
  function numbered(file: string, player: string | null, date: string | null, place?: string): KeptResult {
    const { result } = keepResult(takeOfWeeks());
    const blind = { ...result, take: { ...result.take, player, date, blind: true } };
    return { file, result: blind, ...(place === undefined ? {} : { place }) };
  }
  const players = (results: readonly KeptResult[]) =>
    numbersOfBlind(results, []).results.map(({ result }) => result.take.player);
  const [first, second] = [day(0), day(7)];

  it('stand for a player within a folder where one comes on two days', () => {
    expect(players([numbered('b/takes/1.json', '01', first), numbered('b/takes/2.json', '01', second)])).toEqual([
      '01',
      '01',
    ]);
    expect(players([numbered('b/takes/1.json', '01', first), numbered('b/takes/2.json', '02', second)])).toEqual([
      null,
      null,
    ]);
    expect(players([numbered('b/takes/1.json', '01', first), numbered('b/takes/2.json', '01', null)])).toEqual([
      null,
      null,
    ]);
  });

  it('are told apart by their folders where there are several, of the same name by their order', () => {
    const all = ['x', 'y'].flatMap((place) => [
      numbered(`b/takes/${place}1.json`, '01', first, place),
      numbered(`b/takes/${place}2.json`, '01', second, place),
    ]);
    expect(players(all)).toEqual(['01 (b)', '01 (b)', '01 (b, 2)', '01 (b, 2)']);
    const { blind } = numbersOfBlind(
      [...all, numbered('c/takes/1.json', '07', first), numbered('d/1.json', null, first)],
      [],
    );
    expect(blind).toEqual({ followed: ['b', 'b, 2'], apart: ['c', 'd'] });
  });

  it('leave takes with names alone, and name lost ones alike', () => {
    const named = keepResult(takeOfWeeks({ player: 'Ada' }));
    expect(numbersOfBlind([named], [])).toEqual({ results: [named], lost: [], blind: null });
    const lost = (place?: string): LostTake => {
      const fault = { code: 'wav-format-cut', facts: {} } as const;
      return {
        file: 'z.wav',
        scoreSha256: 'aa',
        player: '01',
        date: second,
        fault,
        ...(place === undefined ? {} : { place }),
      };
    };
    const all = [numbered('b/1.json', '01', first, 'x'), numbered('b/2.json', '01', second, 'x'), named];
    const told = numbersOfBlind(all, [lost('x'), lost('y'), lost()]);
    expect(told.lost.map(({ player }) => player)).toEqual(['01', '01', '01']);
    const apart = numbersOfBlind([numbered('b/1.json', '01', first, 'x'), named], [lost('x'), lost('y')]);
    expect(apart.lost.map(({ player }) => player)).toEqual([null, '01']);
    expect(apart.results.map(({ result }) => result.take.player)).toEqual([null, 'Ada']);
  });
});
