import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { ARROW } from './captions.js';

const { tenth } = NUMBERS;

const COMMA = 'Das Komma in Klammern zeigt, wo du atmen sollst.';

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
  'breath-missed': {
    headline: 'Ein Atmen fehlt',
    text: () => 'Im Auftrag steht hier ein Atmen, und es war keins zu hören.',
    why: 'Wer an der richtigen Stelle atmet, kommt gut bis zur nächsten, und die Phrase darf enden.',
    practice: 'Zeichne das Atmen in deine Noten. Spiel bis dorthin, halte an, atme ein, und spiel von dort weiter.',
    caption: COMMA,
  },
  'breath-short': {
    headline: 'Statt voll nur kurz geatmet',
    text: (f) => `Im Auftrag steht hier: voll einatmen. Dieses Atmen dauert ${tenth(f.seconds)} Sekunden.`,
    why: 'Wer voll einatmet, hat es in der langen Phrase danach leicht.',
    practice: 'Hör mit der Note davor etwas früher auf. Atme tief und ohne Hast ein, und setz auf dem Schlag ein.',
    caption: COMMA,
  },
} satisfies Partial<FindingsWords>;
