import { type EngravedPart, rememberExcerpts } from '../../engrave/index.js';
import { openFaces } from '../../page/index.js';
import { typesetterIn } from '../typesetter-in.js';
import { type ListeningSource, listeningContent } from './listening-content.js';
import { pageHtml } from './page-html.js';

/** Everything a listening page is made from. */
export interface ListeningPageInput extends ListeningSource {
  /** asked for the part laid out when it is needed; without it the page has no excerpts */
  readonly engraved?: () => Promise<EngravedPart | null>;
}

/**
 * Writes the page on which a player hears each finding: its few seconds of sound beside the engraved bars with their pencil
 * marks, and the curves of loudness and tempo.
 *
 * @param input the take's result, the part it was reviewed against, the recording and its loudness (dBFS; the centre of
 * frame f is at `(f + 0.5) * hopSeconds`), and the part laid out
 * @returns an HTML document that needs no other file; the same input gives the same text
 *
 * Source: HTML Living Standard; WCAG 2.2.
 */
export async function drawListeningPage(input: ListeningPageInput): Promise<string> {
  const typesetter = typesetterIn(input.result.language);
  const { engraved, result } = input;
  const part = engraved !== undefined && result.outcome === 'reviewed' ? await engraved() : null;
  const engrave = part === null ? null : rememberExcerpts(part, typesetter);
  return pageHtml(listeningContent(input, typesetter, engrave), openFaces());
}
