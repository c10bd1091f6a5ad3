import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';
import { ARROW } from './captions.js';

const { tenth } = NUMBERS;

/** What is said of continuity. */
export const CONTINUITY = {
  'skipped-bars': {
    headline: 'Some bars were passed over',
    text: (f) =>
      f.fileEnds
        ? 'The recording breaks off here. What follows cannot be judged.'
        : f.atEnd
          ? 'The music stops here: what follows was not played.'
          : `The music jumps ahead here: what stands up to bar ${f.toBar} was left out.`,
    why: 'The panel and the section count every bar.',
    practice: (f) =>
      f.fileEnds
        ? 'Save the recording again, or record the take anew.'
        : 'Mark the place with a bracket. Start two bars earlier and play through it without stopping.',
    caption: 'The bracket covers what was not played.',
  },
  restart: {
    headline: 'The playing stopped and began again',
    text: (f) =>
      f.whole
        ? 'You played to the last bar and then began again. What you played the second time is what counts in this report.'
        : `You stopped in bar ${f.stoppedAtBar} and began again here. What you played the second time is what counts in this report.`,
    why: 'Carrying on after a slip is a skill of its own, and an audition asks for it.',
    practice: (f) =>
      f.whole
        ? 'Record each time you play it as a take of its own. Then you can compare them.'
        : 'Practise going on after a slip: start two bars earlier and do not stop, whatever happens.',
    caption: 'The arrow goes back to the note from which you played again.',
  },
  hesitation: {
    headline: 'The music stood still for a moment',
    text: (f) => `The music waits here for ${tenth(f.seconds)} seconds.`,
    why: 'The beat goes on for everyone else, so it has to go on for you.',
    practice: 'Look one bar ahead while you play. Start two bars before and keep the beat through this place.',
    caption: ARROW,
  },
} satisfies Partial<FindingsWords>;
