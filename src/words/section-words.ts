import type { Translated } from './translated.js';

const counted = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`;

/** How the takes of a section came out. */
export interface SectionFacts {
  readonly parts: readonly string[];
  readonly takes: number;
  readonly players: number;
  readonly reviewed: number;
  /** takes that were heard but not reviewed */
  readonly others: number;
  readonly unread: number;
}

/** Everything the section sheet says. */
export const SECTION_WORDS = {
  severalScores: 'Several études or parts',
  documentTitle: (title: string) => `${title} – section sheet`,
  foot: (title: string) => `Section sheet  ·  ${title}`,
  /** the line under the title */
  facts: ({ parts, takes, players, reviewed, others, unread }: SectionFacts) =>
    [
      `Section sheet, ${parts.join(', ')}`,
      `${counted(takes, 'take')} from ${counted(players, 'player')}`,
      `${reviewed} reviewed`,
      ...(others > 0 ? [`${others} not reviewed`] : []),
      ...(unread > 0 ? [`${unread} could not be read`] : []),
    ].join('  ·  '),

  rehearse: 'To rehearse together',
  nothingShared: 'No place troubles more than one player.',
  where: 'Where',
  what: 'What',
  about: 'About',
  players: 'Players',
  toFixFor: 'To fix for',
  who: 'Who',
  bar: (bar: string) => `Bar ${bar}`,
  wholeTake: 'The whole take',
  /** a bar of one score among several */
  barOf: (bar: string, score: string) => `Bar ${bar} (${score})`,
  wholeTakeOf: (score: string) => `The whole take (${score})`,
  playersOf: (players: number, all: number) => `${players} of ${all}`,
  andMore: (names: readonly string[], more: number) => `${names.join(', ')} and ${more} more`,

  needs: 'Who needs what',
  needsNotes: [
    'Under each criterion: findings to fix / to watch. 0: judged, and nothing found. –: not judged, or not measured.',
    'As written: notes, of those in the part. Beats are quarters. Cents are from A = 440 Hz.',
  ],
  take: 'Take',
  day: 'Day',
  asWritten: 'As written',
  beats: 'Beats a minute',
  cents: 'Cents sharp',
  notesOf: (right: number, all: number) => `${right} / ${all}`,
  findings: (fix: number, watch: number) => `${fix} / ${watch}`,
  nothingFound: '0',
  notJudged: '–',
  /** a take of one score among several */
  takeOf: (who: string, score: string) => `${who}, ${score}`,
  nameOfTake: (player: string, take: string) => `${player}, ${take}`,
  outcome: {
    reviewed: (who: string) => who,
    'not-this-score': (who: string) => `${who} (does not fit the part)`,
    'too-poor': (who: string) => `${who} (could not be heard)`,
  },

  whichBars: 'Which bars',
  whichBarsOf: (score: string) => `Which bars: ${score}`,
  whichBarsNote: 'A dot grows with the number of findings in the bar. Full: at least one to fix. Open: to watch only.',
  sums: (most: number) => `takes with a finding (most: ${most})`,
  barFindings: (bar: string, fix: number, watch: number) => `bar ${bar} (${fix} / ${watch})`,
  noFindings: 'none',
  rowInWords: (who: string, bars: string) => `${who}: ${bars}`,
  mapInWords: (first: string, last: string, rows: readonly string[]) =>
    `Findings to fix / to watch in bars ${first} to ${last}. ${rows.join('; ')}.`,

  failures: 'Takes that could not be read',
  file: 'File',
  whatNeeded: 'What was found, and what is needed',
} as const;

/** Everything the section sheet says beside the names of findings, criteria, days and numbers, in one language. */
export type SectionWords = Translated<typeof SECTION_WORDS>;
