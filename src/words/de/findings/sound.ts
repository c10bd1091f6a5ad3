import { SMALLEST_HEARD_CENTS } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';

const { fixed, whole } = NUMBERS;
const usually = (cents: number) => (cents < 0.5 ? 'weniger als 1 Cent' : `etwa ${whole(cents)} Cent`);

/** Was zum Klang gesagt wird: wie ruhig er ist, nie, wie schön. */
export const SOUND = {
  'unsteady-note': {
    headline: 'Ein langer Ton zittert',
    text: (f) =>
      `Dieser lange Ton schwankt um etwa ${whole(f.cents)} Cent. Deine anderen langen Töne schwanken um ${usually(f.usual)}.`,
    why: 'Ein Ton auf ruhiger Luft trägt, leise wie laut.',
    practice:
      'Halte diesen Ton für sich lange und leise aus und hör zu, bis er still steht. Mach zwischen den Tönen Pause, und hör auf, wenn dir schwindlig wird.',
    caption: 'Die Wellenlinie zeigt den Ton, der zittert.',
  },
  'air-gives-way': {
    headline: 'Vor dem Atmen lässt die Luft nach',
    text: (f) =>
      `Am Ende sinkt dieser Ton um ${whole(f.cents)} Cent und wird leiser. Ab ${SMALLEST_HEARD_CENTS} Cent hört man es.`,
    why: 'Der letzte Schlag vor dem Atmen braucht so viel Luft wie der erste danach.',
    practice:
      'Halte diesen Ton neben einem Stimmgerät einen Schlag länger, als er dasteht, und ohne zu sinken. Spiel dann die Phrase und lass die Luft bis zum Ende fließen.',
    caption: 'Der Pfeil zeigt, wo der Ton sinkt.',
  },
  'cracked-start': {
    headline: 'Ein Ton kippt beim Ansatz',
    text: (f) => `Einen Augenblick lang klingt ein ${f.above ? 'höherer' : 'tieferer'} Ton, bevor dieser da ist.`,
    why: 'Nach einem sauberen Anfang hört man sofort, welchen Ton du meinst.',
    practice:
      'Hör den Ton in dir, bevor du ihn spielst. Beginn ihn ohne Zunge, nur mit Luft, bis er jedes Mal kommt; nimm dann die Zunge leicht dazu.',
    caption: 'Die Zickzacklinie zeigt den Ton, der kippt.',
  },
  'speaks-late': {
    headline: 'Ein Ton spricht spät an',
    text: (f) =>
      `Erst nach ${fixed(f.milliseconds / 1000, 1)} Sekunden Luft ist dieser Ton da. Deine anderen Töne kommen früher.`,
    why: 'Ein Ton, der sofort anspricht, ist von selbst auf dem Schlag.',
    practice:
      'Forme die Lippen und halte die Luft bereit, bevor der Ton kommt. Beginn ihn zehnmal leise und zähl, wie oft er sofort da ist.',
    caption: 'Die Striche zeigen die Luft vor dem Ton.',
  },
  'hit-start': {
    headline: 'Ein Ton wird härter angestoßen, als er klingt',
    text: () =>
      'Dieser Ton beginnt viel lauter, als er weitergeht, und kein Akzent steht da. Deine anderen Töne beginnen weicher.',
    why: 'Wenn die Zunge nur die Luft freigibt, trägt der ganze Ton und nicht allein sein Anfang.',
    practice:
      'Spiel diesen Ton ohne Zunge, nur mit Luft. Nimm dann die Zunge leicht dazu und halte den Ton so stark wie seinen Anfang.',
    caption: 'Der Keil zeigt den Ton, der zu hart beginnt.',
  },
} satisfies Partial<FindingsWords>;
