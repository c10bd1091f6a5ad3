import type { BarData, LineData, TakeData } from '../room-data.js';
import { alongKnots, type Knots } from './clock.js';

/** Where a bar stands in its line, points. */
export interface Across {
  readonly left: number;
  readonly right: number;
  /** from quarters to x */
  readonly way: Knots;
}

/** Of the strip, this much is loudness, and this much at its foot is tempo. */
const LOUDNESS_SHARE = 0.6;
const TEMPO_SHARE = 0.3;
const DOT = 1.3;
/** Points a letter of small print takes, about. */
const LETTER = 3.9;

/**
 * The curves of one performed bar: loudness as an area, tempo as a dot with the way to its neighbours.
 *
 * @param take whose curves they are
 * @param bars as performed
 * @param place of the bar
 * @param across where it stands
 * @param line the strip below its line
 * @param notPlayed said where the bar was not played
 * @returns elements of SVG
 */
export function drawBar(
  take: TakeData,
  bars: readonly BarData[],
  place: number,
  across: Across,
  { stripTop, stripHeight }: LineData,
  notPlayed: string,
): string {
  const { left, right } = across;
  const foot = stripTop + LOUDNESS_SHARE * stripHeight;
  const axis = `<path class="foot" d="M${left} ${foot}H${right}"/>`;
  if (take.bars[place] === null) {
    const text = notPlayed.length * LETTER < right - left ? notPlayed : '–';
    return `${axis}<text class="unplayed" x="${(left + right) / 2}" y="${foot - 4}" text-anchor="middle">${text}</text>`;
  }
  return loudness(take, bars, place, across, stripTop, foot) + axis + tempo(take, place, across, stripTop, stripHeight);
}

function loudness(
  { levels, levelsAQuarter, levelRange }: TakeData,
  bars: readonly BarData[],
  place: number,
  { left, right, way }: Across,
  top: number,
  foot: number,
): string {
  const [, , , start = 0, length = 0] = bars[place] ?? [];
  const yOf = (level: number): number => {
    const shown = Math.min(levelRange.top, Math.max(levelRange.bottom, level - levelRange.reference));
    return top + ((levelRange.top - shown) / (levelRange.top - levelRange.bottom)) * (foot - top);
  };
  const [first, last] = [Math.floor(start * levelsAQuarter), Math.ceil((start + length) * levelsAQuarter)];
  const at = (bin: number): number | null => levels[bin] ?? null;
  const half = (a: number | null, b: number | null): number | null =>
    a !== null && b !== null ? (a + b) / 2 : (a ?? b);
  const points: [number, number | null][] = [[left, half(at(first - 1), at(first))]];
  for (let bin = first; bin < last; bin++) points.push([alongKnots(way, (bin + 0.5) / levelsAQuarter), at(bin)]);
  points.push([right, half(at(last - 1), at(last))]);
  return piecesOf(points)
    .map((piece) => {
      const curve = piece.map(([x, level]) => `${x.toFixed(1)} ${yOf(level).toFixed(1)}`).join('L');
      const from = piece[0]?.[0] ?? 0;
      return `<path class="level" d="M${from.toFixed(1)} ${foot}L${curve}V${foot}Z"/><path class="level-line" d="M${curve}"/>`;
    })
    .join('');
}

/** Points in a row that are known. */
function piecesOf(points: readonly (readonly [number, number | null])[]): [number, number][][] {
  const pieces: [number, number][][] = [[]];
  let furthest = Number.NEGATIVE_INFINITY;
  for (const [x, level] of points) {
    if (level === null) pieces.push([]);
    else if (x >= furthest) {
      pieces.at(-1)?.push([x, level]);
      furthest = x;
    }
  }
  return pieces.filter((piece) => piece.length > 1);
}

function tempo(
  { tempos, tempoRange }: TakeData,
  place: number,
  { left, right }: Across,
  stripTop: number,
  stripHeight: number,
): string {
  const bpm = tempos[place] ?? null;
  if (bpm === null || tempoRange === null) return '';
  const [low, high] = tempoRange;
  const bottom = stripTop + stripHeight - DOT;
  const yOf = (value: number): number => bottom - ((value - low) / (high - low)) * TEMPO_SHARE * stripHeight;
  const middle = (left + right) / 2;
  const [before, after] = [tempos[place - 1] ?? null, tempos[place + 1] ?? null];
  const come = before === null ? '' : `M${left} ${yOf((before + bpm) / 2).toFixed(1)}L${middle} ${yOf(bpm).toFixed(1)}`;
  const go = after === null ? '' : `M${middle} ${yOf(bpm).toFixed(1)}L${right} ${yOf((after + bpm) / 2).toFixed(1)}`;
  return `<path class="tempo" d="${come}${go}"/><circle class="dot" cx="${middle}" cy="${yOf(bpm).toFixed(1)}" r="${DOT}"/>`;
}
