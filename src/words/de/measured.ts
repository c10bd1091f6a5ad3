import { measuredWith } from '../rules/measured.js';
import { NUMBERS } from './numbers.js';

/** Says what was measured: "0,6 dB, weniger, als man unterscheiden kann; erwartet: mindestens 3". */
export const measured = measuredWith(
  {
    units: {
      dB: (n) => `${n} dB`,
      s: (n) => `${n} s`,
      '%': (n) => `${n} %`,
      cents: (n) => `${n} Cent`,
      semitones: (n) => `${n} ${/^−?1$/.test(n) ? 'Halbton' : 'Halbtöne'}`,
      'times the written length': (n) => `${n}-mal die notierte Länge`,
      'quarter notes a minute': (n) => `${n} Viertel in der Minute`,
      'dotted quarters a minute': (n) => `${n} punktierte Viertel in der Minute`,
      'half notes a minute': (n) => `${n} Halbe in der Minute`,
    },
    ways: {
      speed: ['langsamer', 'schneller'],
      time: ['zu früh', 'zu spät'],
      pitch: ['zu tief', 'zu hoch'],
      level: ['leiser', 'lauter'],
    },
    tooSmallToHear: ', weniger, als man unterscheiden kann',
    ofASemitone: {
      tenth: ', etwa ein Zehntel eines Halbtons',
      fifth: ', etwa ein Fünftel eines Halbtons',
      quarter: ', etwa ein Viertel eines Halbtons',
      third: ', etwa ein Drittel eines Halbtons',
      half: ', etwa die Hälfte eines Halbtons',
    },
    expected: (expected) => `; erwartet: ${expected}`,
  },
  NUMBERS,
);
