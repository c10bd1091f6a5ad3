import { drawTable, type Sheet, STYLES } from '../../page/index.js';
import type { ProgressEtude } from '../../weeks/index.js';
import { wordsIn } from '../../words/index.js';
import { standingOf } from './standing-of.js';

const PLAYER_WIDTH = 112;
const DAYS_WIDTH = 44;
const GOAL_WIDTH = 230;
/** The white after the last column, which a table leaves outside. */
const AFTER = 9;

/**
 * How everybody stands: a row a player, with the goal for the next lesson.
 *
 * @param sheet pages being filled
 * @param etude the étude
 */
export function drawStandings(sheet: Sheet, { players }: ProgressEtude): void {
  const words = wordsIn(sheet.language).weeks;
  const { labels } = words;
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + STYLES.soft.leading + 50);
  sheet.write('H2', labels.standings, STYLES.section);
  sheet.write('P', labels.standingsNote, STYLES.soft);
  sheet.space(3);
  drawTable(
    sheet,
    [
      { head: labels.player, width: PLAYER_WIDTH, namesRow: true },
      { head: labels.days, width: DAYS_WIDTH, align: 'right', gap: 16 },
      { head: labels.standing, width: sheet.width - PLAYER_WIDTH - DAYS_WIDTH - GOAL_WIDTH + AFTER },
      { head: labels.goal, width: GOAL_WIDTH },
    ],
    players.map((player) => [
      { text: player.player, style: STYLES.cellStrong },
      String(player.days.length),
      standingOf(words, player).join(' '),
      { text: player.goal === null ? labels.nobody : words.goal(player.goal), style: STYLES.cellStrong },
    ]),
  );
}
