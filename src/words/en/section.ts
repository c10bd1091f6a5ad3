import type { TempoBeat } from '../../score/index.js';
import type { SectionWords } from '../shapes/section.js';

const counted = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`;

const BEATS: Readonly<Record<TempoBeat, string>> = {
  quarter: 'quarter notes',
  'dotted-quarter': 'dotted quarters',
  half: 'half notes',
};

/** Everything the section sheet says. */
export const SECTION: SectionWords = {
  severalScores: 'Several études or parts',
  documentTitle: (title) => `${title} – section sheet`,
  foot: (title) => `Section sheet  ·  ${title}`,
  facts: ({ parts, takes, players, reviewed, others, unread }) =>
    [
      `Section sheet, ${parts.join(', ')}`,
      `${counted(takes, 'take')} from ${counted(players, 'player')}`,
      `${reviewed} reviewed`,
      ...(others > 0 ? [`${others} not reviewed`] : []),
      ...(unread > 0 ? [`${unread} could not be read`] : []),
    ].join('  ·  '),
  sheetOf: (sheet, of, first, last) => `Sheet ${sheet} of ${of}: ${first} to ${last}`,
  same: (takes) =>
    `The same recording, byte by byte, was handed in for different players: ${takes.join(', ')}. Ask who played it.`,
  rehearse: 'To rehearse together',
  nothingShared: 'No place troubles more than one player.',
  where: 'Where',
  what: 'What',
  about: 'About',
  players: 'Players',
  toFixFor: 'To fix for',
  who: 'Who',
  wholeTake: 'The whole take',
  placeIn: (place, score) => `${place} (${score})`,
  playersOf: (players, all) => `${players} of ${all}`,
  andMore: (names, more) => `${names.join(', ')} and ${more} more`,
  older: (takes) =>
    `The latest take of each player. ${takes === 1 ? 'One older take is' : `${takes} older takes are`} in the list of results, and for the comparison over weeks.`,
  partly: (who, { played, of, ending }) =>
    `${who} (${ending === 'cut-off' ? 'cut off by the recorder: ' : ''}${played} of ${of} bars)`,
  notPlayed: 'not played',
  needs: 'Who needs what',
  needsNotes: ([beat = 'quarter', ...others]) => [
    'Under each criterion: findings to fix / to watch. 0: judged, and nothing found. –: not judged, or not measured.',
    `As written: notes, of those in the part. Beats are ${others.length === 0 ? BEATS[beat] : 'what the metronome counts in each part'}. Cents are from A = 440 Hz.`,
  ],
  take: 'Take',
  day: 'Day',
  asWritten: 'As written',
  beats: 'Beats a minute',
  cents: 'Cents sharp',
  notesOf: (right, all) => `${right} / ${all}`,
  findings: (fix, watch) => `${fix} / ${watch}`,
  nothingFound: '0',
  notJudged: '–',
  takeOf: (who, score) => `${who}, ${score}`,
  nameOfTake: (player, take) => `${player}, ${take}`,
  outcome: {
    reviewed: (who) => who,
    'not-this-score': (who) => `${who} (does not fit the part)`,
    'too-poor': (who) => `${who} (could not be heard)`,
  },
  whichBars: 'Which bars',
  whichBarsOf: (score) => `Which bars: ${score}`,
  whichBarsNote: 'A dot grows with the number of findings in the bar. Full: at least one to fix. Open: to watch only.',
  sums: (most) => `takes with a finding (most: ${most})`,
  barFindings: (bar, fix, watch) => `bar ${bar} (${fix} / ${watch})`,
  noFindings: 'none',
  rowInWords: (who, bars) => `${who}: ${bars}`,
  mapInWords: (first, last, rows) => `Findings to fix / to watch in bars ${first} to ${last}. ${rows.join('; ')}.`,
  failures: 'Takes that could not be read',
  file: 'File',
  whatNeeded: 'What was found, and what is needed',
};
