import type { MeasureId } from '../standards/index.js';

/** How one measure is spoken of. */
export interface MeasureWords {
  readonly name: string;
  /** what the number counts, under the name */
  readonly unit: string;
  readonly decimals: number;
  /** a number with what it counts */
  readonly value: (number: string) => string;
  readonly better: string;
  readonly worse: string;
  readonly different: string;
}

/** How the measures are spoken of. */
export const MEASURE_WORDS: Readonly<Record<MeasureId, MeasureWords>> = {
  'as-written': {
    ...{ name: 'Notes as written', unit: '% of the notes', decimals: 0, value: (n) => `${n} % of the notes` },
    better: 'More notes are as written',
    worse: 'Fewer notes are as written',
    different: 'The share of notes as written changed',
  },
  evenness: {
    ...{ name: 'Evenness', unit: '% of the beat off', decimals: 1, value: (n) => `${n} % of the beat off` },
    better: 'Triplets and beats are more even',
    worse: 'Triplets and beats are less even',
    different: 'The evenness of the beats changed',
  },
  entries: {
    ...{ name: 'Entries after rests', unit: 'ms off the beat', decimals: 0, value: (n) => `${n} ms off the beat` },
    better: 'Entries after rests are more exact',
    worse: 'Entries after rests are less exact',
    different: 'Entries after rests changed',
  },
  fermatas: {
    ...{
      name: 'Fermatas',
      unit: 'times the written length',
      decimals: 1,
      value: (n) => `${n} times as long as written`,
    },
    better: 'The fermatas have come to a usual length',
    worse: 'A fermata has left the usual length',
    different: 'A fermata is held differently',
  },
  tempo: {
    ...{ name: 'Tempo', unit: '% of the mark', decimals: 0, value: (n) => `${n} % of the mark` },
    better: 'The tempo has come nearer to the mark',
    worse: 'The tempo has moved away from the mark',
    different: 'The tempo is another one, about as near to the mark',
  },
  steadiness: {
    ...{ name: 'Steadiness', unit: '% spread of the bars', decimals: 1, value: (n) => `bars within ${n} %` },
    better: 'The beat is steadier',
    worse: 'The beat is less steady',
    different: 'The steadiness of the beat changed',
  },
  contrast: {
    ...{ name: 'Contrast', unit: 'dB between marks', decimals: 1, value: (n) => `${n} dB between the marks` },
    better: 'Loud and soft can be told apart now',
    worse: 'Loud and soft have come too close together',
    different: 'The contrast changed in size',
  },
  hairpins: {
    ...{ name: 'Hairpins', unit: 'dB from end to end', decimals: 1, value: (n) => `${n} dB from end to end` },
    better: 'Crescendo and diminuendo can be heard now',
    worse: 'Crescendo and diminuendo have become too small',
    different: 'Crescendo and diminuendo changed in size',
  },
  slurs: {
    ...{ name: 'Slurs', unit: '% of the notes joined', decimals: 0, value: (n) => `${n} % of the notes joined` },
    better: 'More slurs are carried through',
    worse: 'Fewer slurs are carried through',
    different: 'The slurs changed',
  },
  staccato: {
    ...{
      name: 'Staccato',
      unit: '% of their time',
      decimals: 0,
      value: (n) => `they sound for ${n} % of their time`,
    },
    better: 'Staccato notes have come to a good length',
    worse: 'Staccato notes have become long',
    different: 'Staccato notes changed in length',
  },
  breaths: {
    ...{ name: 'Breaths', unit: '% of the marks', decimals: 0, value: (n) => `${n} % of the marks` },
    better: 'More breaths are taken where they are marked',
    worse: 'Fewer breaths are taken where they are marked',
    different: 'The breaths at the marks changed',
  },
  'own-tuning': {
    ...{ name: 'Notes in tune', unit: 'cents, nine notes in ten', decimals: 0 },
    value: (n) => `nine notes in ten within ${n} cents`,
    better: 'The notes are better in tune with each other',
    worse: 'The notes are less in tune with each other',
    different: 'The tuning of the notes among each other changed',
  },
  tuning: {
    ...{ name: 'Tuning to A', unit: 'cents from A = 440 Hz', decimals: 0, value: (n) => `${n} cents from A = 440 Hz` },
    better: 'The instrument is tuned nearer to A = 440 Hz',
    worse: 'The instrument is tuned farther from A = 440 Hz',
    different: 'The instrument is tuned to the other side of A = 440 Hz',
  },
  stops: {
    ...{ name: 'Playing through', unit: 'stops and jumps', decimals: 0 },
    value: (n) => (n === '1' ? '1 stop or jump' : `${n} stops and jumps`),
    better: 'There are fewer stops',
    worse: 'There are more stops',
    different: 'The number of stops changed',
  },
};
