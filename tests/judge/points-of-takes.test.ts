import { describe, expect, it } from 'vitest';
import { type Brief, CRITERIA, defaultBrief } from '../../src/brief/index.js';
import { type Fault, type NoteAddress, performTake, type TakePlan } from '../../src/demo/index.js';
import { type Judgement, judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import { demoPart, hearSamples, PLAIN } from '../helpers/heard-take.js';

/**
 * Points of whole takes and of parts of them, played by the demo's player, whose faults are known. What is expected follows
 * from the definition: what was not played earns nothing.
 */
const PART = demoPart();
const BARS = PART.bars.length;
const at = (bar: string, beat: number): NoteAddress => ({ bar, beat });

/** Hundred points, spread as a teacher may. */
const POINTS = {
  notes: 30,
  rhythm: 20,
  tempo: 5,
  dynamics: 15,
  articulation: 10,
  breath: 5,
  intonation: 10,
  continuity: 5,
  // steadiness is told and earns nothing, as where a brief gives it no points
  sound: 0,
};
const BRIEF: Brief = {
  ...defaultBrief(PART),
  criteria: Object.fromEntries(
    CRITERIA.map((name) => [name, { judged: true, points: POINTS[name] }]),
  ) as Brief['criteria'],
};

interface Made {
  readonly judgement: Judgement;
  readonly points: number;
}

function judge(plan: Partial<TakePlan>, options: { readonly seconds?: number; readonly brief?: Brief } = {}): Made {
  const { samples, sampleRateHz } = performTake(PART, { ...PLAIN, ...plan });
  const end = options.seconds === undefined ? samples.length : Math.round(options.seconds * sampleRateHz);
  const heard = hearSamples(PART, samples.subarray(0, end), sampleRateHz);
  const { part, alignment } = heard;
  const judgement = judgeTake({ part, alignment, measurements: measureTake(heard), brief: options.brief ?? BRIEF });
  const points = judgement.criteria.reduce((sum, line) => sum + (line.points?.given ?? 0), 0);
  return { judgement, points };
}

/** The first note of the bar after so many eighths of the étude. */
function firstAfter(eighths: number): number {
  const bar = PART.bars[Math.round((eighths * BARS) / 8)];
  return PART.notes.findIndex((note) => note.barIndex === bar?.barIndex && note.pass === bar.pass);
}

/** Plays so many eighths of the étude and stops, as players do: the last tone ends, then the recorder is switched off. */
function brokenOff(eighths: number): Made {
  const skip: Fault = { kind: 'skip', from: firstAfter(eighths), to: PART.notes.length - 1 };
  return judge(eighths === 8 ? {} : { faults: [skip] });
}

/** Cuts a take off in the middle of a note, as a recorder does whose memory is full. */
function cutOff(eighths: number): Made {
  const { truth } = performTake(PART, PLAIN);
  const note = truth.find(({ index }) => index === firstAfter(eighths));
  return judge({}, { seconds: (note!.onsetSeconds + note!.offsetSeconds) / 2 });
}

const of = ({ judgement }: Made, criterion: string) => judgement.criteria.find((line) => line.criterion === criterion)!;

describe('a take that is broken off', () => {
  const takes = [1, 2, 3, 4, 5, 6, 7, 8].map((eighths) => ({ eighths, ...brokenOff(eighths) }));

  it('earns less the less was played, and about its share', () => {
    const table = takes.map(({ eighths, points }) => [eighths, Math.round(points)] as const);
    for (const [eighths, points] of table) {
      expect([eighths, points >= 12.5 * eighths - 12.5, points <= 12.5 * eighths + 6]).toEqual([eighths, true, true]);
    }
    for (const [k, [, points]] of table.slice(1).entries()) expect(points).toBeGreaterThan(table[k]![1] + 5);
  });

  it('earns less in every criterion that asks for something there', () => {
    const [whole, half] = [takes.at(-1)!, takes[3]!];
    for (const { criterion, points } of half.judgement.criteria) {
      if (criterion === 'sound') {
        expect(points).toBeUndefined();
        continue;
      }
      expect([criterion, points!.given! < 0.75 * of(whole, criterion).points!.given!]).toEqual([criterion, true]);
    }
  });

  it('of a bar is too little to tell that it is this part, and earns nothing', () => {
    const { judgement, points } = brokenOff(8 / BARS);
    expect([judgement.played, judgement.findings, points]).toEqual([undefined, [], 0]);
  });

  it('is said to be, with the bars that were played', () => {
    expect(takes[3]!.judgement.played).toEqual({
      played: 10,
      of: 20,
      stretches: [{ bar: '1', toBar: '10', pass: 1 }],
      restarts: 0,
      ending: 'broken-off',
    });
    expect(takes.at(-1)!.judgement.played).toMatchObject({ played: 20, of: 20, ending: 'whole' });
  });

  it('has no count of what was not come to', () => {
    // no group and no entry after a rest stands in the first eight bars of the étude
    expect(of(takes[2]!, 'rhythm')).toMatchObject({
      judged: false,
      reason: { code: 'not-played' },
      points: { given: 0 },
    });
  });

  it('earns less than a whole take with two slips', () => {
    const slips = judge({
      faults: [
        { kind: 'wrong-note', at: at('16', 1), semitones: 4 },
        { kind: 'missed-note', at: at('19', 4) },
      ],
    });
    expect(slips.points).toBeGreaterThan(95);
    expect(slips.points).toBeGreaterThan(takes.at(-2)!.points);
  });
});

describe('a take that the recorder cut off', () => {
  it.each([3, 4, 5, 6, 7])('%i eighths in earns no points, and says why', (eighths) => {
    const { judgement } = cutOff(eighths);
    expect(judgement.played?.ending).toBe('cut-off');
    const lines = judgement.criteria.filter(({ criterion }) => criterion !== 'sound');
    expect(lines.map((line) => line.points!.given)).toEqual(lines.map(() => null));
    expect(judgement.findings.filter((f) => f.kind === 'skipped-bars' && f.weight === 'fix')).toEqual([]);
  });

  it('is not one whose last tone was let go', () => {
    const { judgement } = judge({ tailSeconds: 0.3 });
    expect(judgement.played?.ending).toBe('whole');
  });
});

describe('bars passed over', () => {
  it('cost where continuity is not judged, too, and are told', () => {
    const brief = { ...BRIEF, criteria: { ...BRIEF.criteria, continuity: { judged: false, points: 5 } } };
    const skip: Fault = { kind: 'skip', from: at('9', 1), to: at('10', 4) };
    const restart: Fault = { kind: 'restart', after: at('15', 1), resumeAt: at('14', 1), pauseSeconds: 1.2 };
    const { judgement, points } = judge({ faults: [skip, restart] }, { brief });
    expect(points).toBeLessThan(92);
    expect(judgement.played).toMatchObject({ played: 18, of: 20, restarts: 1, ending: 'whole' });
    expect(judgement.played?.stretches.map(({ bar, toBar }) => `${bar}-${toBar}`)).toEqual(['1-8', '11-20']);
  });
});

describe('takes of a set with planted faults', () => {
  it('are in the order of their faults', () => {
    const wrong = (bar: string, beat: number): Fault => ({ kind: 'wrong-note', at: at(bar, beat), semitones: 4 });
    const faults: readonly (readonly Fault[])[] = [
      [],
      [wrong('16', 1)],
      [wrong('16', 1), wrong('3', 1), wrong('8', 1), { kind: 'fermata', at: at('15', 3), ratio: 4 }],
      [
        ...[wrong('16', 1), wrong('3', 1), wrong('8', 1), wrong('13', 2), wrong('17', 1)],
        { kind: 'fermata', at: at('15', 3), ratio: 4 },
        { kind: 'skip', from: at('9', 1), to: at('10', 4) },
      ],
    ];
    const points = faults.map((some) => judge({ faults: some }).points);
    expect(points[0]).toBeGreaterThan(99);
    expect(points.slice(1).every((p, k) => p < points[k]!)).toBe(true);
  });
});
