import { readdirSync, readFileSync } from 'node:fs';
import { enableLog, LOG_OFF, VerovioToolkit } from 'verovio/esm';
import createVerovioModule from 'verovio/wasm';
import { beforeAll, describe, expect, test } from 'vitest';
import { type ReadPartOptions, readPart } from '../../src/score/index.js';
import { generatedBars } from './generated-score.js';
import { midiNotes } from './midi-notes.js';
import { scoreOf } from './score-of.js';

/**
 * What is read here, note by note against what three notation programs read by their own code: music21 and MuseScore (their
 * lists are stored, fixtures/ORIGINS.md says how they were made) and Verovio (asked here, by its MIDI file).
 */

/** Onset in quarters, length in quarters (null: the reader does not say), sounding MIDI number. */
type Heard = readonly [onset: number, length: number | null, midi: number];
type Reader = 'music21' | 'musescore' | 'verovio';

/**
 * Decimals that must agree. MuseScore's MIDI has 480 ticks a quarter, so that sevenths of a half are rounded, each by up to
 * a tick; Verovio's has 120, and it ends notes up to two ticks early.
 */
const DECIMALS: Readonly<Record<Reader, number>> = { music21: 6, musescore: 2, verovio: 1 };

/** Where several lines together make what the readers list. */
const LINES: Readonly<Record<string, readonly ReadPartOptions[]>> = {
  'line-05-two-voices': [{ voice: '1' }, { voice: '2' }],
  'line-06-two-staves': [{ voice: '1' }, { voice: '5' }],
  'line-25-timewise': [{ part: 'P1' }, { part: 'P2' }],
};

/** Readers list whole chords and all voices; the player reads the top note (definition). */
const TOP_NOTE_ONLY = ['line-07-chords', 'river-stones'];

/**
 * MusicXML 4.0, cue: "a cue note is a silent note with no playback" (wording from memory). All three readers list the cue notes of this file, which
 * fill its second bar.
 */
const CUE_NOTES: Readonly<Record<string, readonly [from: number, to: number]>> = { 'line-21-cue-notes': [4, 8] };

/** A grace note has no time of its own (MusicXML 4.0, grace); these readers give it some, so that only pitches compare. */
const GRACE_NOTES = ['line-04-grace-notes', 'river-stones'];
const GIVE_GRACE_NOTES_TIME: readonly Reader[] = ['musescore', 'verovio'];

const NO_CODA = 'knows no way to a coda';
const NEEDS_TYPES = 'takes lengths from `type`, which is optional; MusicXML 4.0: `duration` is the length';
const NO_TIMEWISE = 'does not read score-timewise';
const ONE_TIE_TWO_NOTES = 'joins two notes by a tie, not one note to the notes of two endings';
const TO_THE_VERY_BEGINNING = 'goes back to the very beginning; see the test of this file below';

/** Where a reader is wrong or silent, and why. */
const LEFT_OUT: Readonly<Record<string, Partial<Readonly<Record<Reader, string>>>>> = {
  'line-03-nested-tuplets': {
    verovio: 'applies the outer ratio only; MusicXML 4.0, time-modification: the cumulative effect (from memory)',
  },
  'line-14-change-of-instrument': { verovio: 'keeps the first `transpose` of a part' },
  'line-23-bare': { verovio: NEEDS_TYPES },
  'line-25-timewise': { verovio: NO_TIMEWISE },
  'morning-round': { verovio: ONE_TIE_TWO_NOTES },
  'three-gates': { verovio: NO_TIMEWISE, musescore: 'lists the unpitched part as well' },
  'way-03-second-section-unopened': {
    music21: TO_THE_VERY_BEGINNING,
    musescore: TO_THE_VERY_BEGINNING,
    verovio: TO_THE_VERY_BEGINNING,
  },
  'way-15-dc-al-fine-last-ending': { music21: 'plays the first ending each time as soon as there is a D.C.' },
  'way-17-ds-al-coda': { verovio: NO_CODA },
  'way-19-ds-al-coda-after-endings': {
    music21: 'plays the first ending each time as soon as there is a D.S.',
    verovio: NO_CODA,
  },
  'way-20-ds-al-coda-words-only': { verovio: NEEDS_TYPES },
  'way-22-dc-al-fine-words-only': { verovio: 'reads D.C. from `sound` only' },
  'way-23-tie-into-endings': { verovio: ONE_TIE_TWO_NOTES },
};

const scores = new URL('../../fixtures/scores/', import.meta.url);
const FILES = ['', 'compared/'].flatMap((folder) =>
  readdirSync(new URL(folder, scores))
    .filter((file) => /\.(musicxml|xml)$/.test(file))
    .map((file) => ({ name: file.replace(/\.\w+$/, ''), url: new URL(folder + file, scores) })),
);

function stored(reader: string): Readonly<Record<string, readonly (readonly number[])[]>> {
  return JSON.parse(readFileSync(new URL(`../truth/compared/${reader}.json`, scores), 'utf8'));
}

const BY_MUSIC21 = stored('music21');
const BY_MUSESCORE = stored('musescore');

let kit: VerovioToolkit & { renderToMIDI(): string };

beforeAll(async () => {
  const module = await createVerovioModule();
  enableLog(LOG_OFF, module);
  kit = new VerovioToolkit(module) as typeof kit;
  kit.setOptions({ breaks: 'none' });
});

function byVerovio(bytes: Uint8Array): readonly Heard[] {
  if (!kit.loadData(new TextDecoder().decode(bytes))) return [];
  return midiNotes(Buffer.from(kit.renderToMIDI(), 'base64'));
}

function heardBy(reader: Reader, name: string, bytes: Uint8Array): readonly Heard[] {
  if (reader === 'verovio') return byVerovio(bytes);
  if (reader === 'music21') return (BY_MUSIC21[name] ?? []).map(([at = 0, length = 0, midi = 0]) => [at, length, midi]);
  return (BY_MUSESCORE[name] ?? []).map(([at = 0, midi = 0]) => [at, null, midi]);
}

function readHere(bytes: Uint8Array, lines: readonly ReadPartOptions[]): Heard[] {
  const heard = lines.flatMap((options) =>
    readPart(bytes, options).notes.map((n): Heard => [n.onsetQuarters, n.durationQuarters, n.soundingMidi]),
  );
  return lines.length === 1 ? heard : inOrder(heard);
}

/** By onset; what begins together by pitch. */
function inOrder(heard: readonly Heard[]): Heard[] {
  return [...heard].sort((a, b) => (Math.abs(a[0] - b[0]) > 1e-3 ? a[0] - b[0] : a[2] - b[2]));
}

/** Of notes that take time and begin together the highest. */
function topNotes(heard: readonly Heard[]): Heard[] {
  return heard.filter((a) => !heard.some((b) => b[0] === a[0] && b[1] !== 0 && a[1] !== 0 && b[2] > a[2]));
}

function compare(here: readonly Heard[], there: readonly Heard[], decimals: number): void {
  expect(here.map((note) => note[2])).toEqual(there.map((note) => note[2]));
  expect(here.map((note) => note[0])).toEqual(there.map((note) => expect.closeTo(note[0], decimals)));
  const lengths = there.map((note) => (note[1] === null ? expect.any(Number) : expect.closeTo(note[1], decimals)));
  expect(here.map((note) => note[1])).toEqual(lengths);
}

function without([from, to]: readonly [number, number], heard: readonly Heard[]): Heard[] {
  return heard.filter(([onset]) => onset < from || onset >= to);
}

describe.each(['music21', 'musescore', 'verovio'] as const)('note by note as %s reads it', (reader) => {
  const compared = FILES.filter(({ name }) => LEFT_OUT[name]?.[reader] === undefined);

  test.each(compared)('$name', ({ name, url }) => {
    const bytes = readFileSync(url);
    const lines = LINES[name] ?? [{}];
    const here = readHere(bytes, lines);
    const all = heardBy(reader, name, bytes);
    const played = without(CUE_NOTES[name] ?? [0, 0], TOP_NOTE_ONLY.includes(name) ? topNotes(all) : all);
    const there = lines.length === 1 ? played : inOrder(played);
    expect(there.length).toBeGreaterThan(0);
    if (GRACE_NOTES.includes(name) && GIVE_GRACE_NOTES_TIME.includes(reader)) {
      expect(here.map((note) => note[2])).toEqual(there.map((note) => note[2]));
    } else compare(here, there, DECIMALS[reader]);
  });
});

// Verovio's own reading; seeds are any numbers. With music21 and MuseScore they were compared once, see fixtures/ORIGINS.md.
test.each(Array.from({ length: 30 }, (_, i) => i + 1))(
  'generated score %i note by note as verovio reads it',
  (seed) => {
    const bytes = scoreOf(generatedBars(seed));
    const here = readHere(bytes, [{}]);
    expect(here.length).toBeGreaterThan(30);
    compare(here, topNotes(byVerovio(bytes)), DECIMALS.verovio);
  },
);

// Common practice: a section ends where its repeat sign stands, so the next sign repeats from there (A A B B).
test('a second section without a sign at its beginning is repeated by itself', () => {
  const file = FILES.find(({ name }) => name === 'way-03-second-section-unopened');
  const part = readPart(readFileSync(file?.url as URL));
  expect(part.bars.map((bar) => bar.bar).join(' ')).toBe('1 2 3 1 2 3 4 5 6 4 5 6');
});

describe('the comparison itself', () => {
  test('leaves at most one file without any reader, and names no file that is not there', () => {
    const names = FILES.map(({ name }) => name);
    const unread = names.filter((name) => Object.keys(LEFT_OUT[name] ?? {}).length === 3);
    expect(unread).toEqual(['way-03-second-section-unopened']);
    const named = [...Object.keys(LEFT_OUT), ...Object.keys(LINES), ...Object.keys(CUE_NOTES), ...GRACE_NOTES];
    expect([...named, ...TOP_NOTE_ONLY].filter((name) => !names.includes(name))).toEqual([]);
    expect(names.filter((name) => !(name in BY_MUSIC21) || !(name in BY_MUSESCORE))).toEqual([]);
    expect(names.length).toBeGreaterThan(50);
  });

  test.each([
    ['another pitch', ([at, length, midi]: Heard): Heard => [at, length, midi + 1]],
    ['a little later', ([at, length, midi]: Heard): Heard => [at + 1 / 16, length, midi]],
    ['a little longer', ([at, length, midi]: Heard): Heard => [at, (length ?? 0) + 1 / 16, midi]],
  ])('notices one note that is different: %s', (_name, change) => {
    const here = readHere(scoreOf(generatedBars(1)), [{}]);
    const changed = here.map((note, i) => (i === 20 ? change(note) : note));
    expect(() => compare(here, here, DECIMALS.verovio)).not.toThrow();
    expect(() => compare(changed, here, DECIMALS.verovio)).toThrow();
    expect(() => compare(here.slice(0, -1), here, DECIMALS.verovio)).toThrow();
  });
});
