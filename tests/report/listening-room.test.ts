import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readDemoScore } from '../../src/demo/index.js';
import { engravePart } from '../../src/engrave/index.js';
import { drawListeningRoom, type RoomInput, type RoomTake } from '../../src/report/index.js';
import type { PartData, RoomData, TakeData } from '../../src/report/listen/room-data.js';
import { takeClock } from '../../src/report/listen/take-clock.js';
import { writtenPart } from '../../src/report/listen/written-part.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';
import { playedTake, ROOM_PART, shortPart } from '../helpers/listening-room.js';
import { findingAt, playedAsWritten } from '../helpers/marked-excerpts.js';

const part = readPart(ROOM_PART);

function blockOf<T>(html: string, id: string): T {
  const [, text = ''] = html.match(new RegExp(`<script type="application/json" id="${id}">(.*?)</script>`)) ?? [];
  return JSON.parse(text) as T;
}

describe('the part as written', () => {
  // 120 quarters a minute: half a second each. A tongued note sounds 0.9 of its time (common practice, as in the demo).
  it('begins each note when it is written, at the printed tempo', () => {
    const { notes } = writtenPart(part, null);
    expect(notes.slice(0, 5).map(([onset, length, midi]) => [onset, length, midi])).toEqual([
      [0, 450, 67],
      [500, 450, 69],
      [1000, 450, 71],
      [1500, 450, 72],
      [2000, 900, 74],
    ]);
    // performed 1 2 3 2 3 4 5 6: bar 5 begins after 24 quarters
    expect(notes.find(([, , midi]) => midi === 64)?.[0]).toBe(12_000);
  });

  it('takes the tempo of the brief', () => {
    expect(writtenPart(part, 60).notes.map(([onset]) => onset)).toEqual(
      writtenPart(part, null).notes.map(([onset]) => onset * 2),
    );
  });

  it('holds fermatas, slows where it is asked to, and goes louder from mark to mark', () => {
    const note = part.notes[4]!;
    const held: Part = { ...part, notes: part.notes.map((one) => (one.index === 4 ? { ...one, fermata: true } : one)) };
    const toNext = (of: Part) => writtenPart(of, null).notes[5]![0] - writtenPart(of, null).notes[4]![0];
    expect(toNext(held)).toBe(2 * toNext(part));
    const bend = { kind: 'slower' as const, startQuarters: 0, endQuarters: note.onsetQuarters };
    const [first, second, third, fourth] = writtenPart({ ...part, tempoBends: [bend] }, null).notes.map(([on]) => on);
    expect(second! - first!).toBeGreaterThan(500);
    expect(fourth! - third!).toBeGreaterThan(second! - first!);
    const etude = readPart(readDemoScore());
    const levels = writtenPart(etude, null).notes.map(([, , , level]) => level);
    // the étude begins p and has a crescendo in bars 6 and 7 that leads to the f of bar 8
    const at = (bar: string) => levels[etude.notes.findIndex((one) => one.bar === bar)]!;
    expect(at('1')).toBe(-70);
    expect(at('6')).toBe(-70);
    expect(at('7')).toBeGreaterThan(at('6'));
    expect(at('8')).toBe(80);
  });

  it('lets slurred notes run into each other and staccato ones be short', () => {
    const etude = readPart(readDemoScore());
    const { notes } = writtenPart(etude, null);
    for (const { index, slurredToNext, articulations, fermata } of etude.notes.slice(0, -1)) {
      const [onset, length, , , legato] = notes[index]!;
      const gap = notes[index + 1]![0] - onset - length;
      expect(legato).toBe(slurredToNext ? 1 : 0);
      if (slurredToNext) expect(Math.abs(gap)).toBeLessThanOrEqual(1);
      else if (articulations.includes('staccato') && !fermata) expect(gap).toBeGreaterThan(length);
    }
  });
});

describe('where a take stands in the part', () => {
  it('knows every bar that was played by its notes, and none that was not', () => {
    const { take, truth } = playedTake(
      part,
      { player: 'A', date: null, name: 'a' },
      {
        faults: [{ kind: 'skip', from: { bar: '5', beat: 1 }, to: part.notes.length - 1 }],
      },
    );
    const { bars, clock } = takeClock(take.result, part);
    expect(bars.map((bar) => bar !== null)).toEqual([true, true, true, true, true, false, false, false]);
    const first = (place: number) =>
      truth.find(({ index }) => index === part.notes.findIndex((one) => one.onsetQuarters === 4 * place))!;
    for (const place of [0, 1, 2, 3, 4]) expect(bars[place]![0]).toBe(Math.round(first(place).onsetSeconds * 1000));
    for (let i = 1; i < clock.length; i++) {
      expect(clock[i]![0]).toBeGreaterThan(clock[i - 1]![0]);
      expect(clock[i]![1]).toBeGreaterThanOrEqual(clock[i - 1]![1]);
    }
  });
});

describe('a listening room', () => {
  let input: RoomInput;
  const finding = () => findingAt(part, 'wrong-note', 2, { text: 'A < note & "another".' });
  beforeAll(async () => {
    const takes = [
      playedTake(part, { player: 'Ada', date: '2026-03-02', name: '2026-03-02_Ada' }, {}, [finding()]),
      playedTake(part, { player: 'Ada', date: '2026-03-09', name: '2026-03-09_Ada' }, { seed: 4 }),
      playedTake(part, { player: null, date: null, name: 'somebody' }, { seed: 5 }),
    ].map(({ take }) => take);
    input = { language: 'en', blind: false, parts: [await shortPart()], takes };
  });

  it('is one page that comes out the same again, and names no address but its sounds', () => {
    const html = drawListeningRoom(input);
    expect(drawListeningRoom(input) === html).toBe(true);
    expect(html.slice(0, 40)).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
    // the name of the language SVG is one, and no address
    expect(html.replaceAll('http://www.w3.org/2000/svg', '').match(/https?:/)).toBeNull();
    const addresses = [...html.matchAll(/(?:src|href)="([^"]*)"/g)].map(([, address]) => address);
    expect(addresses).toEqual(input.takes.map(({ sound }) => sound));
  });

  // Content Security Policy Level 3: the hash is of the text between the tags.
  it('allows its own scripts and style by their hashes, and no others', () => {
    const html = drawListeningRoom(input);
    const [, policy = ''] = html.match(/Content-Security-Policy" content="([^"]*)"/) ?? [];
    const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
    const scripts = [...html.matchAll(/<script>(.*?)<\/script>/gs)].map(([, text = '']) => text);
    expect(scripts).toHaveLength(2);
    for (const script of scripts) expect(policy).toContain(hashOf(script));
    expect(policy).toContain(hashOf(html.match(/<style>(.*?)<\/style>/s)?.[1] ?? ''));
    expect(policy).toMatch(/^default-src 'none';/);
    expect(policy).not.toContain('unsafe');
    expect(html.match(/ style="| on[a-z]+="/)).toBeNull();
  });

  it('hands its script where every bar and every note stands, in long lines and in short ones', () => {
    const { parts } = blockOf<RoomData>(drawListeningRoom(input), 'room-data');
    const { layouts, bars, onsets } = parts[0] as PartData;
    expect(bars.map(([bar, , pass]) => `${bar}.${pass}`)).toEqual([
      '1.1',
      '2.1',
      '3.1',
      '2.2',
      '3.2',
      '4.1',
      '5.1',
      '6.1',
    ]);
    expect(onsets).toHaveLength(part.notes.length);
    for (const layout of [layouts.wide, layouts.narrow]) {
      expect(layout.bars).toHaveLength(6);
      for (const [i, [line, left, right]] of layout.bars.entries()) {
        const [lineBefore, , rightBefore] = layout.bars[i - 1] ?? [-1, 0, 0];
        expect(left).toBe(lineBefore === line ? rightBefore : 0);
        expect(right - left).toBeGreaterThan(20);
        expect(right).toBeLessThanOrEqual(layout.lines[line]!.width + 1);
      }
      for (const [i, x] of layout.heads.entries()) {
        const [, left, right] = layout.bars[part.notes[i]!.barIndex]!;
        expect(x).toBeGreaterThan(left);
        expect(x).toBeLessThan(right);
      }
    }
    expect(layouts.narrow.lines.length).toBeGreaterThan(layouts.wide.lines.length);
  });

  it('draws the pencil marks of a take into both, and tells what was found without its script', () => {
    const html = drawListeningRoom(input);
    const [first, second] = [0, 1].map((i) => blockOf<TakeData>(html, `take-data-${i}`));
    expect(Object.keys(first!.marks.wide)).toEqual(['0']);
    expect(Object.keys(first!.marks.narrow).length).toBe(1);
    expect(second!.marks.wide).toEqual({});
    expect(html.includes('A &lt; note &amp; &quot;another&quot;.')).toBe(true);
    expect(html.match(/<audio controls/g)?.length).toBe(3);
  });

  it('has numbered boxes where the part cannot be engraved', () => {
    const plain = drawListeningRoom({ ...input, parts: [{ ...input.parts[0]!, engraved: null }] });
    const { layouts } = blockOf<RoomData>(plain, 'room-data').parts[0]!;
    expect(layouts.wide.bars.map(([line, left]) => [line, left])).toEqual([0, 1, 2, 3, 4, 5].map((i) => [0, 75 * i]));
    expect(layouts.narrow.lines).toHaveLength(2);
    expect(plain.match(/<text[^>]*>6<\/text>/)).not.toBeNull();
  });

  it('says what became of a take that was not reviewed, and of one without sound', () => {
    const poor: RoomTake = { ...input.takes[2]!, result: { ...input.takes[2]!.result, outcome: 'too-poor' } };
    const silent: RoomTake = { ...input.takes[1]!, sound: null, facts: null };
    const html = drawListeningRoom({ ...input, takes: [input.takes[0]!, silent, poor] });
    expect(html.includes('The playing could not be heard')).toBe(true);
    expect(html.includes('There is nothing to hear of this take.')).toBe(true);
    expect(html.includes('id="take-data-2"')).toBe(false);
    expect(drawListeningRoom({ ...input, takes: [], parts: [] }).includes('0 takes')).toBe(true);
  });

  it('stays below 3 MB with sixty takes', () => {
    const findings = Array.from({ length: 12 }, (_, i) =>
      findingAt(part, i % 2 ? 'note-out-of-tune' : 'wrong-note', i),
    );
    const takes = Array.from({ length: 60 }, (_, i): RoomTake => {
      const { take } = playedTakeOnce(findings);
      const facts = { ...take.facts!, kWeightedDb: Array.from({ length: 1200 }, (_, k) => -20 - (k % 7)) };
      return { ...take, name: `take ${i}`, facts };
    });
    expect(Buffer.byteLength(drawListeningRoom({ ...input, takes }))).toBeLessThan(3_000_000);
  });
});

let once: ReturnType<typeof playedTake> | undefined;

/** The same playing sixty times: what is weighed is the page. */
function playedTakeOnce(findings: Parameters<typeof playedTake>[3]): ReturnType<typeof playedTake> {
  once ??= playedTake(part, { player: 'Ada', date: null, name: 'x' }, {}, findings);
  return once;
}

describe('any part', () => {
  const scores = join(import.meta.dirname, '../../fixtures/scores/compared');
  const files = readdirSync(scores).filter((file) => file.endsWith('.musicxml'));

  // Source of what must hold: a page is read from left to right, and time only goes on.
  it.each(files)('%s: bars follow each other in their lines, notes and time in their bars', async (file) => {
    const bytes = readFileSync(join(scores, file));
    const own = readPart(bytes);
    const engraved = await engravePart(engravingCopy(bytes));
    const result = { ...playedAsWritten(own), score: { ...playedAsWritten(own).score, file } };
    const take = { name: 'a', result, sound: null, facts: null, pages: null };
    const parts = [{ file, part: own, engraved, targetBpm: null }];
    const html = drawListeningRoom({ language: 'en', blind: false, parts, takes: [take] });
    const { layouts, written } = blockOf<RoomData>(html, 'room-data').parts[0]!;
    for (const { bars, heads, lines } of [layouts.wide, layouts.narrow]) {
      expect(bars).toHaveLength(own.printedBars);
      for (const [i, [line, left, right]] of bars.entries()) {
        const [lineBefore, , rightBefore] = bars[i - 1] ?? [-1, 0, 0];
        expect(left).toBe(lineBefore === line ? rightBefore : 0);
        expect(right).toBeGreaterThan(left);
        expect(right).toBeLessThanOrEqual(lines[line]!.width + 1);
      }
      for (const [i, x] of heads.entries()) {
        if (x === null) continue;
        const [, left, right] = bars[own.notes[i]!.barIndex]!;
        expect(x).toBeGreaterThan(left);
        expect(x).toBeLessThan(right);
      }
    }
    for (let i = 1; i < written.clock.length; i++) {
      expect(written.clock[i]![0]).toBeGreaterThan(written.clock[i - 1]![0]);
      expect(written.clock[i]![1]).toBeGreaterThan(written.clock[i - 1]![1]);
    }
    for (const [onset, length] of written.notes) {
      expect(Number.isFinite(onset)).toBe(true);
      expect(length).toBeGreaterThanOrEqual(40);
    }
  });
});
