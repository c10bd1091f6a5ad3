import { circle, type Item, lineAcross, placeText, type Sheet, STYLES } from '../../page/index.js';
import type { ProgressEtude } from '../../weeks/index.js';
import { type WeeksWords, wordsIn } from '../../words/index.js';

/** How a bar stands with one player. */
type State = 'has' | 'perhaps' | 'free';

/** One bar with the players who have or had something to fix there. */
interface BarOfPlayers {
  readonly bar: string;
  readonly players: readonly { readonly player: string; readonly state: State }[];
}

const MOST_BARS = 60;
const WIDEST_BAR = 26;
const LARGEST_DOT = 2.8;
const TALLEST = 90;
const FOOT = 12;
const STATES: readonly State[] = ['has', 'perhaps', 'free'];

/**
 * @param sheet for the width
 * @param etude the étude
 * @returns height of one block of bars, points
 */
export function stripHeight(sheet: Sheet, etude: ProgressEtude): number {
  const { most, step } = sizesOf(sheet, barsOfPlayers(etude));
  return most * step + FOOT + 4;
}

/**
 * All bars at a glance: a column a bar, a dot a player who has or had something to fix there.
 *
 * @param sheet pages being filled
 * @param etude the étude
 */
export function drawBarsStrip(sheet: Sheet, etude: ProgressEtude): void {
  const bars = barsOfPlayers(etude);
  const { most, step, perBlock } = sizesOf(sheet, bars);
  for (let from = 0; from < bars.length; from += perBlock) {
    const block = bars.slice(from, from + perBlock);
    const height = most * step + FOOT + 4;
    sheet.ensure(height);
    const items = blockItems(sheet, block, Math.min(WIDEST_BAR, sheet.width / perBlock), most * step + 4, step);
    sheet.elements.push({
      tag: 'Figure',
      alternative: inWords(block, wordsIn(sheet.language).weeks),
      box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + height],
      children: [{ page: sheet.page, items }],
    });
    sheet.y += height;
  }
}

function sizesOf(sheet: Sheet, bars: readonly BarOfPlayers[]) {
  const blocks = Math.max(1, Math.ceil(bars.length / MOST_BARS));
  const perBlock = Math.max(1, Math.ceil(bars.length / blocks));
  const most = Math.max(1, ...bars.map(({ players }) => players.length));
  const widest = Math.min(WIDEST_BAR, sheet.width / perBlock);
  const step = Math.min(2 * LARGEST_DOT + 2.4, widest - 1, TALLEST / most);
  return { perBlock, most, step };
}

function barsOfPlayers({ bars, players }: ProgressEtude): BarOfPlayers[] {
  return bars.map((bar) => {
    const here = players.flatMap(({ player, bars: stories }) => {
      const states = stories.filter((story) => story.bar === bar).map(({ status }) => stateOf(status));
      const state = STATES.find((one) => states.includes(one));
      return state === undefined ? [] : [{ player, state }];
    });
    return { bar, players: here.toSorted((a, b) => STATES.indexOf(a.state) - STATES.indexOf(b.state)) };
  });
}

function stateOf(status: ProgressEtude['players'][number]['bars'][number]['status']): State {
  if (status === 'fixed') return 'free';
  return status === 'eased' || status === 'not-judged' ? 'perhaps' : 'has';
}

function blockItems(
  sheet: Sheet,
  block: readonly BarOfPlayers[],
  barWidth: number,
  height: number,
  step: number,
): Item[] {
  const base = sheet.y + height;
  const xOf = (bar: number) => sheet.left + (bar + 0.5) * barWidth;
  const radius = (step - 1.6) / 2;
  const line = lineAcross(base, sheet.left, sheet.left + block.length * barWidth);
  const dots = block.flatMap(({ players }, bar) =>
    players.map(({ state }, i) => dotItem(state, xOf(bar), base - (i + 0.5) * step - 1, radius)),
  );
  return [{ kind: 'path', path: line, stroke: 'soft', width: 0.5 }, ...dots, ...barNumbers(sheet, block, xOf, base)];
}

function dotItem(state: State, x: number, y: number, radius: number): Item {
  if (state === 'has') return { kind: 'path', path: circle(x, y, radius), fill: 'text' };
  if (state === 'perhaps') return { kind: 'path', path: circle(x, y, radius * 0.45), fill: 'text' };
  return { kind: 'path', path: circle(x, y, radius - 0.35), stroke: 'soft', width: 0.7 };
}

function barNumbers(sheet: Sheet, block: readonly BarOfPlayers[], xOf: (bar: number) => number, base: number): Item[] {
  const widthOf = (text: string) => sheet.typesetter.widthOf(text, STYLES.axis.face, STYLES.axis.size);
  const widest = Math.max(...block.map(({ bar }) => widthOf(bar)));
  const barWidth = xOf(1) - xOf(0);
  const step = [1, 2, 5, 10].find((bars) => bars * barWidth >= widest + 3) ?? 20;
  return block.flatMap(({ bar }, i) => {
    const number = Number(bar);
    if ((Number.isInteger(number) ? number : i) % step !== 0) return [];
    return placeText(sheet.set(bar, { ...STYLES.axis, align: 'centre' }, 40), xOf(i) - 20, base + 1);
  });
}

function inWords(block: readonly BarOfPlayers[], words: WeeksWords): string {
  const said = block
    .filter(({ players }) => players.length > 0)
    .map(({ bar, players }) => {
      const states = STATES.flatMap((state) => {
        const who = players.filter((one) => one.state === state).map(({ player }) => player);
        return who.length === 0 ? [] : [words.stateInWords(words.labels.states[state], who)];
      });
      return words.barInWords(bar, states);
    });
  return said.length === 0 ? words.labels.noBars : said.join(' ');
}
