import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { goodTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, lines, put, takesheet } from './takesheet.js';

let root = '';

const review = (out: string, ...rest: string[]): Ended =>
  takesheet(root, 'review', '--score', 'part.musicxml', '--out', out, 'takes', ...rest);

const pages = (out: string): Record<string, string> =>
  Object.fromEntries(Object.entries(everyFile(join(root, out, 'takes'))).filter(([file]) => file.endsWith('.html')));

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'listen-'));
  put(root, {
    'part.musicxml': SHORT_PART,
    'takes/ada.wav': goodTake({ seed: 2 }),
    'takes/ben.wav': goodTake({ seed: 3, tempoFactor: 0.9 }),
  });
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

describe('a review to listen to', () => {
  it('writes a page a take beside what it writes anyhow', () => {
    expect(review('plain').status).toBe(0);
    expect(review('heard', '--listen').status).toBe(0);
    const [plain, heard] = [everyFile(join(root, 'plain', 'takes')), everyFile(join(root, 'heard', 'takes'))];
    expect(pages('plain')).toEqual({});
    expect(Object.keys(pages('heard'))).toEqual(['ada.html', 'ben.html']);
    expect({ ...heard }).toMatchObject(plain);
    expect(readFileSync(join(root, 'heard', 'takes', 'ada.html'), 'utf8')).toMatch(
      /^<!DOCTYPE html>\n<html lang="en">/,
    );
  });

  it('gives the same pages with any number of workers', () => {
    expect(review('alone', '--listen', '--jobs', '1').status).toBe(0);
    expect(pages('alone')).toEqual(pages('heard'));
  });

  it('makes pages that are missing or changed, and keeps those that are there', () => {
    const before = pages('heard');
    rmSync(join(root, 'heard', 'takes', 'ada.html'));
    writeFileSync(join(root, 'heard', 'takes', 'ben.html'), 'something else');
    const again = review('heard', '--listen');
    expect(lines(again.stderr).filter((line) => line.endsWith('as before'))).toEqual([]);
    expect(pages('heard')).toEqual(before);
    const kept = review('heard', '--listen');
    expect(lines(kept.stderr).filter((line) => line.endsWith('as before'))).toHaveLength(2);
    // pages of a result that stands belong to it, whether or not they are asked for again
    expect(review('heard').stderr).not.toContain('left alone');
    expect(pages('heard')).toEqual(before);
  });

  it('makes pages for results that are there without them, and names pages that have grown old', () => {
    expect(review('plain', '--listen').status).toBe(0);
    expect(pages('plain')).toEqual(pages('heard'));
    const anew = review('plain', '--again');
    expect(anew.stderr).toContain('left alone and not counted');
    expect(anew.stderr).toContain('takes/ada.html');
  });

  it('does not go with data alone', () => {
    const ended = review('none', '--listen', '--json-only');
    expect(ended.status).toBe(2);
    expect(lines(ended.stderr)).toHaveLength(1);
    expect(ended.stderr).toContain('--listen');
  });
});
