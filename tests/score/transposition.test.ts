import { expect, test } from 'vitest';
import { readPart } from '../../src/score/index.js';
import { remarksOf } from '../helpers/remarks-of.js';
import { attributes, note, scoreOf } from './score-of.js';

const transpose = (diatonic: number, chromatic: number, octaves?: number): string =>
  `<transpose><diatonic>${diatonic}</diatonic><chromatic>${chromatic}</chromatic>${octaves === undefined ? '' : `<octave-change>${octaves}</octave-change>`}</transpose>`;

// Written C5 and what it sounds. MusicXML 4.0, transpose: chromatic "represents the number of semitones needed to get from
// written to sounding pitch", octave-change in whole octaves besides. The instruments: common practice.
test.each([
  ['flute', '', 72, 0],
  ['clarinet in B flat', transpose(-1, -2), 70, -2],
  ['horn in F', transpose(-4, -7), 65, -7],
  ['alto saxophone', transpose(-5, -9), 63, -9],
  ['tenor saxophone', transpose(-1, -2, -1), 58, -14],
  ['baritone saxophone', transpose(-5, -9, -1), 51, -21],
  ['piccolo', transpose(0, 0, 1), 84, 12],
  ['clarinet in E flat', transpose(2, 3), 75, 3],
])('%s', (_name, xml, soundingMidi, semitones) => {
  const part = readPart(scoreOf([attributes(1, 0, '4/4', xml) + note('C5', 4)]));
  expect(part.notes[0]).toMatchObject({ writtenMidi: 72, soundingMidi });
  expect(part.transposeSemitones).toBe(semitones);
});

test('a change of instrument within the part, within a bar', () => {
  const change = `<attributes>${transpose(-2, -3)}</attributes>`;
  const part = readPart(
    scoreOf([`${attributes(1, 0, '4/4', transpose(-1, -2))}${note('C5', 2)}${change}${note('C5', 2)}`, note('C5', 4)]),
  );
  expect(part.notes.map((n) => n.soundingMidi)).toEqual([70, 69, 69]);
  expect(part.transposeSemitones).toBe(-2);
});

// MusicXML 4.0, for-part: "used in a concert score to indicate the transposition for a transposed part created from that
// score"; concert-score: the document "is displayed in concert pitch", only octave transpositions are left.
test('a concert score sounds as written, whatever its parts will be written in', () => {
  const head = '<defaults><concert-score/></defaults>';
  const forPart = `<for-part><part-transpose><diatonic>1</diatonic><chromatic>2</chromatic></part-transpose></for-part>`;
  const part = readPart(scoreOf([attributes(1, 0, '4/4', forPart) + note('C5', 4)], head));
  expect(part.notes[0]).toMatchObject({ writtenMidi: 72, soundingMidi: 72 });
  expect(remarksOf(part)[0]).toBe(
    "Bar 1: the score is at concert pitch; the player's own part is written in another key.",
  );
  const bass = readPart(scoreOf([attributes(1, 0, '4/4', transpose(0, 0, -1)) + note('C3', 4)], head));
  expect(bass.notes[0]).toMatchObject({ writtenMidi: 48, soundingMidi: 36 });
});

// MusicXML 4.0, octave-shift: pitch in the file is already the pitch meant, the line only changes where it is written.
test('an octave line changes nothing', () => {
  const up = '<direction><direction-type><octave-shift type="down" size="8"/></direction-type></direction>';
  const part = readPart(scoreOf([attributes(1) + up + note('C6', 4)]));
  expect(part.notes[0]?.soundingMidi).toBe(84);
});

// The misread pitch sounds through the same transposition.
test('misreadings carry both pitches', () => {
  const part = readPart(scoreOf([attributes(1, -1, '4/4', transpose(-1, -2)) + note('Bb4', 4)]));
  expect(part.notes[0]?.misreadings).toEqual([{ kind: 'key-signature-forgotten', writtenMidi: 71, soundingMidi: 69 }]);
});
