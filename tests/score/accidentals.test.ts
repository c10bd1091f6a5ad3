import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type NoteLetter, readPart, type WrittenPitch } from '../../src/score/index.js';
import { AccidentalReader } from '../../src/score/pitch/accidentals.js';
import { keyOfFifths } from '../../src/score/pitch/key.js';
import { remarksOf } from '../helpers/remarks-of.js';
import { attributes, note, scoreOf } from './score-of.js';

/** Misreadings of each note as "kind: writtenMidi". */
function misreadings(bars: readonly string[]): string[][] {
  return readPart(scoreOf(bars)).notes.map((n) => n.misreadings.map((m) => `${m.kind}: ${m.writtenMidi}`));
}

const sharp = { accidental: 'sharp' };
const natural = { accidental: 'natural' };
const flat = { accidental: 'flat' };

// The five misreadings, each from the rule that a sign holds to the barline, on its line, in its octave: common practice.
describe('misreadings', () => {
  test('a printed sign may be overlooked, and dropped later in the bar', () => {
    expect(
      misreadings([attributes(1) + note('F#4', 1, sharp) + note('G4', 1) + note('F#4', 1) + note('F4', 1, natural)]),
    ).toEqual([['accidental-forgotten: 65'], [], ['dropped-within-bar: 65'], ['accidental-forgotten: 66']]);
  });

  test('a sign may be carried over the barline, into the next bar only', () => {
    const bars = [attributes(1) + note('F#4', 4, sharp), note('F4', 4), note('F4', 4)];
    expect(misreadings(bars)).toEqual([['accidental-forgotten: 65'], ['carried-past-barline: 66'], []]);
  });

  test('a note tied into a bar may be carried into the bar after it', () => {
    const bars = [
      attributes(1) + note('F#4', 4, { ...sharp, tie: ['start'] }),
      note('F#4', 4, { tie: ['stop'] }),
      note('F4', 4),
    ];
    expect(misreadings(bars)[1]).toEqual(['carried-past-barline: 66']);
  });

  test('a sign of the bar before is no longer carried once this bar has its own', () => {
    const bars = [attributes(1) + note('F#4', 4, sharp), note('F4', 2, natural) + note('F4', 2)];
    expect(misreadings(bars)[2]).toEqual([]);
  });

  test('a sign may be applied in another octave', () => {
    expect(misreadings([attributes(1) + note('F#4', 2, sharp) + note('F5', 2)])).toEqual([
      ['accidental-forgotten: 65'],
      ['wrong-octave-applied: 78'],
    ]);
  });

  test('the key signature may be forgotten, but not where a sign stands', () => {
    expect(
      misreadings([attributes(1, 2) + note('F#4', 1) + note('F4', 1, natural) + note('F4', 1) + note('G4', 1)]),
    ).toEqual([['key-signature-forgotten: 65'], ['accidental-forgotten: 66'], ['dropped-within-bar: 66'], []]);
  });

  test('when two misreadings give one pitch the likelier comes first', () => {
    expect(misreadings([attributes(1, 1) + note('F4', 4, natural), note('F#4', 4)])[1]).toEqual([
      'carried-past-barline: 65',
      'key-signature-forgotten: 65',
    ]);
  });

  test('a courtesy sign changes nothing by itself, but the old sign may still be carried to it', () => {
    expect(misreadings([attributes(1) + note('F#4', 4, sharp), note('F4', 4, natural)])[1]).toEqual([
      'carried-past-barline: 66',
    ]);
  });

  test('a tie carries the sign for its own note; after it the key is back, and may be missed', () => {
    const bars = [
      attributes(1) + note('C4', 3) + note('F#4', 1, { ...sharp, tie: ['start'] }),
      note('F#4', 2, { tie: ['stop'] }) + note('F4', 2),
    ];
    const part = readPart(scoreOf(bars));
    expect(part.notes.map((n) => n.writtenMidi)).toEqual([60, 66, 65]);
    expect(part.notes[2]?.misreadings).toEqual([{ kind: 'carried-past-barline', writtenMidi: 66, soundingMidi: 66 }]);
    expect(remarksOf(part).filter((r) => r.includes('sign'))).toEqual([]);
  });

  test('a change of key is the new signature from there on', () => {
    const change = '<attributes><key><fifths>-1</fifths></key></attributes>';
    expect(misreadings([attributes(1, 1) + note('F#4', 2) + change + note('F4', 1) + note('Bb4', 1)])).toEqual([
      ['key-signature-forgotten: 65'],
      [],
      ['key-signature-forgotten: 71'],
    ]);
  });

  // MusicXML 4.0, key: non-traditional signatures as pairs of key-step and key-alter.
  test('a signature of any letters', () => {
    const odd =
      '<attributes><divisions>1</divisions><key><key-step>B</key-step><key-alter>-1</key-alter><key-step>F</key-step><key-alter>1</key-alter></key></attributes>';
    expect(misreadings([odd + note('Bb4', 1) + note('F#4', 1) + note('E4', 2)])).toEqual([
      ['key-signature-forgotten: 71'],
      ['key-signature-forgotten: 65'],
      [],
    ]);
  });

  test('a sign in another voice on the same staff holds too', () => {
    const other = `<backup><duration>4</duration></backup>${note('F#4', 1, { ...sharp, voice: '2' })}`;
    expect(misreadings([attributes(1) + note('A4', 2) + note('F#4', 2) + other])).toEqual([
      [],
      ['dropped-within-bar: 65'],
    ]);
  });
});

describe('signs that the file does not print', () => {
  test('a file without accidental elements is read by the rule', () => {
    const part = readPart(
      scoreOf([attributes(1, -1) + note('B4', 1) + note('B4', 1) + note('Bb4', 2), note('Bb4', 4)]),
    );
    expect(part.notes.map((n) => n.printedAccidental)).toEqual(['natural', null, 'flat', null]);
    expect(remarksOf(part).filter((r) => r.includes('sign that is not printed'))).toEqual([]);
  });

  test('a single missing sign is remarked on', () => {
    const part = readPart(scoreOf([attributes(1) + note('F#4', 4, sharp), note('C#5', 2) + note('Bb4', 2, flat)]));
    expect(remarksOf(part)).toContain('Bar 2: C5 is meant with a sharp sign that is not printed.');
  });
});

describe('signs and pitches that do not agree', () => {
  // MusicXML 4.0: alter is the pitch, accidental only the sign.
  test('the pitch counts', () => {
    const part = readPart(scoreOf([attributes(1) + note('F4', 4, sharp)]));
    expect(part.notes[0]?.writtenMidi).toBe(65);
    expect(remarksOf(part)).toContain(
      'Bar 1: the sign at F4 says sharp, the file means another pitch; the pitch counts.',
    );
  });

  // MusicXML 4.0, alter: decimals are microtones.
  test('microtones are read as the nearest semitone', () => {
    const quarterTone = note('F#4', 4).replace('<alter>1</alter>', '<alter>0.5</alter>');
    const part = readPart(scoreOf([attributes(1) + quarterTone]));
    expect(Number.isInteger(part.notes[0]?.writtenMidi)).toBe(true);
    expect(remarksOf(part)).toContain('Bar 1: the microtone on F4 is read as the nearest semitone.');
  });
});

// Order of sharps and flats: common practice (G major has F sharp, F major B flat, C flat major seven flats).
test('key signatures', () => {
  expect(keyOfFifths(0)).toEqual({});
  expect(keyOfFifths(1)).toEqual({ F: 1 });
  expect(keyOfFifths(3)).toEqual({ F: 1, C: 1, G: 1 });
  expect(keyOfFifths(-2)).toEqual({ B: -1, E: -1 });
  expect(keyOfFifths(-7)).toEqual({ B: -1, E: -1, A: -1, D: -1, G: -1, C: -1, F: -1 });
});

const letters: readonly NoteLetter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];
const anyPitch = fc.record({
  step: fc.constantFrom(...letters),
  alter: fc.integer({ min: -2, max: 2 }),
  octave: fc.integer({ min: 3, max: 6 }),
});
const anyMusic = fc.record({
  fifths: fc.integer({ min: -7, max: 7 }),
  bars: fc.array(fc.array(anyPitch, { maxLength: 8 }), { maxLength: 5 }),
});

/** A copyist who writes a sign only where the rule asks for one, by looking back through the bar for the nearest sign. */
function needsSign(bar: readonly WrittenPitch[], signs: readonly boolean[], fifths: number): boolean {
  const own = bar.at(-1) as WrittenPitch;
  for (let i = bar.length - 2; i >= 0; i--) {
    const earlier = bar[i] as WrittenPitch;
    if (signs[i] && earlier.step === own.step && earlier.octave === own.octave) return earlier.alter !== own.alter;
  }
  const sharps = 'FCGDAEB'.slice(0, Math.max(0, fifths));
  const flats = 'BEADGCF'.slice(0, Math.max(0, -fifths));
  const byKey = sharps.includes(own.step) ? 1 : flats.includes(own.step) ? -1 : 0;
  return byKey !== own.alter;
}

// Law: signs printed by the rule and read back by the rule give the same pitches.
test('printing signs by the rule and reading them back gives the same pitches', () => {
  fc.assert(
    fc.property(anyMusic, ({ fifths, bars }) => {
      const reader = new AccidentalReader();
      reader.changeKey(keyOfFifths(fifths));
      for (const bar of bars) {
        const signs: boolean[] = [];
        bar.forEach((pitch, i) => {
          const printed = needsSign(bar.slice(0, i + 1), signs, fifths);
          signs.push(printed);
          const reading = reader.read({ pitch, printedSign: printed ? 'printed' : null, tiedOver: false });
          expect(printed ? reading.alterInForce !== pitch.alter : reading.alterInForce === pitch.alter).toBe(true);
          expect(reading.signMissing).toBe(false);
        });
        reader.barline();
      }
    }),
  );
});

// Laws: a misreading is never the pitch itself, and a file without signs is read as if they had been printed.
test('misreadings differ from the pitch meant, and do not depend on whether the file prints the signs', () => {
  fc.assert(
    fc.property(anyMusic, ({ fifths, bars }) => {
      const printing = new AccidentalReader();
      const silent = new AccidentalReader();
      printing.changeKey(keyOfFifths(fifths));
      silent.changeKey(keyOfFifths(fifths));
      for (const bar of bars) {
        for (const pitch of bar) {
          const read = silent.read({ pitch, printedSign: null, tiedOver: false });
          const printed = printing.read({ pitch, printedSign: read.sign, tiedOver: false });
          expect(printed.misreadings).toEqual(read.misreadings);
          expect(read.misreadings.some((m) => m.alter === pitch.alter)).toBe(false);
        }
        printing.barline();
        silent.barline();
      }
    }),
  );
});
