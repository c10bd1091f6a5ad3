import { openFaces } from './draw/faces.js';
import { createTypesetter } from './draw/typesetter.js';
import { openEngraver } from './engrave/open-engraver.js';
import { rememberExcerpts } from './engrave/remember-excerpts.js';
import { type ListeningSource, listeningContent } from './listen/listening-content.js';
import { pageHtml } from './listen/page-html.js';

/** Everything a listening page is made from. */
export interface ListeningPageInput extends ListeningSource {
  /** the part for engraving, as `engravingCopy` of the room `score` makes it; without it the page has no excerpts */
  readonly musicXml?: string | null;
}

/**
 * Writes the page on which a player hears each finding: its few seconds of sound beside the engraved bars with their pencil
 * marks, and the curves of loudness and tempo.
 *
 * @param input the take's result, the part it was reviewed against, the recording and its loudness (dBFS; the centre of
 * frame f is at `(f + 0.5) * hopSeconds`), and the part for engraving
 * @returns an HTML document that needs no other file; the same input gives the same text
 *
 * Source: HTML Living Standard; WCAG 2.2.
 */
export async function drawListeningPage(input: ListeningPageInput): Promise<string> {
  const typesetter = createTypesetter(input.result.language);
  const { musicXml, result } = input;
  const shown = musicXml !== undefined && musicXml !== null && result.outcome === 'reviewed';
  const engraver = shown ? await openEngraver(musicXml) : null;
  const engrave = engraver === null ? null : rememberExcerpts(engraver, typesetter);
  return pageHtml(listeningContent(input, typesetter, engrave), openFaces());
}
