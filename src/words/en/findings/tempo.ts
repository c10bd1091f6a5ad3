import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { beatsIn, tempoIn } from '../tempo.js';

const { whole } = NUMBERS;
const ENDS = 'Play the first two bars with the metronome, then at once the last two, and hear if they match it.';
const FORESEEN = 'Others can only play with a beat they can foresee.';
const TEMPOS = 'The numbers are your beats a minute, bar by bar.';

/** What is said of tempo. */
export const TEMPO = {
  rushing: {
    headline: 'The tempo runs ahead',
    text: (f) =>
      f.throughout
        ? `The tempo gets faster from beginning to end, by about ${whole(f.percent)} percent.`
        : `The tempo runs ahead here, by about ${whole(f.percent)} percent.`,
    why: FORESEEN,
    practice: (f) => (f.throughout ? ENDS : 'Play these bars with the metronome on the weak beats only.'),
    caption: `The arrow runs over the bars in which you hurry. ${TEMPOS}`,
  },
  dragging: {
    headline: 'The tempo falls back',
    text: (f) =>
      f.throughout
        ? `The tempo gets slower from beginning to end, by about ${whole(f.percent)} percent.`
        : `The tempo sinks here, by about ${whole(f.percent)} percent.`,
    why: FORESEEN,
    practice: (f) =>
      f.throughout ? ENDS : 'Find the hardest beat in these bars and practise it alone, then with the metronome.',
    caption: `The arrow points back over the bars in which you slow down. ${TEMPOS}`,
  },
  'off-tempo': {
    headline: 'The tempo is not the one asked for',
    text: (f) => `You played at about ${tempoIn(f.played, f.beat)}; ${whole(beatsIn(f.marked, f.beat))} is marked.`,
    why: 'The marked tempo gives the piece its character. A slower one is right for practice.',
    practice: (f) =>
      f.played < f.marked
        ? 'If this was not planned, raise the metronome by four each day.'
        : 'Start the metronome two bars before you begin, and breathe with it.',
    caption: 'Over the first note stands the tempo you played, as a metronome mark.',
  },
} satisfies Partial<FindingsWords>;
