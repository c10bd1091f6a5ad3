import type { Praise } from '../../../judge/index.js';
import { SMALLEST_HEARD_DB } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { tempoIn } from '../tempo.js';

const { whole } = NUMBERS;
const WEDGES = { crescendo: 'Crescendo', diminuendo: 'Diminuendo' } as const;

const decibels = (db: number) => `${whole(db)} Dezibel; ab ${SMALLEST_HEARD_DB} hört man etwas`;

type PraiseOf<W extends Praise['what']> = Extract<Praise, { what: W }>;

const GROUNDS: { readonly [W in Praise['what']]: (p: PraiseOf<W>) => string } = {
  accidentals: (p) => `Alle ${p.count} Noten mit einem kniffligen Vorzeichen waren richtig.`,
  notes: (p) => `${p.right} von ${p.of} Noten waren so, wie sie dastehen.`,
  contrast: (p) => `Der Wechsel von ${p.from} zu ${p.to} ist klar zu hören: ${decibels(p.db)}.`,
  hairpin: (p) =>
    `Dieses ${WEDGES[p.kind]} wird wirklich ${p.kind === 'crescendo' ? 'lauter' : 'leiser'}: ${decibels(p.db)}.`,
  fermatas: (p) => FERMATAS[p.count] ?? `Alle ${p.count} Fermaten haben eine gute Länge.`,
  'steady-tempo': (p) =>
    `Dein Tempo ist stetig: ${tempoIn(p.quarterBpm, p.beat)}. Fast jeder Takt weicht um höchstens ${Math.max(1, Math.ceil(p.percent))} Prozent davon ab.`,
  intonation: (p) =>
    `Deine Töne stimmen gut zueinander. Bei ${whole(100 * p.share)} von 100 hört man kaum einen Unterschied.`,
};

const FERMATAS: Readonly<Record<number, string>> = {
  1: 'Die Fermate hat eine gute Länge.',
  2: 'Beide Fermaten haben eine gute Länge.',
};

/** What is said of what went well. */
export const PRAISE = {
  'went-well': {
    headline: 'Das ist gelungen',
    text: (f) => GROUNDS[f.about.what](f.about as never),
    why: '',
    practice: '',
    caption: null,
  },
} satisfies Partial<FindingsWords>;
