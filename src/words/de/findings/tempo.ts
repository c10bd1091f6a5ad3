import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { beatsIn, tempoIn } from '../tempo.js';

const { whole } = NUMBERS;
const ENDS =
  'Spiel die ersten zwei Takte mit dem Metronom, gleich darauf die letzten zwei, und hör, ob sie dazu passen.';
const FORESEEN = 'Andere können nur mit einem Schlag mitspielen, den sie kommen sehen.';
const TEMPOS = 'Die Zahlen sind deine Schläge in der Minute, Takt für Takt.';

/** What is said of tempo. */
export const TEMPO = {
  rushing: {
    headline: 'Das Tempo läuft davon',
    text: (f) =>
      f.throughout
        ? `Das Tempo wird vom Anfang bis zum Ende schneller, um etwa ${whole(f.percent)} Prozent.`
        : `Das Tempo läuft hier davon, um etwa ${whole(f.percent)} Prozent.`,
    why: FORESEEN,
    practice: (f) => (f.throughout ? ENDS : 'Spiel diese Takte mit dem Metronom nur auf den leichten Schlägen.'),
    caption: `Der Pfeil geht über die Takte, in denen du eilst. ${TEMPOS}`,
  },
  dragging: {
    headline: 'Das Tempo wird langsamer',
    text: (f) =>
      f.throughout
        ? `Das Tempo wird vom Anfang bis zum Ende langsamer, um etwa ${whole(f.percent)} Prozent.`
        : `Das Tempo sinkt hier, um etwa ${whole(f.percent)} Prozent.`,
    why: FORESEEN,
    practice: (f) =>
      f.throughout ? ENDS : 'Such den schwersten Schlag in diesen Takten und übe ihn allein, dann mit dem Metronom.',
    caption: `Der Pfeil zeigt zurück über die Takte, in denen du langsamer wirst. ${TEMPOS}`,
  },
  'off-tempo': {
    headline: 'Das Tempo ist ein anderes, als dasteht',
    text: (f) => `Du hast etwa ${tempoIn(f.played, f.beat)} gespielt; ${whole(beatsIn(f.marked, f.beat))} stehen da.`,
    why: 'Das Tempo gibt dem Stück seinen Charakter. Zum Üben ist ein langsames richtig.',
    practice: (f) =>
      f.played < f.marked
        ? 'Wenn das nicht so gedacht war, stell das Metronom jeden Tag um vier höher.'
        : 'Lass das Metronom zwei Takte laufen, bevor du anfängst, und atme mit ihm.',
    caption: 'Über der ersten Note steht das Tempo, das du gespielt hast.',
  },
} satisfies Partial<FindingsWords>;
