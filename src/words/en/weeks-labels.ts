import type { WeeksLabels } from '../shapes/weeks.js';

/** Fixed words of the progress sheet. */
export const WEEKS_LABELS: WeeksLabels = {
  kind: 'Over the weeks',
  standings: 'How everybody stands',
  standingsNote: 'A change is only called one when it is larger than chance; the end of the sheet tells how.',
  player: 'Player',
  days: 'Days',
  standing: 'How it stands',
  goal: 'Goal for the next lesson',
  goalIs: 'Goal for the next lesson:',
  bars: 'The bars',
  barsNote:
    'A dot a player who has or had something to fix there. Full: has it on the latest day. Small: only worth a listen now, or not judged. Ring: free now.',
  bar: (bar) => `Bar ${bar}`,
  openRows: 'Still to rehearse',
  what: 'What',
  about: 'About',
  had: 'Had it before',
  have: 'Has it now',
  nobody: '–',
  middle: 'The section’s middle',
  middleNote:
    'Heavy: the middle of the players, week by week. Light: each player. Dashed: the usual standard, unless the brief asks for another. On the left the first number, on the right the latest.',
  multiplesNote:
    'The grey band is what takes of one day differ by themselves: only a point outside it is a change since the first day. Dashed: the usual standard. All players have the same scales.',
  barsLegend:
    'A row a bar, a mark a day. Full dot: to fix. Ring: worth a listen. Stroke: free. Nothing: not played or not judged.',
  notJudged: 'not judged',
  besideSlurred: 'Slurred beside tongued',
  noBars: 'No bar had anything to fix.',
  noise: 'How a change is told from chance',
  measure: 'Measure',
  varies: 'One take varies by',
  changeFrom: 'A change from',
  restsOn: 'What this rests on',
  alsoFound: 'Also found',
  file: 'File',
  whatNeeded: 'What was found, and what is needed',
  failures: 'Results that could not be read',
  unplaced: 'Takes without a player or a day',
  unplacedNote:
    'They cannot be followed over weeks. Name the recordings after day and player and review them again to have them here.',
  unknown: 'not known',
  outcome: 'What came of it',
  outcomes: {
    reviewed: 'reviewed',
    'not-this-score': 'does not fit the part',
    'too-poor': 'could not be heard clearly enough',
    failed: 'could not be read',
  },
  states: { has: 'to fix', perhaps: 'only worth a listen or not judged', free: 'free now' },
  marks: { fix: 'to fix', watch: 'worth a listen', clear: 'free', 'not-judged': 'not judged' },
  verdicts: { better: 'better', worse: 'worse', different: 'different' },
};
