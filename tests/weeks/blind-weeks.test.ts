import { describe, expect, it } from 'vitest';
import { drawProgressSheet } from '../../src/report/index.js';
import type { FoundResult } from '../../src/weeks/index.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { progressOf, wholeSheet } from '../helpers/progress-of.js';
import { sampleReview } from '../helpers/sample-review.js';
import { atTempo, day, takeOfWeeks } from '../helpers/weeks.js';

const { tool } = sampleReview();

/** A take under a number, in a folder that `review --blind` wrote to. */
function numbered(folder: string, number: string, after: number, tempo = 90): FoundResult {
  const { result } = takeOfWeeks({ player: number, date: day(after), changed: atTempo(tempo) });
  const take = { ...result.take, file: `${number}.wav`, blind: true };
  return { file: `${folder}/takes/${number}-${after}.json`, result: { ...result, take } };
}

const over = (...results: FoundResult[]) => progressOf({ tool, results, lost: [], failures: [] });
const playersIn = (document: ReturnType<typeof over>) =>
  document.pieces.flatMap(({ players }) => players.map(({ player, days }) => [player, days.length]));

describe('numbers instead of names, over weeks', () => {
  it('are followed in one folder whose key keeps a number for each player', () => {
    const document = over(numbered('b', '01', 0, 70), numbered('b', '01', 7, 99), numbered('b', '02', 7));
    expect(playersIn(document)).toEqual([
      ['01', 2],
      ['02', 1],
    ]);
    expect(document.blind).toEqual({ followed: ['b'], apart: [] });
  });

  it('are no players where none comes on two days', () => {
    const document = over(numbered('b', '01', 0), numbered('b', '02', 7), numbered('b', '02', 7));
    expect(playersIn(document)).toEqual([]);
    expect(document.unplaced.map(({ player }) => player)).toEqual([null, null, null]);
    expect(document.blind).toEqual({ followed: [], apart: ['b'] });
  });

  it('are never the same player in two folders', () => {
    const document = over(
      ...[0, 7].map((after) => numbered('b', '01', after)),
      ...[14, 21].map((after) => numbered('c', '01', after)),
      numbered('d', '01', 28),
    );
    expect(playersIn(document)).toEqual([
      ['01 (b)', 2],
      ['01 (c)', 2],
    ]);
    expect(document.blind).toEqual({ followed: ['b', 'c'], apart: ['d'] });
  });

  it('are told apart in folders of the same name', () => {
    const one = (place: string) => [0, 7].map((after) => ({ ...numbered('b', '01', after), place }));
    expect(playersIn(over(...one('/x/b'), ...one('/y/b')))).toEqual([
      ['01 (b)', 2],
      ['01 (b, 2)', 2],
    ]);
  });

  it('do not stand in the way of names, and a recording that has both counts with its name', () => {
    const blind = numbered('b', '01', 0);
    const named = takeOfWeeks({
      player: 'Ada',
      date: day(0),
      sha256: blind.result.take.sha256,
      file: 's/takes/a.json',
    });
    const document = over(blind, named, takeOfWeeks({ player: 'Ada', date: day(7) }));
    expect(playersIn(document)).toEqual([['Ada', 2]]);
    expect(document.takes).toBe(2);
  });

  it('leave takes alone that are only called so by hand', () => {
    expect(playersIn(over(takeOfWeeks({ player: '07', date: day(0) })))).toEqual([['07', 1]]);
  });

  it.each(['en', 'de'] as const)('are explained on the sheet: %s', async (language) => {
    const results = [...[0, 7].map((after) => numbered('b', '01', after)), numbered('d', '01', 28)];
    const sheet = wholeSheet({ tool, language, results, lost: [], failures: [] });
    const bytes = await drawProgressSheet({ ...sheet, paper: 'a4', creationDate: new Date('2026-03-16T00:00:00Z') });
    const text = inspectPdf(bytes).pageTexts.join(' ').replace(/\s+/g, ' ');
    expect(text).toMatch(language === 'en' ? /Numbers stand for players here/ : /Hier stehen Nummern für Namen/);
    expect(text).toMatch(language === 'en' ? /In d numbers stand for names/ : /In d stehen Nummern für Namen/);
  });
});
