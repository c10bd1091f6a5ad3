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
