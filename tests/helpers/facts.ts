import type { SayingFacts } from '../../src/judge/index.js';
import type { Facts } from '../../src/judge/observed/observation.js';

const change = { from: 'mf', to: 'f', db: 1.2, least: 3, byRegister: false } as const;
const wedge = { kind: 'diminuendo', db: 1.2, least: 3, byRegister: false } as const;
const entry = { milliseconds: 220, restQuarters: 1.5 };

/** Where notes of tuplets and beats lean, in each way it can be told. */
export const LEANINGS: readonly SayingFacts['groups-lean'][] = [
  ...(['leap', 'articulation', 'first', 'last', 'register'] as const).map((cause) => [cause]),
  ['leap', 'register'] as const,
].map((causes, i) => ({
  causes,
  differenceShare: i % 2 === 0 ? 0.18 : -0.18,
  intervalShare: i % 2 === 0 ? [0.12, 0.24] : [-0.24, -0.12],
  count: 24,
}));

/** Facts as they come up, in each way a kind can be told. */
export const FACTS_AS_THEY_COME_UP: { readonly [K in keyof Facts]: readonly Facts[K][] } = {
  accidental: (
    [
      'key-signature-forgotten',
      'accidental-forgotten',
      'dropped-within-bar',
      'carried-past-barline',
      'wrong-octave-applied',
    ] as const
  ).map((misreading) => ({ written: 'B♭', played: 'B', letter: 'B', misreading })),
  'wrong-note': [
    { written: 'G', played: 'E♭', octave: null },
    { written: 'G', played: 'G', octave: 'higher' },
  ],
  'missed-note': [
    { written: 'D', sure: true },
    { written: 'D', sure: false },
  ],
  'added-note': [
    { played: 'D', after: 'C' },
    { played: 'D', after: null },
  ],
  'skipped-bars': [
    { toBar: '12', atEnd: false, fileEnds: false },
    { toBar: '20', atEnd: true, fileEnds: false },
    { toBar: '20', atEnd: true, fileEnds: true },
  ],
  restart: [{ stoppedAtBar: '7' }, { stoppedAtBar: '20', whole: true }],
  'weak-contrast': [change, { ...change, byRegister: true }, { ...change, least: 6, asked: true }],
  'reversed-contrast': [{ from: 'p', to: 'f', db: -4 }],
  'weak-hairpin': [
    wedge,
    { ...wedge, byRegister: true },
    { ...wedge, kind: 'crescendo' },
    { ...wedge, least: 6, asked: true },
  ],
  'reversed-hairpin': [{ kind: 'crescendo', db: -3 }],
  'fermata-long': [
    { ratio: 3.4, most: 3 },
    { ratio: 2.4, most: 2, asked: true },
  ],
  'fermata-short': [
    { ratio: 0.9, least: 1.25 },
    { ratio: 1.2, least: 1.5, asked: true },
  ],
  'late-entry': [entry],
  'early-entry': [entry],
  'uneven-group': [
    { notes: 3, tuplet: true, which: 0, share: 0.48, written: 0.33 },
    ...LEANINGS.map((cause) => ({ notes: 3, tuplet: true, which: 0, share: 0.48, written: 0.33, cause })),
    { notes: 4, tuplet: false, which: 3, share: 0.35, written: 0.25 },
  ],
  hesitation: [{ seconds: 1.3 }],
  rushing: [{ percent: 12 }, { percent: 12, throughout: true }],
  dragging: [{ percent: 12 }, { percent: 12, throughout: true }],
  'slur-broken': [{ milliseconds: 70 }],
  'staccato-long': [
    { percent: 85, usual: 45, all: false },
    { percent: 85, usual: null, all: true },
  ],
  'accent-weak': [{ db: 0.2 }, { db: -2 }],
  'breath-unmarked': [
    { seconds: 0.4, inSlur: true },
    { seconds: 0.4, inSlur: false },
  ],
  'breath-late': [{ seconds: 0.5 }],
  'breath-missed': [{ seconds: 0.02 }],
  'breath-short': [{ seconds: 0.17 }],
  'tuning-off': [{ cents: 24 }, { cents: -24 }],
  'note-out-of-tune': [
    { written: 'A', cents: 38, times: 4 },
    { written: 'A', cents: 38, times: 1, secondCents: 4 },
    { written: 'B♭', cents: -38, times: 4, secondCents: 0.2 },
  ],
  'unsteady-note': [
    { cents: 19.4, usual: 1.2 },
    { cents: 14, usual: 0.3 },
    { cents: 33, usual: 4.1 },
  ],
  'air-gives-way': [{ cents: 24, db: 5 }],
  'cracked-start': [
    { milliseconds: 70, above: true },
    { milliseconds: 70, above: false },
  ],
  'speaks-late': [{ milliseconds: 120, usual: 8 }],
  'hit-start': [{ db: 7, usual: 1 }],
  'off-tempo': [
    { played: 78, marked: 92 },
    { played: 110, marked: 92 },
  ],
  'went-well': [
    { about: { what: 'accidentals', count: 11 } },
    { about: { what: 'notes', right: 100, of: 102 } },
    { about: { what: 'contrast', from: 'f', to: 'p', db: 13 } },
    { about: { what: 'hairpin', kind: 'crescendo', db: 12 } },
    { about: { what: 'fermatas', count: 2 } },
    { about: { what: 'steady-tempo', quarterBpm: 92, beat: 'quarter', percent: 1 } },
    { about: { what: 'intonation', share: 0.95, cents: 10 } },
  ],
};
