import { DOCUMENTS, documentPath } from '../review/index.js';
import { DOCUMENT_WORDS } from './words.js';

const PATH_WIDTH = 33;

/**
 * @returns what stands below the options of `review`: which files are written, and what is printed
 */
export function reviewHelp(): string {
  const files = DOCUMENTS.map((document) => {
    return `  ${documentPath('<take>', document).padEnd(PATH_WIDTH)}${DOCUMENT_WORDS[document.ending]}`;
  });
  return `
Writes for each take
${files.join('\n')}
then section.csv, section.json and section.pdf for all of them, and with
--listen the listening room, listen/index.html. Prints one line a take: name,
outcome, things to fix, things to watch, report. Takes whose results are there
already are not listened to again. The exit status is 0 when every take was
reviewed, 1 when some could not be, 2 when the request itself is wrong, 130
when it was stopped (Ctrl-C); the same command goes on from there.`;
}
