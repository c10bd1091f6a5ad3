import { type OpenFont, toSvg } from '../../page/index.js';
import type { ResultFinding, TakeResult } from '../../result/index.js';
import { type Part, QUARTERS_OF_BEAT, tempoBeat } from '../../score/index.js';
import { concernsWholeTake, wordsIn } from '../../words/index.js';
import { inBeats } from '../curves/in-beats.js';
import { levelRange } from '../curves/level-range.js';
import { loudnessCurve } from '../curves/loudness-curve.js';
import { timeStretches } from '../curves/score-axis.js';
import { tempoRange } from '../curves/tempo-panel.js';
import { barsOf, findPassage } from './find-passage.js';
import type { FindingData, TakeData } from './room-data.js';
import type { RoomTake, SoundFacts } from './room-input.js';
import { takeClock } from './take-clock.js';
import type { LineMarks } from './take-marks.js';

/** A note at the usual speed of an étude has some of these. */
const LEVELS_A_QUARTER = 4;
/** How long a finding is heard with what is around it. */
const USUAL_SECONDS = 8;

/** The marks of a take in both ways of breaking lines. */
export interface MarksOfTake {
  readonly wide: readonly LineMarks[];
  readonly narrow: readonly LineMarks[];
}

/**
 * @param take of the room, reviewed
 * @param part its part
 * @param marks its pencil marks
 * @param idOf the element that tells a finding
 * @param music the opened music face
 * @returns what the script needs to know of the take
 */
export function takeData(
  { result, facts }: RoomTake,
  part: Part,
  marks: MarksOfTake,
  idOf: (finding: ResultFinding) => string,
  music: OpenFont,
): TakeData {
  const drawn = (lines: readonly LineMarks[]) =>
    Object.fromEntries(lines.map(({ line, items }) => [line, toSvg(items, music)]));
  return {
    ...takeClock(result, part),
    ...levelsOf(result, part, facts),
    levelsAQuarter: LEVELS_A_QUARTER,
    ...temposOf(result, part),
    kWeighted: (facts?.kWeightedDb ?? []).map(tenths),
    findings: result.findings
      .filter(({ weight }) => weight !== 'well')
      .map((finding) => findingData(finding, result, part, idOf(finding))),
    marks: { wide: drawn(marks.wide), narrow: drawn(marks.narrow) },
  };
}

function levelsOf(result: TakeResult, part: Part, facts: SoundFacts | null): Pick<TakeData, 'levels' | 'levelRange'> {
  const last = part.bars.at(-1);
  const quarters = last === undefined ? 0 : last.startQuarters + last.lengthQuarters;
  const bins = Math.max(1, Math.round(quarters * LEVELS_A_QUARTER));
  const levelDb = Float32Array.from(facts?.levelsDb ?? [], (db) => db ?? Number.NEGATIVE_INFINITY);
  const loudness = { hopSeconds: facts?.levelHopSeconds ?? 1, levelDb };
  const curve = loudnessCurve(loudness, timeStretches(result, part), 0, bins / LEVELS_A_QUARTER, bins);
  const { referenceDb, topDb, bottomDb } = levelRange([curve], result);
  return {
    levels: Array.from(curve, (db) => (Number.isNaN(db) ? null : tenths(db))),
    levelRange: { reference: tenths(referenceDb) ?? 0, top: topDb * 10, bottom: Math.round(bottomDb * 10) },
  };
}

function temposOf(result: TakeResult, part: Part): Pick<TakeData, 'tempos' | 'tempoRange'> {
  if ('notMeasured' in result.tempo) return { tempos: [], tempoRange: null };
  const counted = inBeats(result.tempo, part.tempos, QUARTERS_OF_BEAT[tempoBeat(part)]);
  const measured = new Map(counted.tempo.bars.map((bar) => [bar.startQuarters.toFixed(3), bar.quarterBpm]));
  const { low, high } = tempoRange(counted.tempo, { ...part, tempos: counted.tempos });
  return {
    tempos: part.bars.map(({ startQuarters }) => {
      const bpm = measured.get(startQuarters.toFixed(3));
      return bpm === undefined ? null : Math.round(bpm * 10) / 10;
    }),
    tempoRange: [Math.round(low * 10) / 10, Math.round(high * 10) / 10],
  };
}

function findingData(finding: ResultFinding, result: TakeResult, part: Part, id: string): FindingData {
  const { kind, bar, toBar, pass, beat, misreading } = finding;
  const words = wordsIn(result.language ?? 'en');
  const whole = concernsWholeTake(kind);
  const bars = whole ? null : barsOf(finding, part);
  const passage = findPassage(finding, result, part, USUAL_SECONDS);
  const place = whole ? [] : [bar, toBar ?? '', pass, beat ?? ''];
  return {
    id,
    kind,
    key: [kind, misreading ?? '', ...place].join(' '),
    headline: words.finding(finding).headline,
    where: words.place(finding),
    hear: words.room.hearPlace(words.place(finding)),
    places: bars === null ? null : [bars.from, bars.to],
    passage: passage === null ? null : [Math.round(passage.fromSeconds * 1000), Math.round(passage.toSeconds * 1000)],
  };
}

const tenths = (db: number | null): number | null => (db === null ? null : Math.round(db * 10));
