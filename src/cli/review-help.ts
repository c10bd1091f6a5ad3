import { DOCUMENTS } from '../review/index.js';
import { DOCUMENT_WORDS } from './words.js';

/**
 * @returns what stands below the options of `review`: which files are written, and what is printed
 */
export function reviewHelp(): string {
  const files = DOCUMENTS.map(({ ending }) => `  ${`takes/<take>.${ending}`.padEnd(20)}${DOCUMENT_WORDS[ending]}`);
  return `
Writes for each take
${files.join('\n')}
then section.csv, section.json and section.pdf for all of them. Prints one line
a take: name, outcome, things to fix, things to watch, report. Takes whose
results are there already are not listened to again. The exit status is 0 when
every take was reviewed, 1 when some could not be, 2 when the request itself is
wrong, 130 when it was stopped (Ctrl-C); the same command goes on from there.`;
}
