import { describe, expect, it } from 'vitest';
import { applyBrief, readBrief } from '../../src/brief/index.js';
import type { TakePlan } from '../../src/demo/index.js';
import { judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';
import { said } from '../helpers/said.js';

type Said = ReturnType<typeof said>;

/** What a teacher asks for beyond the part counts: it is a finding, it costs, and it is told as what the teacher asks for. */
const PART = demoPart();

function review(page: string, plan: Partial<TakePlan> = {}): Said {
  const brief = readBrief(page, PART);
  // the player knows the part alone, and the teacher hears what was asked for
  const { take, features, alignment } = hearTake(PART, plan);
  const part = applyBrief(PART, brief);
  return said(judgeTake({ part, alignment, measurements: measureTake({ take, features, part, alignment }), brief }));
}

const fixes = ({ findings }: Said) => findings.filter((f) => f.weight === 'fix').map((f) => `${f.kind} ${f.bar}`);
const pointsIn = ({ criteria }: Said, name: string) => criteria.find((line) => line.criterion === name)!.points!.given!;

describe('breaths a teacher asks for', () => {
  const BREATHS = 'breaths: [{ after: { bar: 2, beat: 3 }, kind: full }, { after: { bar: 7, beat: 2 }, kind: quick }]';

  it('are missed where the music goes on', () => {
    const judged = review(`${BREATHS}\ncriteria: { breath: 10 }`);
    expect(fixes(judged).filter((name) => name.startsWith('breath-missed'))).toEqual(['breath-missed 7']);
    expect(pointsIn(judged, 'breath')).toBeLessThan(10);
    expect(judged.findings.find((f) => f.kind === 'breath-missed')!.text).toContain('Your teacher asks for a breath');
  });

  it('are full ones only when they take their time', () => {
    const sip = review(BREATHS, {
      faults: [{ kind: 'breath', after: { bar: '2', beat: 3 }, seconds: 0.16, delaySeconds: 0 }],
    });
    expect(fixes(sip)).toContain('breath-short 2');
    expect(fixes(review(BREATHS))).not.toContain('breath-short 2');
  });

  it('are the player’s own matter where only the part marks them', () => {
    const judged = review('', {
      faults: [{ kind: 'breath', after: { bar: '2', beat: 3 }, seconds: 0.01, delaySeconds: 0 }],
    });
    expect(fixes(judged)).toEqual([]);
  });
});

describe('contrasts a teacher asks for', () => {
  it('cost what falls short, and are told as what the teacher asks for', () => {
    const [usual, asked] = ['criteria: { dynamics: 20 }', 'criteria: { dynamics: 20 }\ncontrast: { leastDb: 9 }'].map(
      (page) => review(page, { contrast: 0.45 }),
    ) as [Said, Said];
    expect(fixes(usual)).toEqual([]);
    expect(fixes(asked).some((name) => name.startsWith('weak-contrast'))).toBe(true);
    expect(pointsIn(asked, 'dynamics')).toBeLessThan(pointsIn(usual, 'dynamics') - 4);
    const { text } = asked.findings.find((f) => f.kind === 'weak-contrast')!;
    expect(text).toContain('Your teacher asks for 9 or more');
    expect(text).not.toContain('isteners');
  });
});

describe('fermatas a teacher sets limits to', () => {
  it('cost when they go beyond, and are told so', () => {
    const judged = review('fermata: { leastTimes: 1.2, mostTimes: 2 }', {
      faults: [{ kind: 'fermata', at: { bar: '15', beat: 3 }, ratio: 2.6 }],
    });
    expect(fixes(judged)).toContain('fermata-long 15');
    const { text } = judged.findings.find((f) => f.kind === 'fermata-long')!;
    expect(text).toContain('Your teacher asks for no more than 2 times');
    expect(text).not.toContain('usual');
  });
});
