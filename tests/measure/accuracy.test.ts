import { describe, expect, it } from 'vitest';
import type { TakePlan, VoiceName } from '../../src/demo/index.js';
import { judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import { demoPart, type HeardTake, hearTake, middle, shareWithin } from '../helpers/heard-take.js';
import { realFigures } from '../helpers/real-takes.js';

/**
 * How exact each measure is on takes with known truth, by condition: the étude of the demo, played well by the three
 * voices of the synthesiser. `npm run accuracy` prints the table that stands in the manual beside this file.
 *
 * Source: the truth the synthesiser was told to play, which knows nothing of how takes are listened to. The bounds are
 * those of the finished work, with room for chance.
 */
const VOICES: readonly VoiceName[] = ['clarinet', 'flute', 'brass'];

const CONDITIONS: Readonly<Record<string, Partial<TakePlan>>> = {
  'as the demo': {},
  'tempo × 0.7': { tempoFactor: 0.7 },
  'tempo × 1.3': { tempoFactor: 1.3 },
  'tuning −40 cents': { tuningCents: -40 },
  'tuning +40 cents': { tuningCents: 40 },
  'room 1.5 s': { roomSeconds: 1.5 },
  'noise 25 dB below': { signalToNoiseDb: 25 },
  'vibrato ± 15 cents': { vibrato: { rateHz: 5.5, depthCents: 15 } },
};

/** Absolute errors of all takes of one condition. */
interface Errors {
  readonly statusWrong: number;
  readonly notes: number;
  readonly onset: number[];
  readonly offset: number[];
  readonly cents: number[];
  readonly level: number[];
  readonly contrast: number[];
  readonly fermata: number[];
  readonly fixes: number;
  /** numbers that should be there and are not, and how many should be */
  readonly lacking: number;
  readonly asked: number;
}

const PART = demoPart();

function errorsUnder(plan: Partial<TakePlan>): Errors {
  const takes = VOICES.map((voice, v) =>
    errorsOf(hearTake(PART, { voice, seed: 40 + v, ...plan }), plan.tempoFactor ?? 1),
  );
  const all = (pick: (e: Errors) => number[]): number[] => takes.flatMap(pick);
  const sum = (pick: (e: Errors) => number): number => takes.reduce((total, e) => total + pick(e), 0);
  return {
    statusWrong: sum((e) => e.statusWrong),
    notes: sum((e) => e.notes),
    fixes: sum((e) => e.fixes),
    lacking: sum((e) => e.lacking),
    asked: sum((e) => e.asked),
    onset: all((e) => e.onset),
    offset: all((e) => e.offset),
    cents: all((e) => e.cents),
    level: all((e) => e.level),
    contrast: all((e) => e.contrast),
    fermata: all((e) => e.fermata),
  };
}

function errorsOf(heard: HeardTake, tempoFactor: number): Errors {
  const measured = measureTake(heard);
  const { alignment, meant } = heard;
  let [lacking, asked] = [0, 0];
  const away = (value: unknown, truth: number): number[] => {
    asked += 1;
    if (typeof value === 'number') return [Math.abs(value - truth)];
    lacking += 1;
    return [];
  };
  const heldDb = (index: number) => (meant.get(index)!.startDb + meant.get(index)!.endDb) / 2;
  const under = (index: number, toIndex: number) =>
    middle([...meant.keys()].filter((i) => i >= index && i <= toIndex).map(heldDb));
  const errors = {
    statusWrong: alignment.notes.filter((n) => n.status !== 'as-written').length,
    notes: alignment.notes.length,
    onset: alignment.notes.flatMap((n) => away(n.onsetSeconds, meant.get(n.index)!.onsetSeconds)),
    offset: alignment.notes.flatMap((n) => away(n.offsetSeconds, meant.get(n.index)!.offsetSeconds)),
    cents: measured.notes.flatMap((n) => away(n.cents, meant.get(n.index)!.cents)),
    level: measured.notes.flatMap((n) => away(n.levelDb, heldDb(n.index))),
    contrast: measured.contrasts.flatMap((c) => {
      const k = PART.dynamics.findIndex((mark) => mark.index === c.index);
      const [from, to] = [PART.dynamics[k - 1]!, PART.dynamics[k]!];
      return away(c.differenceDb, under(to.index, to.toIndex) - under(from.index, from.toIndex));
    }),
    fermata: measured.fermatas.flatMap((f) => {
      const { onsetSeconds, offsetSeconds } = meant.get(f.index)!;
      const written = (PART.notes[f.index]!.durationQuarters * 60) / (92 * tempoFactor);
      return away(typeof f.ratio === 'number' ? f.ratio / ((offsetSeconds - onsetSeconds) / written) : f.ratio, 1);
    }),
    fixes: judgeTake({ part: PART, alignment, measurements: measured }).findings.filter((f) => f.weight === 'fix')
      .length,
  };
  return { ...errors, lacking, asked };
}

const rows: Record<string, string>[] = [];

describe.each(Object.entries(CONDITIONS))('%s', (name, plan) => {
  it('finds, times and measures every note within its bounds, and accuses nobody', () => {
    const e = errorsUnder(plan);
    rows.push({
      condition: name,
      'status right': `${(100 * (1 - e.statusWrong / e.notes)).toFixed(1)} %`,
      onset: `${(1000 * middle(e.onset)).toFixed(1)} ms`,
      'within 25 ms': `${(100 * shareWithin(e.onset, 0.025)).toFixed(1)} %`,
      offset: `${(1000 * middle(e.offset)).toFixed(1)} ms`,
      pitch: `${middle(e.cents).toFixed(1)} cents`,
      level: `${middle(e.level).toFixed(2)} dB`,
      contrast: `${middle(e.contrast).toFixed(2)} dB`,
      fermata: `${(100 * middle(e.fermata)).toFixed(1)} %`,
      'not measured': `${e.lacking} of ${e.asked}`,
      'false fixes': String(e.fixes),
    });
    expect(e.statusWrong / e.notes).toBeLessThanOrEqual(0.01);
    expect(e.lacking / e.asked).toBeLessThanOrEqual(0.002);
    expect(middle(e.onset)).toBeLessThan(0.006);
    expect(shareWithin(e.onset, 0.025)).toBeGreaterThan(0.95);
    expect(middle(e.offset)).toBeLessThan(0.02);
    expect(middle(e.cents)).toBeLessThan(2);
    expect(middle(e.level)).toBeLessThan(1);
    expect(middle(e.contrast)).toBeLessThan(0.8);
    expect(middle(e.fermata)).toBeLessThan(0.03);
    expect(e.fixes).toBe(0);
  });
});

it('has a row for each condition', () => {
  const heads = Object.keys(rows[0]!);
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  const table = [line(heads), line(heads.map(() => '---')), ...rows.map((r) => line(Object.values(r)))].join('\n');
  if (process.env.ACCURACY) console.log(table);
  expect(table.split('\n')).toHaveLength(Object.keys(CONDITIONS).length + 2);
});

/** Never one without the other: where takes of real players are at hand, their figures stand beside the rendered ones. */
const REAL_TAKES = process.env.REAL_TAKES;

it.skipIf(REAL_TAKES === undefined)('finds the notes of real players', { timeout: 600_000 }, () => {
  const { takes, notes, within50ms, within100ms } = realFigures(REAL_TAKES!);
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  console.log(
    `real players: ${takes} takes, ${notes} notes, ${percent(within50ms)} within 50 ms, ${percent(within100ms)} within 100 ms`,
  );
  expect(within50ms).toBeGreaterThan(0.85);
  expect(within100ms).toBeGreaterThan(0.92);
});
