import { drawTable, type Sheet, STYLES } from '../../page/index.js';
import type { BarStory, ProgressPiece, ProgressPlayer } from '../../weeks/index.js';
import { type WeeksWords, wordsIn } from '../../words/index.js';

/** A bar of which one of these is told is to fix on the latest day. */
export const OPEN_STATUSES: readonly BarStory['status'][] = ['returning', 'still', 'new', 'grown', 'seen'];

/**
 * Who moved: a row a player.
 *
 * @param sheet pages being filled
 * @param piece the étude
 */
export function drawMovedTable(sheet: Sheet, piece: ProgressPiece): void {
  const said = wordsIn(sheet.language).weeks;
  const words = said.labels;
  const listed = (texts: readonly string[]) => (texts.length === 0 ? words.nobody : texts.join(', '));
  sheet.space(12);
  sheet.ensure(STYLES.section.leading + STYLES.soft.leading + 50);
  sheet.write('H2', words.whoMoved, STYLES.section);
  sheet.write('P', words.whoMovedNote, STYLES.soft);
  sheet.space(3);
  drawTable(
    sheet,
    [
      { head: words.player, width: 116, namesRow: true },
      { head: words.days, width: 40, align: 'right', gap: 16 },
      { head: words.better, width: 206 },
      { head: words.slipped, width: 146 },
      { head: words.barsFixed, width: 96 },
      { head: words.barsOpen, width: sheet.width - 604 + 9 },
    ],
    piece.players.map((player) => [
      { text: player.player, style: STYLES.cellStrong },
      String(player.days.length),
      listed(changed(said, player, ['better'])),
      listed(changed(said, player, ['worse'])),
      listed(barsOf(player, ['fixed'])),
      listed(barsOf(player, OPEN_STATUSES)),
    ]),
  );
}

function changed(words: WeeksWords, player: ProgressPlayer, verdicts: readonly string[]): string[] {
  return player.measures
    .filter(({ sinceFirst }) => sinceFirst !== null && verdicts.includes(sinceFirst.verdict))
    .map(({ measure }) => words.measureInSentence(measure));
}

/** Each bar once, also when several criteria have a story there. */
function barsOf(player: ProgressPlayer, statuses: readonly BarStory['status'][]): string[] {
  return [...new Set(player.bars.filter(({ status }) => statuses.includes(status)).map(({ bar }) => bar))];
}
