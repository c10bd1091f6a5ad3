import { Sheet } from '../page/index.js';
import { type Words, wordsIn } from '../words/index.js';

/** The pages being filled, with what they say of takes in their language. */
export class ReportSheet extends Sheet {
  readonly words: Words = wordsIn(this.language);
}
