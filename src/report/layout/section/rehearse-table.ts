import type { SectionResult } from '../../section/section-result-schema.js';
import { criterionInWords, wordsFor } from '../../words/finding-words.js';
import { SECTION_WORDS } from '../../words/section-words.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';
import { drawTable } from '../table.js';

const MOST = 8;
const MOST_NAMES = 5;

/**
 * What the section should rehearse together: the places that trouble the most players.
 *
 * @param sheet pages being filled
 * @param section the section's document
 *
 * Source: definition.
 */
export function drawRehearseTable(sheet: Sheet, section: SectionResult): void {
  if (section.players < 2) return;
  const shared = section.troubles.filter((trouble) => trouble.players > 1).slice(0, MOST);
  sheet.space(12);
  sheet.write('H2', 'To rehearse together', STYLES.section);
  if (shared.length === 0) {
    sheet.write('P', 'No place troubles more than one player.', STYLES.body);
    return;
  }
  sheet.space(3);
  drawTable(
    sheet,
    [
      { head: 'Where', width: 92, namesRow: true },
      { head: 'What', width: 196 },
      { head: 'About', width: 76 },
      { head: 'Players', width: 60, align: 'right' },
      { head: 'To fix for', width: 70, align: 'right', gap: 22 },
      { head: 'Who', width: sheet.width - 494 + 9 },
    ],
    shared.map((trouble) => [
      { text: placeOf(section, trouble), style: STYLES.cellStrong },
      wordsFor(trouble).headline,
      criterionInWords(trouble.criterion),
      `${trouble.players} of ${section.players}`,
      String(trouble.fix),
      someOf(trouble.who),
    ]),
  );
}

function placeOf({ score }: SectionResult, trouble: SectionResult['troubles'][number]): string {
  if (score === null) {
    const { bar, score: file } = trouble;
    return bar === null ? SECTION_WORDS.wholeTakeOf(file) : SECTION_WORDS.barOf(bar, file);
  }
  return trouble.bar === null ? 'The whole take' : `Bar ${trouble.bar}`;
}

/** As many names as a glance takes in. */
function someOf(names: readonly string[]): string {
  const more = names.length - MOST_NAMES;
  return more > 1 ? `${names.slice(0, MOST_NAMES).join(', ')} and ${more} more` : names.join(', ');
}
