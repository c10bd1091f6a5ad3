import type { MeasureId } from '../../standards/index.js';
import type { MeasureWords } from '../measure-words.js';

/** How the measures are spoken of, in German. */
export const GERMAN_MEASURES: Readonly<Record<MeasureId, MeasureWords>> = {
  'as-written': {
    ...{ name: 'Richtige Noten', unit: '% der Noten', decimals: 0, value: (n) => `${n} % der Noten` },
    better: 'Mehr Noten sind, wie sie dastehen',
    worse: 'Weniger Noten sind, wie sie dastehen',
    different: 'Der Anteil der richtigen Noten hat sich geändert',
  },
  evenness: {
    ...{ name: 'Gleichmaß', unit: '% des Schlags daneben', decimals: 1, value: (n) => `${n} % des Schlags daneben` },
    better: 'Triolen und Schläge sind gleichmäßiger',
    worse: 'Triolen und Schläge sind ungleicher',
    different: 'Das Gleichmaß der Schläge hat sich geändert',
  },
  entries: {
    ...{ name: 'Einsätze', unit: 'ms neben dem Schlag', decimals: 0 },
    value: (n) => `${n} ms neben dem Schlag`,
    better: 'Einsätze nach Pausen sind genauer',
    worse: 'Einsätze nach Pausen sind ungenauer',
    different: 'Einsätze nach Pausen haben sich geändert',
  },
  fermatas: {
    ...{ name: 'Fermaten', unit: 'mal notierte Länge', decimals: 1, value: (n) => `${n}-mal die notierte Länge` },
    better: 'Die Fermaten haben jetzt eine übliche Länge',
    worse: 'Eine Fermate hat keine übliche Länge mehr',
    different: 'Eine Fermate wird anders gehalten',
  },
  tempo: {
    ...{ name: 'Tempo', unit: '% der Vorgabe', decimals: 0, value: (n) => `${n} % der Vorgabe` },
    better: 'Das Tempo ist näher an der Vorgabe',
    worse: 'Das Tempo ist weiter weg von der Vorgabe',
    different: 'Das Tempo ist ein anderes, etwa gleich nah an der Vorgabe',
  },
  steadiness: {
    ...{
      name: 'Puls',
      unit: '% Streuung der Takte',
      decimals: 1,
      value: (n) => `die Takte innerhalb von ${n} %`,
    },
    better: 'Der Puls ist ruhiger',
    worse: 'Der Puls ist unruhiger',
    different: 'Die Ruhe des Pulses hat sich geändert',
  },
  contrast: {
    ...{ name: 'Kontrast', unit: 'dB von Stufe zu Stufe', decimals: 1, value: (n) => `${n} dB von Stufe zu Stufe` },
    better: 'Laut und leise sind jetzt zu unterscheiden',
    worse: 'Laut und leise sind zu nah beieinander',
    different: 'Der Kontrast hat eine andere Größe',
  },
  hairpins: {
    ...{ name: 'Gabeln', unit: 'dB von Ende zu Ende', decimals: 1, value: (n) => `${n} dB von Ende zu Ende` },
    better: 'Crescendo und Diminuendo sind jetzt zu hören',
    worse: 'Crescendo und Diminuendo sind zu klein geworden',
    different: 'Crescendo und Diminuendo haben eine andere Größe',
  },
  slurs: {
    ...{ name: 'Bindungen', unit: '% der Noten verbunden', decimals: 0, value: (n) => `${n} % der Noten verbunden` },
    better: 'Mehr Bögen gehen ganz durch',
    worse: 'Weniger Bögen gehen ganz durch',
    different: 'Die Bindungen haben sich geändert',
  },
  staccato: {
    ...{ name: 'Staccato', unit: '% der Notenlänge', decimals: 0, value: (n) => `sie klingen ${n} % ihrer Länge` },
    better: 'Staccato-Noten haben jetzt eine gute Länge',
    worse: 'Staccato-Noten sind lang geworden',
    different: 'Staccato-Noten haben eine andere Länge',
  },
  breaths: {
    ...{ name: 'Atmung', unit: '% der Atemzeichen', decimals: 0, value: (n) => `an ${n} % der Atemzeichen` },
    better: 'Öfter wird dort geatmet, wo ein Zeichen steht',
    worse: 'Seltener wird dort geatmet, wo ein Zeichen steht',
    different: 'Das Atmen an den Zeichen hat sich geändert',
  },
  'own-tuning': {
    ...{ name: 'Töne unter sich', unit: 'Cent, 9 von 10 Tönen', decimals: 0 },
    value: (n) => `neun von zehn Tönen innerhalb von ${n} Cent`,
    better: 'Die Töne stimmen besser zueinander',
    worse: 'Die Töne stimmen schlechter zueinander',
    different: 'Die Stimmung der Töne zueinander hat sich geändert',
  },
  tuning: {
    ...{ name: 'Stimmung', unit: 'Cent von A = 440 Hz', decimals: 0, value: (n) => `${n} Cent von A = 440 Hz` },
    better: 'Das Instrument ist näher an A = 440 Hz gestimmt',
    worse: 'Das Instrument ist weiter von A = 440 Hz weg gestimmt',
    different: 'Das Instrument ist auf der anderen Seite von A = 440 Hz',
  },
  stops: {
    ...{ name: 'Durchspielen', unit: 'Halte und Sprünge', decimals: 0 },
    value: (n) => (n === '1' ? '1 Halt oder Sprung' : `${n} Halte und Sprünge`),
    better: 'Es wird seltener angehalten',
    worse: 'Es wird öfter angehalten',
    different: 'Die Zahl der Halte hat sich geändert',
  },
};
