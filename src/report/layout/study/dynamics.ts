import type { Part } from '../../../score/index.js';
import type { HairpinStep, StudyPlan } from '../../../study/index.js';
import { numberInWords } from '../../words/numbers.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { barRows } from '../take/bar-rows.js';
import { dynamicsLine, levelOf } from './dynamics-line.js';
import { dynamicsPanel, dynamicsPanelHeight, SCALE_WIDTH } from './dynamics-panel.js';
import { barList, barsInWords } from './places-in-words.js';

/** Marks so far apart must be plainly different. Source: common practice. */
const PLAIN_STEPS = 2;

/**
 * The plan of dynamics: a line over the bars, then what it asks for in words.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param part the part as the teacher wants it
 *
 * Source: definition.
 */
export function drawDynamics(sheet: Sheet, plan: StudyPlan, part: Part): void {
  const line = dynamicsLine(plan, part);
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + STYLES.soft.leading + (line.length === 0 ? 20 : dynamicsPanelHeight()));
  sheet.write('H2', 'How loud', STYLES.section);
  if (line.length === 0) {
    sheet.write(
      'P',
      'The part marks no dynamics. Ask your teacher how loud it begins and where it leads.',
      STYLES.body,
    );
    return;
  }
  sheet.write('P', 'The line shows how loud over the bars. Commas are breaths, the large ones full.', STYLES.soft);
  sheet.space(2);
  for (const row of barRows(part, sheet.width - SCALE_WIDTH)) {
    const height = dynamicsPanelHeight();
    sheet.ensure(height);
    const items = dynamicsPanel(sheet, { plan, part, row, line }, sheet.left + SCALE_WIDTH, sheet.y);
    const bars = barsInWords(row.bars[0]?.bar ?? '', row.bars.at(-1)?.bar ?? '');
    const here = plan.levels.filter(({ atQuarters: at }) => at >= row.fromQuarters && at < row.toQuarters);
    sheet.elements.push({
      tag: 'Figure',
      alternative: `Plan of loudness over ${bars.toLowerCase()}: ${here.map(({ mark, bar }) => `${mark} in bar ${bar}`).join(', ') || 'no mark'}.`,
      box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + height],
      children: [{ page: sheet.page, items }],
    });
    sheet.y += height + 6;
  }
  for (const text of [...contrastWords(plan), ...hairpinsInWords(plan.hairpins)]) {
    sheet.write('P', text, STYLES.body);
    sheet.space(2);
  }
}

/** Where a hairpin leads from one mark to the next, they are no contrast. */
function contrastWords({ levels, hairpins }: StudyPlan): string[] {
  const pairs = new Map<string, string[]>();
  for (const [i, { mark, bar, steps, atQuarters: levelAt }] of levels.entries()) {
    const before = levels[i - 1];
    if (before === undefined || steps === null || Math.abs(steps) < PLAIN_STEPS) continue;
    if (hairpins.some(({ startQuarters: at }) => at >= before.atQuarters && at < levelAt)) continue;
    const pair = `${before.mark} to ${mark}`;
    pairs.set(pair, [...new Set([...(pairs.get(pair) ?? []), bar])]);
  }
  if (pairs.size === 0) return [];
  const said = [...pairs].map(([pair, bars]) => `from ${pair} in ${barList(bars).toLowerCase()}`);
  return [`Plainly different, so that a listener hears two levels at once: ${said.join('; ')}.`];
}

/** Bars to a quarter of a bar: `2`, `1¾`. */
function barCount(bars: number): string {
  return `${Math.floor(bars)}${['', '¼', '½', '¾'][Math.round((bars % 1) * 4)] ?? ''}`;
}

/** Each once; one that leads elsewhere when it is repeated is told again. */
function hairpinsInWords(hairpins: readonly HairpinStep[]): string[] {
  const places = new Set<string>();
  const told = new Set<string>();
  return hairpins.flatMap((step) => {
    const words = hairpinWords(step);
    if (told.has(words)) return [];
    told.add(words);
    const place = `${step.kind} ${step.bar} ${step.beat}`;
    const again = places.has(place);
    places.add(place);
    return [again ? `When it is repeated: ${words.charAt(0).toLowerCase()}${words.slice(1)}` : words];
  });
}

function hairpinWords(step: HairpinStep): string {
  const { kind, bar, toBar, bars, seconds, fromMark, toMark } = step;
  const crescendo = kind === 'crescendo';
  const place = barsInWords(bar, toBar).toLowerCase();
  const length = bars >= 1 ? `${barCount(bars)} ${bars === 1 ? 'bar' : 'bars'}, ` : '';
  const opposite = fromMark !== null && toMark !== null && levelOf(toMark) > levelOf(fromMark) !== crescendo;
  const ends = [
    fromMark === null ? '' : ` from ${fromMark}`,
    toMark === null ? '' : opposite ? `, then ${toMark} at once` : ` to ${toMark}`,
  ].join('');
  const how = crescendo
    ? 'Grow a little on every beat, and arrive only at the end'
    : 'Fade a little on every beat, and arrive only at the end';
  return `${crescendo ? 'Crescendo' : 'Diminuendo'} in ${place}: ${length}about ${numberInWords(seconds, 0)} seconds${ends}. ${how}.`;
}
