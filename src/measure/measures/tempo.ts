import { median, type NotMeasured, notMeasured } from '../../base/index.js';
import type { MeasureContext } from '../context/context.js';
import { paceAround } from '../context/pace-around.js';
import type { BarTempo, TempoMeasure } from '../types.js';

const LEAST_PAIRS_A_BAR = 3;
const LEAST_BARS = 2;

/**
 * Tempo bar by bar and over all, with fermatas, breaths, written bends and restarts left out.
 *
 * @param context part and alignment
 * @returns quarter notes a minute, marked and played
 *
 * Source: median of slopes (Theil 1950) between onsets; over all, the median of the bars.
 */
export function measureTempo(context: MeasureContext): TempoMeasure | NotMeasured {
  const bars: BarTempo[] = [];
  for (const bar of context.part.bars) {
    const inBar = context.part.notes.filter((n) => n.bar === bar.bar && n.pass === bar.pass);
    const first = inBar[0];
    const last = inBar.at(-1);
    if (first === undefined || last === undefined) continue;
    const pace = paceAround(context, first.index, last.index + 1);
    if (pace.pairs < LEAST_PAIRS_A_BAR) continue;
    bars.push({
      bar: bar.bar,
      pass: bar.pass,
      startQuarters: bar.startQuarters,
      quarterBpm: 60 / pace.secondsAQuarter,
    });
  }
  if (bars.length < LEAST_BARS) return notMeasured('too-few-bars');
  const printed = context.part.tempos.find((t) => t.printed);
  return {
    markedQuarterBpm: printed?.quarterBpm ?? null,
    playedQuarterBpm: median(bars.map((b) => b.quarterBpm)),
    bars,
  };
}
