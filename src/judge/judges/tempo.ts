import { fitHuberLine, isMeasured, median } from '../../base/index.js';
import type { BarTempo } from '../../measure/index.js';
import { QUARTERS_OF_BEAT, type TempoBeat, tempoBeat } from '../../score/index.js';
import { isBeyond } from '../beyond.js';
import type { Unit } from '../finding-kinds.js';
import type { JudgeInput } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';

/** One bar alone is no drift. */
const LEAST_DRIFT_BARS = 3;
const LEAST_BARS_FOR_SLOPE = 8;
/** A tempo at the limit is at it on either side: a tenth of a percent is finer than it is told. */
const SHARE_DECIMALS = 3;

const UNITS: Readonly<Record<TempoBeat, Unit>> = {
  quarter: 'quarter notes a minute',
  'dotted-quarter': 'dotted quarters a minute',
  half: 'half notes a minute',
};

/**
 * @param input one take
 * @returns observations when the whole take is well off the marked tempo, or some bars in a row off the player's own
 *
 * Source: standards tempoWatch and drift.
 */
export function judgeTempo(input: JudgeInput): Observation[] {
  const stretches = drifts(input);
  return [...wholeTake(input), ...(stretches.length > 0 ? stretches : steadyDrift(input))];
}

/** A tempo that climbs or sinks all through the take, too evenly for any stretch to stand out. */
function steadyDrift(input: JudgeInput): Observation[] {
  const { tempo } = input.measurements;
  if (!isMeasured(tempo) || tempo.bars.length < LEAST_BARS_FOR_SLOPE) return [];
  const bars = tempo.bars.map((_, k) => k);
  const line = fitHuberLine(
    bars,
    tempo.bars.map((b) => b.quarterBpm),
  );
  const change = (line.slope * (bars.length - 1)) / tempo.playedQuarterBpm;
  const error = (2 * line.slopeError * (bars.length - 1)) / tempo.playedQuarterBpm;
  if (Math.abs(change) - error <= input.standards.drift.value) return [];
  const place = { bar: tempo.bars[0]!.bar, toBar: tempo.bars.at(-1)!.bar, pass: tempo.bars[0]!.pass };
  const measured = { value: 100 * change, unit: '%', expected: { code: 'same-tempo-throughout', facts: {} } } as const;
  const facts = { percent: Math.abs(100 * change), throughout: true };
  const kind = change > 0 ? 'rushing' : 'dragging';
  return [{ kind, criterion: 'tempo', weight: 'watch', size: 5 * Math.abs(change), ...place, measured, facts }];
}

/** Stretches of several bars that run ahead or sink, one observation a stretch. */
function drifts(input: JudgeInput): Observation[] {
  const { tempo } = input.measurements;
  if (!isMeasured(tempo)) return [];
  const found: Observation[] = [];
  let open: BarTempo[] = [];
  const close = () => {
    const first = open[0];
    const last = open.at(-1);
    if (first !== undefined && last !== undefined && open.length >= LEAST_DRIFT_BARS) {
      const off = median(open.map((b) => b.quarterBpm / tempo.playedQuarterBpm - 1));
      const place = { bar: first.bar, toBar: last.bar, pass: first.pass };
      const measured = {
        value: 100 * off,
        unit: '%',
        expected: { code: 'within-percent', facts: { percent: 100 * input.standards.drift.value } },
      } as const;
      const facts = { percent: Math.abs(100 * off) };
      const kind = off > 0 ? 'rushing' : 'dragging';
      found.push({ kind, criterion: 'tempo', weight: 'watch', size: 5 * Math.abs(off), ...place, measured, facts });
    }
    open = [];
  };
  for (const bar of tempo.bars) {
    const off = bar.quarterBpm / tempo.playedQuarterBpm - 1;
    const previous = open.at(-1);
    const sameWay =
      previous === undefined || Math.sign(previous.quarterBpm - tempo.playedQuarterBpm) === Math.sign(off);
    if (Math.abs(off) <= input.standards.drift.value || !sameWay) close();
    if (Math.abs(off) > input.standards.drift.value) open.push(bar);
  }
  close();
  return found;
}

function wholeTake(input: JudgeInput): Observation[] {
  const { tempo } = input.measurements;
  if (!isMeasured(tempo) || tempo.markedQuarterBpm === null) return [];
  const off = tempo.playedQuarterBpm / tempo.markedQuarterBpm - 1;
  if (!isBeyond(Math.abs(off), input.standards.tempoWatch.value, SHARE_DECIMALS)) return [];
  const first = input.part.notes[0]!;
  const beat = tempoBeat(input.part);
  const quarters = QUARTERS_OF_BEAT[beat];
  const measured = {
    value: tempo.playedQuarterBpm / quarters,
    unit: UNITS[beat],
    expected: { code: 'about', facts: { value: tempo.markedQuarterBpm / quarters } },
  } as const;
  const facts = { played: tempo.playedQuarterBpm, marked: tempo.markedQuarterBpm, beat };
  return [
    {
      kind: 'off-tempo',
      criterion: 'tempo',
      weight: 'watch',
      size: Math.abs(off) * 3,
      bar: first.bar,
      pass: first.pass,
      measured,
      facts,
    },
  ];
}
