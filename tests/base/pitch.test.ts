import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { A4_HZ, A4_MIDI, hzToMidi, midiToHz } from '../../src/base/index.js';

describe('pitch units', () => {
  // Source: ISO 16:1975 (A4 = 440 Hz); MIDI 1.0 detailed specification (A4 is note 69, middle C is note 60).
  it('A4 is 440 Hz and note 69', () => {
    expect([A4_HZ, A4_MIDI, midiToHz(69), hzToMidi(440)]).toEqual([440, 69, 440, 69]);
  });

  // Source: MIDI tuning table of equal temperament at A = 440 Hz, as printed in handbooks, to three decimals.
  it.each([
    [21, 27.5],
    [22, 29.135],
    [34, 58.27],
    [48, 130.813],
    [57, 220],
    [60, 261.626],
    [72, 523.251],
    [93, 1760],
    [108, 4186.009],
  ])('note %i is %d Hz', (midi, hz) => {
    expect(midiToHz(midi)).toBeCloseTo(hz, 3);
    expect(hzToMidi(hz)).toBeCloseTo(midi, 3);
  });

  // Source: ISO 80000-8: the octave is a ratio of 2 and 1200 cents.
  it('an octave doubles the frequency and a cent is a hundredth of a number', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 120, noNaN: true }), (midi) => {
        expect(midiToHz(midi + 12) / midiToHz(midi)).toBeCloseTo(2, 9);
        expect(1200 * Math.log2(midiToHz(midi + 0.01) / midiToHz(midi))).toBeCloseTo(1, 6);
        expect(hzToMidi(midiToHz(midi))).toBeCloseTo(midi, 9);
      }),
    );
  });
});
