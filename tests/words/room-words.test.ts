import { describe, expect, it } from 'vitest';
import { drawListeningRoom } from '../../src/report/index.js';
import { wordsIn } from '../../src/words/words-in.js';
import { ENGLISH_WORDS } from '../helpers/english-words.js';
import { playedTake, shortPart } from '../helpers/listening-room.js';
import { lix } from '../helpers/lix.js';
import { readingGrade, sentenceLengths } from '../helpers/reading-grade.js';

const HIGHEST_GRADE = 6;
const LONGEST_SENTENCE = 28;
const HIGHEST_LIX = 50;

/** What is said to players in sentences. */
const toPlayers = (language: 'en' | 'de'): (readonly [string, string])[] => {
  const { intro, withoutScripts, curves, practise, nothingFound, silent, days, script } = wordsIn(language).room;
  return [
    ['how to begin', [intro, withoutScripts, curves].join(' ')],
    ['practising', [practise.about, practise.model].join(' ')],
    ['days', days.about],
    ['nothing', [nothingFound, silent].join(' ')],
    ['what happens', [script.noSound, script.notPlayedIn, script.cannotPlay].join(' ')],
  ];
};

describe('what a listening room says', () => {
  it.each(toPlayers('en'))('%s: is read without help at thirteen', (_, text) => {
    expect([text, readingGrade(text) <= HIGHEST_GRADE]).toEqual([text, true]);
    expect(Math.max(...sentenceLengths(text))).toBeLessThanOrEqual(LONGEST_SENTENCE);
  });

  it.each(toPlayers('de'))('%s: the same in German', (_, text) => {
    expect([text, lix(text) <= HIGHEST_LIX]).toEqual([text, true]);
  });

  // Source: HTML Living Standard, 3.2.6.2 (the lang attribute).
  it('is German in a German room, names for those who cannot see and what the script says among it', async () => {
    const part = await shortPart();
    const { take } = playedTake(part.part, { player: 'Ada', date: '2026-03-02', name: 'ada' });
    const second = {
      ...take,
      name: 'ada-2',
      result: { ...take.result, take: { ...take.result.take, date: '2026-03-09' } },
    };
    const german = { ...part, part: { ...part.part, title: 'Die Fähre' } };
    const takes = [take, second].map((one) => ({
      ...one,
      result: { ...one.result, language: 'de' as const, score: { ...one.result.score, part: 'Flöte' } },
    }));
    const html = drawListeningRoom({ language: 'de', blind: false, parts: [german], takes });
    expect(html.includes('<html lang="de">')).toBe(true);
    const body = html.slice(html.indexOf('<body>')).replace(/<(script|style)[^>]*>.*?<\/\1>/gs, '');
    const named = [...body.matchAll(/(?:aria-label|alt)="([^"]*)"/g)].map(([, name]) => name);
    const said = Object.values(wordsIn('de').room.script)
      .join(' ')
      .replaceAll(/\{\w+\}/g, '');
    const text = [...named, body.replace(/<[^>]*>/gs, ' '), said]
      .join(' ')
      .replaceAll(/standing --panel|marks\.csv|„sound“/g, '');
    expect(text.match(ENGLISH_WORDS)?.[0]).toBeUndefined();
    expect(text).toContain('Dieselben Takte reihum');
  });

  it('has the same places to fill in every language', () => {
    const filled = (language: 'en' | 'de') =>
      Object.entries(wordsIn(language).room.script).map(([name, text]) => [
        name,
        [...text.matchAll(/\{\w+\}/g)].map(String).sort(),
      ]);
    expect(filled('de')).toEqual(filled('en'));
  });
});
