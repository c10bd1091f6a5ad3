import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Part, readPart } from '../../src/score/index.js';
import { remarksOf } from '../helpers/remarks-of.js';

const read = (name: string): Part => readPart(readFileSync(new URL(`../../fixtures/scores/${name}`, import.meta.url)));

/** Every note as "bar/pass beat written>sounding length", read off the page by hand. */
function notesOf(part: Part): string[] {
  return part.notes.map((n) => `${n.bar}/${n.pass} ${n.beat} ${n.writtenMidi}>${n.soundingMidi} ${n.durationQuarters}`);
}

// Expected lists: read off the fixture by hand by the MusicXML 4.0 description and the rules of the trade named in the other
// tests of this room.
test('a full export with pick-up, endings and a tie into both endings', () => {
  const part = read('morning-round.musicxml');
  expect(part).toMatchObject({
    title: 'Morning Round',
    partName: 'B♭ Clarinet',
    transposeSemitones: -2,
    printedBars: 5,
    remarks: [],
  });
  expect(notesOf(part)).toEqual([
    '0/1 3 62>60 0.5',
    '0/1 3.5 66>64 0.5',
    '1/1 1 67>65 1.5',
    '1/1 2.5 65>63 0.5',
    '1/1 3 65>63 1',
    '2/1 1 66>64 1',
    '2/1 2 69>67 1',
    '2/1 3 71>69 2',
    '3/1 2 69>67 1',
    '0/2 3 62>60 0.5',
    '0/2 3.5 66>64 0.5',
    '1/2 1 67>65 1.5',
    '1/2 2.5 65>63 0.5',
    '1/2 3 65>63 1',
    '2/2 1 66>64 1',
    '2/2 2 69>67 1',
    '2/2 3 71>69 2',
    '4/1 2 67>65 2',
  ]);
  expect(part.tempos).toEqual([{ atQuarters: 0, quarterBpm: 84, printed: true, unitQuarters: 1 }]);
  // f stands at the tied-over note, so the first note under it is the next one
  expect(part.dynamics.map((d) => [d.mark, d.pass, d.index, d.toIndex])).toEqual([
    ['mp', 1, 0, 4],
    ['f', 1, 8, 8],
    ['mp', 2, 9, 13],
    ['p', 1, 17, 17],
  ]);
  expect(part.hairpins.map((h) => [h.bar, h.toBar, h.pass, h.index, h.toIndex])).toEqual([
    ['2', '2', 1, 5, 7],
    ['2', '2', 2, 14, 16],
  ]);
  expect(part.notes[7]).toMatchObject({ breathAfter: 'breath', printedId: 'n8' });
  expect(part.notes[17]).toMatchObject({ fermata: true, printedId: 'n12' });
  expect(part.notes.slice(0, 4).map((n) => n.slurredFromPrevious)).toEqual([false, true, true, false]);
  expect(
    part.notes.slice(3, 6).map((n) => [n.printedAccidental, n.misreadings.map((m) => `${m.kind} ${m.writtenMidi}`)]),
  ).toEqual([
    ['natural', ['accidental-forgotten 66']],
    [null, ['dropped-within-bar 66']],
    [null, ['carried-past-barline 65', 'key-signature-forgotten 65']],
  ]);
});

test('a sparse export without accidentals and brackets', () => {
  const part = read('river-stones.musicxml');
  expect(part).toMatchObject({ title: 'River Stones', partName: 'Oboe', transposeSemitones: 0 });
  expect(remarksOf(part)).toEqual(['Voice 1 is read; 1 note is in other voices or on other staves.']);
  expect(part.notes.map((n) => [n.writtenMidi, n.printedAccidental, n.onsetQuarters])).toEqual([
    [72, null, 0],
    [71, 'natural', 1],
    [68, null, 2],
    [67, null, expect.closeTo(2 + 1 / 3, 9)],
    [71, null, expect.closeTo(2 + 2 / 3, 9)],
    [72, null, 4],
    [70, null, 4],
    [72, null, 5.5],
    [75, null, 6],
    [77, null, 8],
    [72, null, 9],
  ]);
  expect(part.notes.map((n) => n.tuplet?.place ?? '-').join('')).toBe('--012------');
  expect(part.notes[5]).toMatchObject({ grace: true, restBeforeQuarters: 1, slurredToNext: true });
  expect(part.notes[6]).toMatchObject({ restBeforeQuarters: 0, slurredFromPrevious: true });
  // B flat in bar 2 after B natural in bar 1: the sign may be carried over, or the signature forgotten
  expect(part.notes[6]?.misreadings.map((m) => m.kind)).toEqual(['carried-past-barline', 'key-signature-forgotten']);
  expect(part.hairpins).toMatchObject([{ kind: 'crescendo', from: 'words', index: 7, toIndex: 8 }]);
  expect(part.dynamics).toMatchObject([
    { mark: 'p', index: 0, toIndex: 6 },
    { mark: 'f', index: 9, toIndex: 10 },
  ]);
  expect(part.tempos).toEqual([{ atQuarters: 0, quarterBpm: 72, printed: true }]);
  expect(part.tempoBends).toEqual([{ kind: 'slower', startQuarters: 9, endQuarters: 12 }]);
});

test('timewise, with D.S. al Coda in words and signs', () => {
  const part = read('three-gates.xml');
  expect(part).toMatchObject({ title: 'Three Gates', partName: 'Horn in F', remarks: [] });
  expect(notesOf(part)).toEqual([
    '1/1 1 72>65 2',
    '2/1 1 76>69 2',
    '3/1 1 79>72 2',
    '4/1 1 74>67 2',
    '2/2 1 76>69 2',
    '3/2 1 79>72 2',
    '5/1 1 72>65 2',
  ]);
  expect(part.tempos).toEqual([{ atQuarters: 0, quarterBpm: 100, printed: true, unitQuarters: 2 }]);
});
