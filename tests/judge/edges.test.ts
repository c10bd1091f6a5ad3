import { describe, expect, it } from 'vitest';
import type { FindingKind } from '../../src/judge/index.js';
import type { Observation } from '../../src/judge/observed/observation.js';
import { withoutConsequences } from '../../src/judge/one-cause.js';
import { shareCauses } from '../../src/judge/share-causes.js';
import { withoutDoubtful } from '../../src/judge/without-doubtful.js';
import { type NoteSketch, smallPart } from '../demo/small-part.js';
import { type JudgedOptions, judged, judgeInput, ofKind, weightOf } from '../helpers/judged.js';

/**
 * What a judge does right at an edge: the last note a stop reaches, the bar that closes a stretch, the note beside which doubt
 * begins. Every count and place is worked out by hand.
 *
 * Source: definition; a doubt makes a finding milder and never sharper.
 */
const QUARTERS: readonly NoteSketch[] = Array.from({ length: 24 }, (_, i) => ({
  midi: 60 + ((7 * i) % 12),
  quarters: 1,
}));
const PART = smallPart(QUARTERS);
const PLACE = { bar: '3', pass: 1 };
const observed = (kind: FindingKind, more: object): Observation =>
  ({ kind, criterion: 'rhythm', weight: 'watch', size: 1, bar: '1', pass: 1, ...more }) as unknown as Observation;
const names = (all: readonly Observation[]) => all.map(({ kind, index }) => `${kind} ${index ?? 'nowhere'}`);

describe('what a stop causes', () => {
  const late = (stop: number, entry: number, kind: FindingKind = 'hesitation') =>
    names(withoutConsequences([observed(kind, { index: stop }), observed('late-entry', { index: entry })])).length ===
    1;

  it('is a late entry up to four notes on', () => {
    expect([10, 11, 12, 14, 15].map((entry) => late(10, entry))).toEqual([false, true, true, true, false]);
    expect([late(10, 11, 'breath-unmarked'), late(10, 11, 'breath-late'), late(10, 11, 'breath-missed')]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('is an uneven group in whose notes it stands, the first and the last with them', () => {
    const torn = (stop: number) => {
      const all = [observed('hesitation', { index: stop }), observed('uneven-group', { index: 4, toIndex: 6 })];
      return names(withoutConsequences(all)).length === 1;
    };
    expect([3, 4, 5, 6, 7].map(torn)).toEqual([false, true, true, true, false]);
  });

  it('is nothing else, and nothing that has no place', () => {
    const all = [
      observed('hesitation', { index: 10 }),
      observed('slur-broken', { index: 11 }),
      observed('late-entry', {}),
      observed('hesitation', {}),
      observed('early-entry', { index: 11 }),
    ];
    expect(withoutConsequences(all)).toEqual(all);
  });
});

describe('doubt before a new beginning', () => {
  const kept = (index: number, confidence: number, more: object = {}, resumedAtIndex = 22) => {
    const restarts = [{ stoppedAtIndex: resumedAtIndex + 1, resumedAtIndex, onsetSeconds: 30 }];
    const input = judgeInput(PART, { alignment: { restarts }, aligned: { [index]: { confidence } } });
    return (
      withoutDoubtful(input, [observed('slur-broken', { criterion: 'articulation', index, ...more })]).length === 1
    );
  };

  it('reaches twelve notes back, and not to the note it begins with', () => {
    expect([9, 10, 21, 22].map((index) => kept(index, 0.5))).toEqual([true, false, false, true]);
  });

  it('is of notes less sure than 0.9', () => {
    expect([kept(20, 0.9), kept(20, 0.89)]).toEqual([true, false]);
  });

  it('is of rhythm, articulation and tuning, and keeps what has no place', () => {
    const told = ['rhythm', 'articulation', 'intonation', 'notes', 'dynamics', 'breath', 'sound'].filter((criterion) =>
      kept(20, 0.5, { criterion }),
    );
    expect(told).toEqual(['notes', 'dynamics', 'breath', 'sound']);
    expect(kept(20, 0.5, { index: undefined })).toBe(true);
    expect(kept(20, 0.5, { weight: 'fix' })).toBe(true);
    expect(kept(20, 0.5, { weight: 'well' })).toBe(true);
  });
});

describe('findings of one kind', () => {
  const at = (bar: string, index: number, weight: 'fix' | 'watch' | 'well', more: object = {}) =>
    observed('slur-broken', { criterion: 'articulation', bar, index, weight, ...more });

  it('are named by the one that leads: sure ones also, the others perhaps', () => {
    const [first] = shareCauses([
      at('9', 40, 'fix'),
      at('7', 30, 'watch'),
      at('2', 10, 'watch'),
      at('5', 20, 'fix'),
      at('5', 21, 'watch'),
      at('9', 41, 'watch'),
      observed('hesitation', { criterion: 'articulation', bar: '3', index: 12 }),
    ]);
    expect([first!.alsoInBars, first!.perhapsInBars]).toEqual([['5'], ['2', '7']]);
  });

  it('are perhaps nowhere where the one that leads is only watched', () => {
    const led = shareCauses([at('9', 40, 'watch'), at('2', 10, 'watch')]);
    expect([led[0]!.alsoInBars, led[0]!.perhapsInBars, led[1]!.ledByBar]).toEqual([['2'], [], '9']);
  });

  it('lead nothing where they are praise, or no habit', () => {
    const praise = shareCauses([at('9', 40, 'well'), at('2', 10, 'well')]);
    expect(praise.map(({ ledByBar, alsoInBars }) => [ledByBar, alsoInBars])).toEqual([
      [undefined, []],
      [undefined, []],
    ]);
    for (const criterion of ['notes', 'intonation', 'tempo', 'continuity']) {
      const led = shareCauses([at('9', 40, 'fix', { criterion }), at('2', 10, 'fix', { criterion })]);
      expect(led.map(({ ledByBar }) => ledByBar)).toEqual([undefined, undefined]);
    }
  });

  it('stand first where they have no place', () => {
    const [lead] = shareCauses([
      at('9', 40, 'fix'),
      at('5', 20, 'fix'),
      { ...at('1', 0, 'fix'), index: undefined },
    ] as Observation[]);
    expect(lead!.alsoInBars).toEqual(['1', '5']);
  });
});

describe('a group beside what was not made out', () => {
  const group = (more: JudgedOptions = {}, index = 4, shares = [0.5, 0.25, 0.25]) => {
    const written = [1 / 3, 1 / 3, 1 / 3];
    const groups = [{ index, toIndex: index + 2, ...PLACE, tuplet: true, seconds: 1.5, shares, written }];
    return weightOf(judged(PART, { ...more, measurements: { groups } }), 'uneven-group');
  };
  const UNCLEAR = { status: 'unclear' } as const;

  it('is to be watched where the note before it or after it is unclear, and no further away', () => {
    expect([2, 3, 7, 8].map((i) => group({ aligned: { [i]: UNCLEAR } }))).toEqual(['fix', 'watch', 'watch', 'fix']);
  });

  it('is sure at the edges of the part', () => {
    expect([group({}, 0), group({}, 21)]).toEqual(['fix', 'fix']);
  });

  it('is to be watched where something was added within it, and not beside it', () => {
    const added = (afterIndex: number) => [{ onsetSeconds: 5, offsetSeconds: 5.2, midi: 90, afterIndex }];
    const told = [3, 4, 6, 7].map((afterIndex) => group({ alignment: { added: added(afterIndex) } }));
    expect(told).toEqual(['fix', 'watch', 'watch', 'fix']);
  });

  it('is to be watched where a note repeats the one before it, but the first', () => {
    const repeated = (index: number) => {
      const part = smallPart(QUARTERS.map((n, i) => (i === index ? { ...n, midi: QUARTERS[i - 1]!.midi } : n)));
      const written = [1 / 3, 1 / 3, 1 / 3];
      const groups = [
        { index: 4, toIndex: 6, ...PLACE, tuplet: true, seconds: 1.5, shares: [0.5, 0.25, 0.25], written },
      ];
      return weightOf(judged(part, { measurements: { groups } }), 'uneven-group');
    };
    expect([4, 5, 6, 7, 8].map(repeated)).toEqual(['fix', 'watch', 'watch', 'watch', 'fix']);
  });

  it('is to be watched where a note has less than 0.4 of its time: it was more likely misheard', () => {
    // 0.4 of a third is 0.1333
    expect([group({}, 4, [0.43, 0.43, 0.14]), group({}, 4, [0.435, 0.435, 0.13])]).toEqual(['fix', 'watch']);
  });
});

describe('a dot that is held', () => {
  const dotted = smallPart(QUARTERS.map((n) => ({ ...n, articulations: ['staccato'] })));
  const pace = { betweenOnsetsSeconds: 1, expectedSeconds: 1, secondsAQuarter: 1, dipDb: 2 };
  const told = (shares: readonly number[]) => {
    const transitions = shares.map((soundedShare, index) => {
      return { index, toIndex: index + 1, ...pace, soundedShare, gapSeconds: 1 - soundedShare };
    });
    const recording = { ...judgeInput(dotted).measurements.recording, reverberationSeconds: 0.2 };
    return ofKind(judged(dotted, { measurements: { transitions, recording } }), 'staccato-long').map(
      ({ weight, index, facts }) => [weight, index, (facts as { all: boolean }).all],
    );
  };

  it('is one thing to listen to where nearly all are, of four and more', () => {
    expect(told([0.9, 0.9, 0.9, 0.9])).toEqual([['watch', 0, true]]);
    expect(told([0.9, 0.9, 0.9])).toHaveLength(3);
    // half of them short: 0.72 is the middle of 0.54 and 0.9, and no habit
    expect(told([0.54, 0.54, 0.9, 0.9]).every(([, , all]) => all === false)).toBe(true);
  });
});

describe('a sound that is not in the part', () => {
  const told = (extra: object, part = PART, alignment: JudgedOptions['alignment'] = {}) => {
    const added = [{ onsetSeconds: 9.2, offsetSeconds: 9.5, midi: 70, afterIndex: 8, ...extra }];
    const [finding] = ofKind(judged(part, { alignment: { added, ...alignment } }), 'added-note');
    return finding;
  };

  it('before the first note stands at it, is to be watched, and follows nothing', () => {
    expect(told({ afterIndex: -1, onsetSeconds: 0.1, offsetSeconds: 0.4 })).toMatchObject({
      ...{ weight: 'watch', index: 0, bar: '1', onset: 0.1 },
      facts: { played: 'A♯', after: null },
    });
  });

  it('is named as the player reads it', () => {
    // written a whole tone above what sounds, as for a clarinet in B flat
    const transposed = { ...PART, notes: PART.notes.map((n) => ({ ...n, writtenMidi: n.soundingMidi + 2 })) };
    expect(told({}, transposed)!.facts).toEqual({ played: 'C', after: 'C' });
    const rests = [
      {
        ...{ index: 8, toIndex: 9, ...PLACE, beat: 1, quarters: 1, seconds: 1 },
        ...{ state: 'played-into' as const, onsetSeconds: 9.3, midi: 82 },
      },
    ];
    const options = { alignment: { offsetSemitones: 12 }, measurements: { rests } };
    // 82 less the octave that the whole take sounds higher is 70, written as 72
    const [finding] = ofKind(judged(transposed, options), 'added-note');
    expect(finding!.facts).toEqual({ played: 'C', after: 'C' });
  });

  it('is none in a rest where it is not known when or at which pitch', () => {
    const rest = { index: 8, toIndex: 9, ...PLACE, beat: 1, quarters: 1, seconds: 1, state: 'played-into' as const };
    const found = (change: object) =>
      ofKind(judged(PART, { measurements: { rests: [{ ...rest, ...change }] } }), 'added-note').length;
    expect([found({ onsetSeconds: 9.3, midi: 72 }), found({ onsetSeconds: 9.3 }), found({ midi: 72 })]).toEqual([
      1, 0, 0,
    ]);
  });
});

describe('an octave', () => {
  const told = (away: number) => {
    const playedMidi = PART.notes[9]!.soundingMidi + away;
    const aligned = { 9: { status: 'other-pitch', playedMidi, confidence: 1 } } as const;
    return ofKind(judged(PART, { aligned }), 'wrong-note')[0]!.facts;
  };

  it('is told as higher or lower', () => {
    expect(
      [told(12), told(-12), told(24), told(11)].map((facts) => (facts as { octave: string | null }).octave),
    ).toEqual(['higher', 'lower', 'higher', null]);
  });
});

describe('an uneven group', () => {
  it('is told by the note that is furthest off, beside what is written', () => {
    const groups = [
      {
        ...{ index: 4, toIndex: 6, ...PLACE, tuplet: false, seconds: 1.5 },
        ...{ shares: [0.25, 0.2, 0.55], written: [0.25, 0.25, 0.5] },
      },
      {
        ...{ index: 8, toIndex: 10, ...PLACE, tuplet: false, seconds: 1.5 },
        ...{ shares: [0.4, 0.2, 0.4], written: [0.25, 0.25, 0.5] },
      },
    ];
    const found = ofKind(judged(PART, { measurements: { groups } }), 'uneven-group');
    expect(found.map(({ index, measured }) => [index, measured!.value, measured!.expected])).toEqual([
      [8, 40, { code: 'percent', facts: { percent: 25 } }],
    ]);
  });
});
