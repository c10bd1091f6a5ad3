import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { ARROW } from './captions.js';

const { tenth } = NUMBERS;

/** What is said of continuity. */
export const CONTINUITY = {
  'skipped-bars': {
    headline: 'Einige Takte wurden übersprungen',
    text: (f) =>
      f.fileEnds
        ? 'Die Aufnahme bricht hier ab. Was danach kommt, lässt sich nicht beurteilen.'
        : f.atEnd
          ? 'Die Musik hört hier auf: Was danach kommt, wurde nicht gespielt.'
          : `Die Musik springt hier nach vorn: Was bis Takt ${f.toBar} steht, wurde ausgelassen.`,
    why: 'Beim Vorspiel und im Register zählt jeder Takt.',
    practice: (f) =>
      f.fileEnds
        ? 'Speichere die Aufnahme noch einmal oder nimm neu auf.'
        : 'Mach eine Klammer um die Stelle. Fang zwei Takte vorher an und spiel hindurch, ohne anzuhalten.',
    caption: 'Die Klammer zeigt, was nicht gespielt wurde.',
  },
  restart: {
    headline: 'Das Spiel hielt an und begann neu',
    text: (f) =>
      f.whole
        ? 'Du hast bis zum letzten Takt gespielt und dann neu begonnen. Auf diesen Seiten zählt, was du beim zweiten Mal gespielt hast.'
        : `Du hast in Takt ${f.stoppedAtBar} angehalten und hier neu begonnen. Auf diesen Seiten zählt, was du beim zweiten Mal gespielt hast.`,
    why: 'Nach einem Fehler weiterzuspielen will gelernt sein, und beim Vorspiel braucht man es.',
    practice: (f) =>
      f.whole
        ? 'Nimm jedes Mal für sich auf, wenn du es spielst. Dann kannst du vergleichen.'
        : 'Spiel nach einem Fehler weiter: Fang zwei Takte vorher an und halte nicht an, was auch kommt.',
    caption: 'Der Pfeil geht zurück zu der Note, von der an du noch einmal gespielt hast.',
  },
  hesitation: {
    headline: 'Die Musik stand einen Moment still',
    text: (f) => `Die Musik wartet hier ${tenth(f.seconds)} Sekunden lang.`,
    why: 'Für alle anderen geht der Schlag weiter, also muss er auch bei dir weitergehen.',
    practice:
      'Schau beim Spielen einen Takt voraus. Fang zwei Takte vorher an und halte den Schlag durch diese Stelle durch.',
    caption: ARROW,
  },
} satisfies Partial<FindingsWords>;
