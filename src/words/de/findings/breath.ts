import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { ARROW } from './captions.js';

const { tenth } = NUMBERS;

/** What is said of breath. */
export const BREATH = {
  'breath-unmarked': {
    headline: 'Ein Atmen, wo kein Zeichen steht',
    text: (f) =>
      f.inSlur
        ? 'Nach dieser Note hast du geatmet, mitten im Bogen.'
        : 'Nach dieser Note hast du geatmet, ohne dass ein Atemzeichen dasteht.',
    why: 'Atmen an der falschen Stelle schneidet die Phrase entzwei.',
    practice:
      'Atme beim Zeichen davor voll ein und spiel in einer Linie bis zum nächsten. Mach Pause, wenn dir schwindlig wird.',
    caption: 'Das Komma in Klammern zeigt, wo du geatmet hast.',
  },
  'breath-late': {
    headline: 'Das Atmen hält die nächste Note auf',
    text: (f) => `Das Atmen dauert hier ${tenth(f.seconds)} Sekunden zu lang, darum kommt die nächste Note zu spät.`,
    why: 'Nimm die Zeit zum Atmen von der Note davor, nie von der Note danach.',
    practice: 'Kürze die Note vor dem Atmen, nicht den Schlag danach. Atme tief und schnell.',
    caption: ARROW,
  },
} satisfies Partial<FindingsWords>;
