import { openFaces } from '../../page/index.js';
import { ReportSheet } from '../report-sheet.js';
import { typesetterIn } from '../typesetter-in.js';
import { roomContent } from './room-content.js';
import { roomHtml } from './room-html.js';
import type { RoomInput } from './room-input.js';

/**
 * Writes the listening room: the whole part as the control of what is heard, for every take, bar by bar, with the pencil
 * marks, the curves, and what was found.
 *
 * @param input the takes with their results and the addresses of their sounds, and the parts laid out
 * @returns an HTML document that needs no other file but the sounds; the same input gives the same text
 *
 * Source: HTML Living Standard; WCAG 2.2.
 */
export function drawListeningRoom(input: RoomInput): string {
  const { language = 'en' } = input;
  const typesetter = typesetterIn(language);
  const sheet = new ReportSheet({ typesetter, paper: 'a4', language, title: '', foot: '' });
  const faces = openFaces();
  return roomHtml(roomContent(input, sheet, faces.music), titleOf(input), sheet.words, language, faces);
}

/** The titles of the parts, or the names of their files. */
function titleOf({ parts }: RoomInput): string {
  const titles = parts.map(({ part, file }) => (part.title.trim() === '' ? file : part.title));
  return [...new Set(titles)].join(' · ');
}
