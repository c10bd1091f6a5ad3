import type { Coded, CodeTable } from './coded.js';

/** Everything a reader is to know of a recording before the numbers, with its facts. */
export const CAUTIONS = {
  // the file
  'length-left-open': {},
  /** seconds the file should hold, and those it holds, to a tenth */
  'breaks-off': { announcedSeconds: 'number', heldSeconds: 'number' },
  'damaged-samples': { samples: 'number' },
  /** packets of coded sound for which silence stands; where, each tenth of a second once */
  'packets-lost': { packets: 'number', seconds: 'numbers' },
  /** channels count from 1; `of` is how many the file has */
  'channels-empty': { channels: 'numbers', of: 'number' },
  'channels-cancel': { usedChannel: 'number', of: 'number' },
  'channels-cancel-at-times': { usedChannel: 'number', of: 'number' },
  'channels-noisier': { usedChannel: 'number', of: 'number' },
  'channels-unequal': { usedChannel: 'number', of: 'number' },
  /** seconds that could be read, to a tenth */
  'damaged-from': { heldSeconds: 'number' },
  'speech-coding': {},
  /** above it nothing sounds, to a tenth */
  'narrow-band': { kilohertz: 'number' },
  // the sound
  clips: {},
  noisy: {},
  'rings-long': {},
  echoes: {},
  'sounds-elsewhere': { semitones: 'number' },
  'level-moved': {},
} as const satisfies CodeTable;

/** What a reader is to know of a recording before the numbers. */
export type Caution = Coded<typeof CAUTIONS>;
