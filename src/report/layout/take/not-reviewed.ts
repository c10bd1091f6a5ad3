import type { TakeResult } from '../../result/take-result-schema.js';
import type { Sheet } from '../sheet.js';
import { STYLES } from '../styles.js';

interface Words {
  readonly heading: string;
  readonly what: string;
  readonly tries: readonly string[];
}

const WORDS: Record<Exclude<TakeResult['outcome'], 'reviewed'>, Words> = {
  'not-this-score': {
    heading: 'This take does not fit the part',
    what: 'There is playing on this recording, but it could not be matched to the part. So nothing is said about the playing.',
    tries: [
      'Check that the right file was sent in: another étude, a scale or a warm-up may have its name.',
      'Check that the part is the one for your instrument. A part in another key or clef does not fit.',
      'If the take stops and starts many times, record it once more from the beginning to the end.',
      'Play a little slower if that helps. A slow take from beginning to end can be reviewed well.',
    ],
  },
  'too-poor': {
    heading: 'The playing could not be heard',
    what: 'The recording does not let the playing be heard clearly enough. So nothing is said about the playing.',
    tries: [
      'Listen to the file first. If you cannot follow the melody yourself, record it once more.',
      'Put the recorder about two metres away, in front of you and a little to the side, in a quiet room.',
      'Switch off noise suppression and automatic level where the recorder has them.',
      'Make a short test with your loudest bar. It should not distort, and your softest bar should stand clear of the room.',
    ],
  },
};

/**
 * The page for a take that was not reviewed: says so kindly, and what to try.
 *
 * @param sheet pages being filled
 * @param result the take, its outcome not `reviewed`
 * @param outcome why it was not reviewed
 *
 * Source: definition.
 */
export function drawNotReviewed(sheet: Sheet, result: TakeResult, outcome: keyof typeof WORDS): void {
  const words = WORDS[outcome];
  sheet.space(12);
  sheet.write('H2', words.heading, STYLES.section);
  sheet.space(3);
  sheet.write('P', words.what, STYLES.body);
  sheet.space(12);
  sheet.write('H2', 'What to try', STYLES.section);
  sheet.space(3);
  for (const text of words.tries) {
    sheet.write('P', text, STYLES.body);
    sheet.space(3);
  }
  if (result.recording.cautions.length === 0) return;
  sheet.space(12);
  sheet.write('H2', 'About the recording', STYLES.section);
  sheet.space(3);
  for (const caution of result.recording.cautions) sheet.write('P', caution, STYLES.body);
}
