import { describe, expect, it } from 'vitest';
import { type Brief, defaultBrief, readBrief } from '../../src/brief/index.js';
import { readDemoScore } from '../../src/demo/index.js';
import { standardsFor } from '../../src/judge/index.js';
import { observe } from '../../src/judge/observe.js';
import type { JudgeInput } from '../../src/judge/observed/judge-input.js';
import type { Observation } from '../../src/judge/observed/observation.js';
import { readPart } from '../../src/score/index.js';
import { STANDARDS } from '../../src/standards/index.js';

const part = readPart(readDemoScore());
const briefOf = (page: string): Brief => readBrief(page, part);
const valuesOf = (brief: Brief): Record<string, number> =>
  Object.fromEntries(Object.entries(standardsFor(brief)).map(([name, { value }]) => [name, value]));

/** A judge that finds a contrast in each bar too weak, and each fermata too long, when it misses the standard it is given. */
function judge({ standards }: JudgeInput): Observation[] {
  const contrast = (bar: string, from: string, to: string, db: number): Observation[] => {
    const least = standards.contrastLeast.value;
    if (db >= least) return [];
    const facts = { from, to, db, least, byRegister: false };
    return [{ kind: 'weak-contrast', criterion: 'dynamics', weight: 'fix', size: 1, bar, pass: 1, facts }];
  };
  const fermata = (bar: string, ratio: number): Observation[] => {
    const most = standards.fermataMost.value;
    if (ratio <= most) return [];
    return [
      { kind: 'fermata-long', criterion: 'rhythm', weight: 'fix', size: 1, bar, pass: 1, facts: { ratio, most } },
    ];
  };
  return [...contrast('8', 'p', 'f', 5), ...contrast('10', 'f', 'p', 5), ...fermata('15', 2.5), ...fermata('20', 2.5)];
}

function seen(page: string): string[] {
  const brief = briefOf(page);
  const input = { part, standards: standardsFor(brief), brief } as unknown as JudgeInput;
  return observe(judge, input).map(({ kind, bar }) => `${kind} ${bar}`);
}

describe('standards by a brief', () => {
  it('are those of the house when it says nothing', () => {
    const { tempoWatch, ...rest } = valuesOf(defaultBrief(part));
    const { tempoWatch: house, ...others } = Object.fromEntries(
      Object.entries(STANDARDS).map(([name, { value }]) => [name, value]),
    );
    expect(rest).toEqual(others);
    // The range of 92 is written in whole numbers, 83 to 101: 9 to 92 on both sides.
    expect(tempoWatch).toBeCloseTo(9 / 92, 6);
    expect(house).toBe(0.1);
  });

  it('are those it sets', () => {
    const page =
      'tempo: { quarterBpm: 100, lowest: 80, highest: 105 }\nfermata: { leastTimes: 1.5, mostTimes: 2 }\ncontrast: { leastDb: 6 }\nhairpin: { leastDb: 5 }\nintonation: { watchCents: 15, fixCents: 20 }';
    const values = valuesOf(briefOf(page));
    expect(values).toMatchObject({ fermataLeast: 1.5, fermataMost: 2, contrastLeast: 6, hairpinLeast: 5 });
    expect(values).toMatchObject({ noteWatch: 15, noteFix: 20 });
    expect(values.tempoWatch).toBeCloseTo(0.05, 6);
  });
});

describe('judging by a brief', () => {
  it('is judging as ever without one', () => {
    const input = { part, standards: STANDARDS } as unknown as JudgeInput;
    expect(observe(judge, input)).toEqual(judge(input));
    expect(seen('')).toEqual([]);
  });

  it('asks for more where the brief does: in one bar, and for one pair of marks', () => {
    expect(seen('contrast: { leastDb: 6 }')).toEqual(['weak-contrast 8', 'weak-contrast 10']);
    expect(seen('contrast: { places: [ { bar: 8, leastDb: 6 } ] }')).toEqual(['weak-contrast 8']);
    expect(seen('contrast: { places: [ { from: f, to: p, leastDb: 6 } ] }')).toEqual(['weak-contrast 10']);
    expect(seen('fermata: { bars: [ { bar: 20, mostTimes: 2 } ] }')).toEqual(['fermata-long 20']);
  });

  it('asks for less where the brief does', () => {
    expect(seen('contrast: { leastDb: 6, places: [ { bar: 8, leastDb: 2 } ] }')).toEqual(['weak-contrast 10']);
    expect(seen('fermata: { mostTimes: 2, bars: [ { bar: 15, mostTimes: 4 } ] }')).toEqual(['fermata-long 20']);
  });

  it('says nothing about a criterion that is off', () => {
    expect(seen('contrast: { leastDb: 6 }\nfermata: { mostTimes: 2 }\ncriteria: { dynamics: off }')).toEqual([
      'fermata-long 15',
      'fermata-long 20',
    ]);
  });

  it('has no word on a tempo within the range, and one on a tempo beyond it', () => {
    const at = (value: number): Observation[] => {
      const brief = briefOf('tempo: { quarterBpm: 100, lowest: 70, highest: 104 }');
      const found = {
        kind: 'off-tempo',
        criterion: 'tempo',
        bar: '1',
        facts: { played: value, marked: 100 },
      } as unknown as Observation;
      return observe(() => [found], { part, standards: standardsFor(brief), brief } as unknown as JudgeInput);
    };
    expect([at(69).length, at(75).length, at(104).length, at(110).length]).toEqual([1, 0, 0, 1]);
  });
});
