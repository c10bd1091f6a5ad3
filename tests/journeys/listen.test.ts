import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { goodTake, OTHER_PART, otherTake, SHORT_PART } from './short-part.js';
import { type Ended, everyFile, lines, put, takesheet } from './takesheet.js';

let root = '';

const review = (out: string, ...rest: string[]): Ended =>
  takesheet(root, 'review', '--score', 'part.musicxml', '--out', out, 'takes', ...rest);

const under = (out: string, folder: string): Record<string, string> =>
  Object.fromEntries(Object.entries(everyFile(join(root, out))).filter(([file]) => file.startsWith(`${folder}/`)));
const room = (out: string): string => readFileSync(join(root, out, 'listen', 'index.html'), 'utf8');
const asBefore = ({ stderr }: Ended): number => lines(stderr).filter((line) => line.endsWith('as before')).length;

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'listen-'));
  put(root, {
    'part.musicxml': SHORT_PART,
    'takes/ada.wav': goodTake({ seed: 2 }),
    'takes/ben & co #2.wav': goodTake({ seed: 3, tempoFactor: 0.9 }),
  });
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

describe('a review to listen to', () => {
  it('writes the room and a sound a take beside what it writes anyhow', () => {
    expect(review('plain').status).toBe(0);
    expect(under('plain', 'listen')).toEqual({});
    const ended = review('heard', '--listen');
    expect(ended).toMatchObject({ status: 0 });
    expect(lines(ended.stdout)).toHaveLength(2);
    expect(Object.keys(under('heard', 'listen'))).toEqual([
      'listen/index.html',
      'listen/sound/ada.facts.json',
      'listen/sound/ada.webm',
      'listen/sound/ben & co #2.facts.json',
      'listen/sound/ben & co #2.webm',
    ]);
    expect(room('heard')).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
    // Source: RFC 3986: what means something else in an address is written as its number.
    expect(room('heard')).toContain('sound/ben%20%26%20co%20%232.webm');
    const [plain, heard] = [under('plain', 'takes'), under('heard', 'takes')];
    expect(Object.keys(heard)).toEqual(Object.keys(plain));
    for (const file of Object.keys(plain).filter((name) => name.endsWith('.json')))
      expect(heard[file]).toBe(plain[file]);
  });

  it('gives the same bytes with any number of workers', () => {
    expect(review('alone', '--listen', '--jobs', '1').status).toBe(0);
    expect(everyFile(join(root, 'alone'))).toEqual(everyFile(join(root, 'heard')));
  });

  it('makes sounds that are missing or changed, keeps those that are there, and writes the room each time', () => {
    const before = everyFile(join(root, 'heard'));
    rmSync(join(root, 'heard', 'listen', 'sound', 'ada.webm'));
    writeFileSync(join(root, 'heard', 'listen', 'sound', 'ben & co #2.facts.json'), '{}');
    expect(asBefore(review('heard', '--listen'))).toBe(0);
    expect(everyFile(join(root, 'heard'))).toEqual(before);
    rmSync(join(root, 'heard', 'listen', 'index.html'));
    expect(asBefore(review('heard', '--listen'))).toBe(2);
    expect(everyFile(join(root, 'heard'))).toEqual(before);
    // what belongs to a result that stands is kept, whether or not it is asked for again
    const without = review('heard');
    expect(asBefore(without)).toBe(2);
    expect(without.stderr).not.toContain('left alone');
    expect(everyFile(join(root, 'heard'))).toEqual(before);
  });

  it('makes sounds for results that are there without them, and names sounds that have grown old', () => {
    expect(review('plain', '--listen').status).toBe(0);
    expect(everyFile(join(root, 'plain'))).toEqual(everyFile(join(root, 'heard')));
    const anew = review('plain', '--again');
    expect(anew.stderr).toContain('left alone and not counted');
    expect(anew.stderr).toContain('listen/sound/ada.webm');
  });

  it('does not go with data alone', () => {
    const ended = review('none', '--listen', '--json-only');
    expect(ended.status).toBe(2);
    expect(lines(ended.stderr)).toHaveLength(1);
    expect(ended.stderr).toContain('--listen');
  });

  it('is not taken for results by a look over the weeks', () => {
    const ended = takesheet(root, 'progress', 'heard', '--format', 'json', '--out', 'weeks.json');
    expect(ended.stderr).not.toContain('facts');
    expect(ended.stderr).not.toContain('scores');
  });
});

describe('takes beside others', () => {
  it('lose only themselves when they are no recordings', () => {
    put(root, {
      'mixed/good.wav': goodTake({ seed: 2 }),
      'mixed/torn.wav': goodTake({ seed: 3 }).subarray(0, 30),
      'mixed/other.wav': otherTake(),
    });
    const words = ['review', '--score', 'part.musicxml', '--out', 'out-mixed', '--listen', 'mixed'];
    expect(takesheet(root, ...words).status).toBe(1);
    expect(Object.keys(under('out-mixed', 'listen/sound'))).toEqual(
      ['good', 'other'].flatMap((name) => [`listen/sound/${name}.facts.json`, `listen/sound/${name}.webm`]),
    );
    expect(room('out-mixed')).toContain('sound/good.webm');
    expect(room('out-mixed')).not.toContain('torn');
  });

  it('leave no room when nothing can be heard of them', () => {
    put(root, { 'torn/torn.wav': goodTake({ seed: 3 }).subarray(0, 30) });
    const words = ['review', '--score', 'part.musicxml', '--out', 'out-torn', '--listen', 'torn'];
    expect(takesheet(root, ...words).status).toBe(1);
    expect(under('out-torn', 'listen')).toEqual({});
  });
});

describe('several shares', () => {
  it('give one room once section has brought them together, the same as one run would', () => {
    for (const share of ['1/2', '2/2']) {
      expect(review(`share-${share[0]}`, '--listen', '--shard', share).status).toBe(0);
    }
    cpSync(join(root, 'share-1'), join(root, 'together'), { recursive: true });
    cpSync(join(root, 'share-2'), join(root, 'together'), { recursive: true });
    expect(takesheet(root, 'section', 'together')).toMatchObject({ status: 0 });
    expect(under('together', 'listen')).toEqual(under('heard', 'listen'));
  });

  it('leave the room alone where only data is asked for, and where there are no sounds', () => {
    rmSync(join(root, 'together', 'listen', 'index.html'));
    expect(takesheet(root, 'section', 'together', '--json-only').status).toBe(0);
    expect(Object.keys(under('together', 'listen'))).not.toContain('listen/index.html');
    rmSync(join(root, 'together', 'listen'), { recursive: true });
    expect(takesheet(root, 'section', 'together')).toMatchObject({ status: 0 });
    expect(under('together', 'listen')).toEqual({});
  });

  it('say in one line when a score that was kept cannot be read', () => {
    cpSync(join(root, 'heard'), join(root, 'damaged'), { recursive: true });
    writeFileSync(join(root, 'damaged', 'records', 'scores', 'part.musicxml'), 'no score');
    const ended = takesheet(root, 'section', 'damaged');
    expect(ended.status).toBe(1);
    expect(lines(ended.stderr)).toEqual([expect.stringMatching(/^listen: /)]);
  });
});

describe('several parts', () => {
  it('stand in one room, with their briefs kept beside them', () => {
    put(root, {
      'parts/four.musicxml': SHORT_PART,
      'parts/other.musicxml': OTHER_PART,
      'parts/four.brief.yaml': 'tempo: { bpm: 88, beat: quarter }\n',
      'both/four.wav': goodTake({ seed: 2 }),
      'both/other.wav': otherTake(),
    });
    const words = ['review', '--scores', 'parts', '--out', 'out-both', '--listen', 'both'];
    expect(takesheet(root, ...words)).toMatchObject({ status: 0 });
    expect(
      Object.keys(under('out-both', 'records/scores')).map((file) => file.slice('records/scores/'.length)),
    ).toEqual(['four.brief.yaml', 'four.musicxml', 'other.musicxml']);
    const before = room('out-both');
    expect(before).toContain('Four Other Bars');
    rmSync(join(root, 'out-both', 'listen', 'index.html'));
    expect(takesheet(root, 'section', 'out-both').status).toBe(0);
    expect(room('out-both')).toBe(before);
  });
});

describe('a blind room', () => {
  it('names nobody in any byte of its folder, nor in the names of its files', () => {
    put(root, {
      'named/2026-03-02_Ada-Lindqvist.wav': goodTake({ seed: 2 }),
      'named/2026-03-02_Ben-Ito.wav': goodTake({ seed: 3 }),
      'roster.csv': 'file,player,mail\n2026-03-02_Ada-Lindqvist.wav,Ada Lindqvist,ada@school.example\n',
    });
    const words = ['review', '--score', 'part.musicxml', '--out', 'blind', '--blind', '--roster', 'roster.csv'];
    expect(takesheet(root, ...words, '--listen', 'named').status).toBe(0);
    const files = under('blind', 'listen');
    expect(Object.keys(files)).toEqual([
      'listen/index.html',
      ...['01', '02'].flatMap((name) => [`listen/sound/${name}.facts.json`, `listen/sound/${name}.webm`]),
    ]);
    // whoever has the recordings would know the hash of one
    const hash = createHash('sha256')
      .update(goodTake({ seed: 2 }))
      .digest('hex');
    for (const name of Object.keys(files)) {
      const bytes = readFileSync(join(root, 'blind', name));
      // three letters alone come up by chance in what is compressed, and in faces
      for (const said of ['Ada-', 'Ada ', 'Lindqvist', 'Ben-', 'Ben Ito', '-Ito', 'school.example', hash]) {
        expect([name, said, bytes.indexOf(said)]).toEqual([name, said, -1]);
      }
    }
  });
});
