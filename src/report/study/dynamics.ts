import { type Sheet, STYLES } from '../../page/index.js';
import type { Part } from '../../score/index.js';
import type { HairpinStep, StudyPlan } from '../../study/index.js';
import type { HairpinFacts, StudyWords } from '../../words/index.js';
import { barRows } from '../bars/bar-rows.js';
import { dynamicsLine, levelOf } from './dynamics-line.js';
import { dynamicsPanel, dynamicsPanelHeight, SCALE_WIDTH } from './dynamics-panel.js';
import { isPlainStep } from './plain-steps.js';

const MOST_HAIRPINS = 10;

/**
 * The plan of dynamics: a line over the bars, then what it asks for in words.
 *
 * @param sheet pages being filled
 * @param plan what the étude asks for
 * @param part the part as the teacher wants it
 * @param words what the sheet says
 */
export function drawDynamics(sheet: Sheet, plan: StudyPlan, part: Part, { page }: StudyWords): void {
  const said = page.dynamics;
  const line = dynamicsLine(plan, part);
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + STYLES.soft.leading + (line.length === 0 ? 20 : dynamicsPanelHeight()));
  sheet.write('H2', said.heading, STYLES.section);
  if (line.length === 0) {
    sheet.write('P', said.none, STYLES.body);
    return;
  }
  sheet.write('P', said.introduction, STYLES.soft);
  sheet.space(2);
  for (const row of barRows(part, sheet.width - SCALE_WIDTH)) {
    const height = dynamicsPanelHeight();
    sheet.ensure(height);
    const items = dynamicsPanel(sheet, { plan, part, row, line }, sheet.left + SCALE_WIDTH, sheet.y);
    const here = plan.levels.filter(({ atQuarters: at }) => at >= row.fromQuarters && at < row.toQuarters);
    sheet.elements.push({
      tag: 'Figure',
      alternative: said.alternative(row.bars[0]?.bar ?? '', row.bars.at(-1)?.bar ?? '', here),
      box: [sheet.left, sheet.y, sheet.left + sheet.width, sheet.y + height],
      children: [{ page: sheet.page, items }],
    });
    sheet.y += height + 6;
  }
  const contrasts = contrastsOf(plan);
  const texts = contrasts.length === 0 ? [] : [said.contrasts(contrasts)];
  for (const text of [...texts, ...hairpinsInWords(plan.hairpins, said)]) {
    sheet.write('P', text, STYLES.body);
    sheet.space(2);
  }
}

/** Where a hairpin leads from one mark to the next, they are no contrast. */
function contrastsOf(plan: StudyPlan): { from: string; to: string; bars: string[] }[] {
  const pairs = new Map<string, { from: string; to: string; bars: string[] }>();
  for (const [i, { mark: to, bar }] of plan.levels.entries()) {
    const before = plan.levels[i - 1];
    if (before === undefined || !isPlainStep(plan, i)) continue;
    const from = before.mark;
    const bars = pairs.get(`${from} ${to}`)?.bars ?? [];
    pairs.set(`${from} ${to}`, { from, to, bars: [...new Set([...bars, bar])] });
  }
  return [...pairs.values()];
}

/** Each once; one that leads elsewhere when it is repeated is told again. */
function hairpinsInWords(hairpins: readonly HairpinStep[], said: StudyWords['page']['dynamics']): string[] {
  const places = new Set<string>();
  const told = new Set<string>();
  const all = hairpins.flatMap((step) => {
    const facts = factsOf(step);
    const words = said.hairpin(facts);
    if (told.has(words)) return [];
    told.add(words);
    const place = `${step.kind} ${step.bar} ${step.beat}`;
    const again = places.has(place);
    places.add(place);
    return [again ? said.hairpinAgain(facts) : words];
  });
  const more = all.length - MOST_HAIRPINS;
  return more > 1 ? [...all.slice(0, MOST_HAIRPINS), said.moreHairpins(more)] : all;
}

function factsOf(step: HairpinStep): HairpinFacts {
  const { fromMark, toMark } = step;
  const crescendo = step.kind === 'crescendo';
  const opposite = fromMark !== null && toMark !== null && levelOf(toMark) > levelOf(fromMark) !== crescendo;
  return { ...step, opposite };
}
