import type { FindingsWords } from '../../shapes/findings.js';
import { LEANING } from '../leaning.js';
import { NUMBERS } from '../numbers.js';
import { ARROW } from './captions.js';

const { hundredths, tenth, whole } = NUMBERS;
const BARS = 'Der dicke Balken zeigt, wie lang du die Note gehalten hast, der feine, wie lang sie dasteht.';

const ORDINALS = ['erste', 'zweite', 'dritte', 'vierte', 'fünfte', 'sechste', 'siebte', 'achte'];

/** Syllables that fill a rest with small values. Source: common practice. */
function counting(restQuarters: number): string {
  return restQuarters < 0.5 ? '„eins-e-und-e“' : '„eins und zwei und“';
}

/** What is said of rhythm. */
export const RHYTHM = {
  'late-entry': {
    headline: 'Der Einsatz kam zu spät',
    text: (f) => `Die Note nach der Pause kommt ${hundredths(f.milliseconds)} Sekunden zu spät.`,
    why: 'Auch eine Pause wird gespielt: Zähl sie in kleinen Werten, dann sitzt der Einsatz.',
    practice: (f) =>
      `Zähl die Pause in kleinen Noten: Sag ${counting(f.restQuarters)} laut mit und spiel auf die nächste.`,
    caption: ARROW,
  },
  'early-entry': {
    headline: 'Der Einsatz kam zu früh',
    text: (f) => `Die Note nach der Pause kommt ${hundredths(f.milliseconds)} Sekunden zu früh.`,
    why: 'Auch eine Pause wird gespielt: Zähl sie ganz zu Ende, bevor du einsetzt.',
    practice: (f) => `Gib der Pause ihre volle Länge: Sag ${counting(f.restQuarters)} laut mit und spiel dann.`,
    caption: ARROW,
  },
  'uneven-group': {
    headline: 'Die Noten des Schlags sind nicht gleich lang',
    text: (f) =>
      `Die ${f.notes} Noten dieser ${f.tuplet && f.notes === 3 ? 'Triole' : 'Gruppe'} sind nicht gleich lang: Die ${ORDINALS[f.which] ?? 'letzte'} ist zu ${f.share > f.written ? 'lang' : 'kurz'}. Sie nimmt ${whole(100 * f.share)} statt ${whole(100 * f.written)} Prozent der Zeit.${LEANING.sentence(f.cause)}`,
    why: 'Die Teile eines Schlags bleiben gleich, auch bei Sprüngen und wenn die Bögen wechseln.',
    practice:
      'Klopf den Schlag und sprich die Gruppe, eine Silbe für jede Note. Spiel sie auf einem Ton, dann wie sie dasteht, erst gebunden, dann gestoßen.',
    caption: 'Die obere Klammer ist der Schlag, wie du ihn gespielt hast, die untere, wie er dasteht.',
  },
  'fermata-long': {
    headline: 'Die Fermate ist sehr lang',
    text: (f) =>
      f.asked
        ? `Die Fermate dauert ${tenth(f.ratio)}-mal so lang wie notiert. Im Auftrag steht: höchstens ${tenth(f.most)}-mal so lang.`
        : `Die Fermate dauert ${tenth(f.ratio)}-mal so lang wie notiert. Etwa doppelt so lang ist üblich; mehr als ${tenth(f.most)}-mal so lang hält die Musik an.`,
    why: 'Eine Fermate lässt die Musik ruhen. Dauert sie zu lang, geht die Linie verloren.',
    practice: (f) =>
      f.asked
        ? 'Zähl die Schläge im Stillen mit und lass früher los als bisher.'
        : 'Zähl die Schläge im Stillen noch einmal, dann lass los.',
    caption: BARS,
  },
  'fermata-short': {
    headline: 'Die Fermate wird kaum gehalten',
    text: (f) =>
      f.asked
        ? `Die Fermate dauert nur ${tenth(f.ratio)}-mal so lang wie notiert. Im Auftrag steht: mindestens ${tenth(f.least)}-mal so lang.`
        : `Die Fermate dauert nur ${tenth(f.ratio)}-mal so lang wie notiert. Sie darf ruhen: mindestens ${tenth(f.least)}-mal so lang.`,
    why: 'Eine Fermate lässt die Musik ruhen, bevor sie weitergeht.',
    practice: (f) =>
      f.asked
        ? 'Zähl die Schläge und zähl dann weiter: Halte sie länger als bisher.'
        : 'Zähl die Schläge, warte noch einmal etwa so lang, und geh dann weiter.',
    caption: BARS,
  },
} satisfies Partial<FindingsWords>;
