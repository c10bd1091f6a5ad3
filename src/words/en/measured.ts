import { measuredWith } from '../rules/measured.js';
import { NUMBERS } from './numbers.js';

/** Says what was measured: "0.6 dB, less than a listener can tell apart; expected at least 3". */
export const measured = measuredWith(
  {
    units: {
      dB: (n) => `${n} dB`,
      s: (n) => `${n} s`,
      '%': (n) => `${n} %`,
      cents: (n) => `${n} cents`,
      semitones: (n) => `${n} ${n === '1' ? 'semitone' : 'semitones'}`,
      'times the written length': (n) => `${n} times the written length`,
      'quarter notes a minute': (n) => `${n} quarter notes a minute`,
      'dotted quarters a minute': (n) => `${n} dotted quarters a minute`,
      'half notes a minute': (n) => `${n} half notes a minute`,
    },
    ways: {
      speed: ['slower', 'faster'],
      time: ['early', 'late'],
      pitch: ['too low', 'too high'],
      level: ['softer', 'louder'],
    },
    tooSmallToHear: ', less than a listener can tell apart',
    ofASemitone: {
      tenth: ', about a tenth of a semitone',
      fifth: ', about a fifth of a semitone',
      quarter: ', about a quarter of a semitone',
      third: ', about a third of a semitone',
      half: ', about a half of a semitone',
    },
    expected: (expected) => `; expected ${expected}`,
  },
  NUMBERS,
);
