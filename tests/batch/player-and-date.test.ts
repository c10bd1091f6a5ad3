import { describe, expect, it } from 'vitest';
import { playerAndDate } from '../../src/batch/plan/player-and-date.js';

describe('player and date', () => {
  // The first two forms are those the README promises; the others are how people name recordings (common practice).
  it.each([
    ['2026-03-02_Ada-Lindqvist', 'Ada Lindqvist', '2026-03-02'],
    ['Ada Lindqvist 2026-03-02', 'Ada Lindqvist', '2026-03-02'],
    ['2026-03-02 Ada Lindqvist', 'Ada Lindqvist', '2026-03-02'],
    ['20260302_Ada_Lindqvist', 'Ada Lindqvist', '2026-03-02'],
    ['2026_03_02-Ada', 'Ada', '2026-03-02'],
    ['Ada_Berg-Lind_2026-03-02', 'Ada Berg-Lind', '2026-03-02'],
    ['2026-03-02_Ada-Lindqvist_take2', 'Ada Lindqvist', '2026-03-02'],
    ['2026-03-02 Ada Lindqvist (2)', 'Ada Lindqvist', '2026-03-02'],
    ['Ada Lindqvist 2026-03-02 take 3', 'Ada Lindqvist', '2026-03-02'],
    ["2026-03-02_Maeve-O'Hara", "Maeve O'Hara", '2026-03-02'],
    ['2026-03-02_Zoë-Ångström', 'Zoë Ångström', '2026-03-02'],
    ['2026-03-02_Дарья', 'Дарья', '2026-03-02'],
    ['2026-03-02_Zoe\u0308', 'Zoë', '2026-03-02'],
  ])('reads %s', (stem, player, date) => {
    expect(playerAndDate(stem)).toEqual({ player, date });
  });

  it.each(['2026-03-02', '2026-03-02_42', '2026-03-02_take2', '2026-03-02 #3'])('knows only the day of %s', (stem) => {
    expect(playerAndDate(stem)).toEqual({ player: null, date: '2026-03-02' });
  });

  // Calendar facts: Gregorian calendar, ISO 8601; 2024 is a leap year, 2026 is not.
  it.each([
    'clean',
    'Ada Lindqvist',
    '2026-02-29_Ada',
    '2026-13-01_Ada',
    '2026-00-10_Ada',
    '12345678',
    '2026-03_Ada',
    '',
  ])('makes nothing up for %j', (stem) => {
    expect(playerAndDate(stem)).toEqual({ player: null, date: null });
  });

  it('knows the leap day', () => {
    expect(playerAndDate('2024-02-29_Ada').date).toBe('2024-02-29');
  });
});
