import type { Language } from '../../src/base/index.js';
import type { ArticulationGroup, Demand, EntryPlan, PracticeStep, TempoChange, Trap } from '../../src/study/index.js';
import { wordsIn } from '../../src/words/words-in.js';

const F_SHARP = { step: 'F', alter: 1 } as const;
const F = { step: 'F', alter: 0 } as const;

function trap(more: Partial<Trap> & Pick<Trap, 'kind'>): Trap {
  const place = { bar: '4', barIndex: 3, beats: [3, 4.5], printedIds: ['n9', 'n11'], rank: 1 } as const;
  return { ...place, pitches: [F_SHARP], misread: [F], because: null, likely: null, ...more };
}

const SIGN = { bar: '3', barIndex: 2, beat: 1, printedId: 'n3', alter: 1, octave: 'lower' } as const;

/** Every kind of trap, with and without the sign that leads astray. */
const TRAPS: readonly Trap[] = [
  ...(['dropped-within-bar', 'carried-past-barline', 'wrong-octave-applied'] as const).flatMap((kind) => [
    trap({ kind }),
    trap({ kind, because: SIGN }),
    trap({ kind, because: { ...SIGN, beat: 1.2, octave: 'higher' }, beats: [2.2] }),
  ]),
  trap({ kind: 'key-signature-forgotten', likely: { why: 'first' } }),
  trap({ kind: 'key-signature-forgotten', likely: { why: 'first' }, pitches: [F_SHARP, { step: 'C', alter: 1 }] }),
  trap({ kind: 'key-signature-forgotten', likely: { why: 'after-sign', bar: '2', alter: 0 } }),
  trap({ kind: 'key-signature-forgotten', likely: { why: 'beside-natural', neighbour: { step: 'E', alter: 0 } } }),
  trap({ kind: 'accidental-forgotten' }),
];

const group = (more: Partial<ArticulationGroup>): ArticulationGroup => ({
  ...{ kind: 'tongued', count: 2, accentOnFirst: false, dotOnLast: false, times: 1 },
  ...more,
});

/** Groups of each articulation, slurs with signs among them. */
export const PATTERNS: readonly (readonly ArticulationGroup[])[] = [
  [group({ kind: 'slurred' }), group({ count: 1 })],
  [group({ kind: 'slurred', times: 2 }), group({ kind: 'slurred', count: 3, times: 3 })],
  [group({ kind: 'slurred', accentOnFirst: true, dotOnLast: true }), group({ kind: 'staccato' })],
  [group({ kind: 'staccatissimo' }), group({ kind: 'tenuto' }), group({ kind: 'accent', count: 1 })],
  [group({ kind: 'strong-accent', count: 1 }), group({ kind: 'detached-legato', count: 13 })],
];

const RESTS: readonly EntryPlan['rest'][] = [
  ...(
    [
      'thirty-second',
      'sixteenth',
      'triplet-eighth',
      'eighth',
      'two-triplet-eighths',
      'dotted-eighth',
      'quarter',
      'dotted-quarter',
      'half',
      'dotted-half',
    ] as const
  ).map((value) => ({ value })),
  { bars: 1 },
  { bars: 2 },
  { quarters: 1.25 },
];
const COUNTS = ['bars-then-eighths', 'eighths', 'triplet-eighths', 'sixteenths', 'smallest'] as const;
const HOWS = ['on', 'half', 'part', 'after'] as const;

/** Every rest, way of counting and kind of place, each at least once. */
const ENTRIES: readonly EntryPlan[] = RESTS.map((rest, i) => {
  const how = HOWS[i % HOWS.length] as (typeof HOWS)[number];
  const count = COUNTS[i % COUNTS.length] as (typeof COUNTS)[number];
  return { bars: ['7'], rest, count, entry: { how, beat: how === 'part' ? 2.25 : 2 } };
});

export const CHANGES: readonly TempoChange[] = [
  { to: 80, beat: 'quarter' },
  { bend: 'slower', until: { bar: '9', beat: 1 } },
  { bend: 'faster', until: { bar: '9', beat: 2.2 } },
  { bend: 'slower', until: null },
];

/** Every step of practice in each of its forms. */
const STEPS: readonly PracticeStep[] = [
  { kind: 'read', bars: [], more: false, rests: false },
  { kind: 'read', bars: ['4'], more: false, rests: true },
  { kind: 'read', bars: ['4', '9', '11'], more: true, rests: true },
  { kind: 'slow', quarterBpm: 56, beat: 'quarter' },
  { kind: 'tongued', quarterBpm: 56, beat: 'quarter', patternBar: '4' },
  { kind: 'dynamics' },
  { kind: 'under-tempo' },
  { kind: 'up-to-tempo', steps: [56, 66, 76, 92], beat: 'quarter' },
  { kind: 'once-through' },
];

/** Every kind of demand. */
const DEMANDS: readonly Demand[] = [
  {
    kind: 'points',
    criteria: [
      { criterion: 'notes', points: 30 },
      { criterion: 'rhythm', points: 12.5 },
    ],
    total: 42.5,
  },
  { kind: 'left-out', criteria: ['tempo', 'continuity'] },
  { kind: 'contrast', leastDb: 6, places: [] },
  {
    kind: 'contrast',
    leastDb: 6,
    places: [
      { bar: '8', leastDb: 8 },
      { from: 'p', to: 'f', leastDb: 4 },
    ],
  },
  { kind: 'hairpin', leastDb: 5 },
  { kind: 'fermata', leastTimes: 1.5, mostTimes: 2 },
  { kind: 'intonation', fixCents: 20 },
];

const FERMATA = { bar: '15', beat: 3, writtenSeconds: 1.3, leastTimes: 1.25, mostTimes: 3 };

/**
 * Everything a study sheet says in sentences, by what it is about.
 *
 * @param language of the sheet
 * @returns names and texts
 */
export function studySentences(language: Language): (readonly [string, string])[] {
  const { plan, page } = wordsIn(language).study;
  const hairpin = { bar: '6', toBar: '7', bars: 2, seconds: 5.2 } as const;
  return [
    ...TRAPS.map((one) => [`trap ${one.kind}`, plan.trap(one)] as const),
    ...ENTRIES.map((one) => ['entry', plan.entry(one)] as const),
    ['fermata', plan.fermata({ ...FERMATA, suggestedTimes: 2, suggestedSeconds: 2.6, short: false, usual: true })],
    [
      'own fermata',
      plan.fermata({ ...FERMATA, suggestedTimes: 1.75, suggestedSeconds: 2.3, short: false, usual: false }),
    ],
    [
      'short fermata',
      plan.fermata({ ...FERMATA, suggestedTimes: 1.5, suggestedSeconds: 1.95, short: true, usual: true }),
    ],
    ...STEPS.map((step) => [`practice ${step.kind}`, plan.practice(step)] as const),
    ['cautions', plan.cautions.join(' ')],
    ['traps', [page.traps.introduction, page.traps.none, page.traps.printedOnly].join(' ')],
    ['breaths', [page.breaths.introduction, page.breaths.none(52), page.breaths.long('9', '12', 10.4)].join(' ')],
    ['dynamics', [page.dynamics.introduction, page.dynamics.none].join(' ')],
    ['contrasts', page.dynamics.contrasts([{ from: 'p', to: 'f', bars: ['11', '13', '19'] }])],
    [
      'crescendo',
      page.dynamics.hairpin({ kind: 'crescendo', ...hairpin, fromMark: 'p', toMark: 'f', opposite: false }),
    ],
    ['fp', page.dynamics.hairpinAgain({ kind: 'diminuendo', ...hairpin, fromMark: 'p', toMark: 'f', opposite: true })],
    ['tonguing', page.tonguing.introduction + page.tonguing.dotUnderSlur],
    ['counting', [page.entries.introduction, page.fermatas.introduction(true), page.tempo.introduction].join(' ')],
    ['fermatas as asked', page.fermatas.introduction(false)],
    ...DEMANDS.map((demand) => [`demand ${demand.kind}`, plan.demand(demand)] as const),
    ['letters missing', page.lettersMissing([])],
  ];
}
