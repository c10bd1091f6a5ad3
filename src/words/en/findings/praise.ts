import type { Praise } from '../../../judge/index.js';
import { SMALLEST_HEARD_DB } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { tempoIn } from '../tempo.js';

const { whole } = NUMBERS;

const decibels = (db: number) => `${whole(db)} decibels. You can hear ${SMALLEST_HEARD_DB}`;

type PraiseOf<W extends Praise['what']> = Extract<Praise, { what: W }>;

const GROUNDS: { readonly [W in Praise['what']]: (p: PraiseOf<W>) => string } = {
  accidentals: (p) => `All ${p.count} notes with a tricky accidental were right.`,
  notes: (p) => `${p.right} of ${p.of} notes were as written.`,
  contrast: (p) => `The change from ${p.from} to ${p.to} is plain to hear: ${decibels(p.db)}.`,
  hairpin: (p) => `This ${p.kind} really ${p.kind === 'crescendo' ? 'grows' : 'fades'}, by ${decibels(p.db)}.`,
  fermatas: (p) => FERMATAS[p.count] ?? `All ${p.count} fermatas have a good length.`,
  'steady-tempo': (p) =>
    `Your tempo is steady at ${tempoIn(p.quarterBpm, p.beat)}. Nearly every bar is within ${Math.max(1, Math.ceil(p.percent))} percent of it.`,
  intonation: (p) => `Your notes are in tune with each other. To the ear, ${whole(100 * p.share)} of 100 fit well.`,
};

const FERMATAS: Readonly<Record<number, string>> = {
  1: 'The fermata has a good length.',
  2: 'Both fermatas have a good length.',
};

/** What is said of what went well. */
export const PRAISE = {
  'went-well': {
    headline: 'This went well',
    text: (f) => GROUNDS[f.about.what](f.about as never),
    why: '',
    practice: '',
    caption: null,
  },
} satisfies Partial<FindingsWords>;
