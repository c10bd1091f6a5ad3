import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { noteName, playedName } from '../../src/judge/observed/note-name.js';

describe('the names of notes', () => {
  const written = (step: 'C' | 'E' | 'F' | 'B', alter: number, octave = 4) => ({ step, alter, octave });

  // Source: common practice; accidental signs U+266D and U+266F.
  it('are letters with their signs', () => {
    expect(noteName(written('F', 1))).toBe('F♯');
    expect(noteName(written('B', -1))).toBe('B♭');
    expect(noteName(written('C', 0))).toBe('C');
    expect(noteName(written('B', -2))).toBe('B♭♭');
    expect(noteName(written('F', 2))).toBe('F♯♯');
  });

  // MIDI numbers: middle C = 60 (MIDI 1.0).
  it('stay on the letter of the page when a sign was missed', () => {
    expect(playedName(65, written('F', 1))).toBe('F');
    expect(playedName(66, written('F', 0))).toBe('F♯');
    expect(playedName(71, written('B', -1))).toBe('B');
    expect(playedName(64, written('E', -1))).toBe('E');
    expect(playedName(72, written('B', 0))).toBe('C');
    expect(playedName(59, written('C', 0))).toBe('B');
    expect(playedName(65, written('E', 0))).toBe('F');
    expect(playedName(63, written('E', 0))).toBe('E♭');
  });

  it('take the simplest other letter when the note is another one', () => {
    expect(playedName(69, written('F', 1))).toBe('A');
    expect(playedName(70, written('E', -1))).toBe('B♭');
    expect(playedName(68, written('C', 0))).toBe('G♯');
    expect(playedName(72, written('F', 0))).toBe('C');
  });

  it('are never more than a letter and signs', () => {
    const pitch = fc.record({
      step: fc.constantFrom('C', 'D', 'E', 'F', 'G', 'A', 'B' as const),
      alter: fc.integer({ min: -2, max: 2 }),
      octave: fc.integer({ min: 0, max: 8 }),
    });
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 110 }), pitch, (midi, on) => {
        expect(playedName(midi, on as Parameters<typeof playedName>[1])).toMatch(/^[A-G](?:♯|♭)?$/);
      }),
    );
  });
});
describe('the name of a note that was played', () => {
  const name = (midi: number, step: 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B', alter = 0) =>
    playedName(midi, { step, alter, octave: 4 });

  // Source: common practice: the plain letter where there is one, else the sign on the letter that is written.
  it('is the plain letter where there is one', () => {
    expect([60, 62, 64, 65, 67, 69, 71, 48, 72].map((midi) => name(midi, 'G', -1))).toEqual([
      'C',
      'D',
      'E',
      'F',
      'G',
      'A',
      'B',
      'C',
      'C',
    ]);
  });

  it('stays on the letter that is written where it is next to it', () => {
    expect([name(61, 'C'), name(61, 'D'), name(63, 'D'), name(63, 'E')]).toEqual(['C♯', 'D♭', 'D♯', 'E♭']);
    expect([name(66, 'F'), name(66, 'G'), name(70, 'A'), name(70, 'B'), name(73, 'C')]).toEqual([
      'F♯',
      'G♭',
      'A♯',
      'B♭',
      'C♯',
    ]);
  });

  it('is a flat beside flats, and a sharp otherwise', () => {
    expect([name(61, 'G', -1), name(61, 'G'), name(61, 'F', 1)]).toEqual(['D♭', 'C♯', 'C♯']);
    expect([name(70, 'D', -1), name(70, 'D')]).toEqual(['B♭', 'A♯']);
    expect([name(66, 'C', -1), name(66, 'C'), name(68, 'C', -1), name(68, 'C')]).toEqual(['G♭', 'F♯', 'A♭', 'G♯']);
  });
});
