import { DATA } from './data.js';
import { PAGES } from './pages.js';
import { SOUND } from './sound.js';
import { SOUND_FACTS } from './sound-facts.js';
import type { TakeDocument } from './types.js';
import type { DocumentWishes } from './wishes.js';

/** All that may be written for a take. The first of those that are wanted is the one named on standard output. */
export const DOCUMENTS = [PAGES, DATA, SOUND, SOUND_FACTS] as const satisfies readonly TakeDocument[];

/** How the name of one of a take's files ends. */
export type DocumentEnding = (typeof DOCUMENTS)[number]['ending'];

/**
 * @param name the take's name
 * @param document one of its documents
 * @returns its path below the folder for results, `/` between folders
 */
export function documentPath(name: string, { folder, ending }: Pick<TakeDocument, 'folder' | 'ending'>): string {
  return `${folder}/${name}.${ending}`;
}

/**
 * @param wishes what the user wants of each take
 * @returns the documents to write, in the order of the list, at least one
 */
export function wantedDocuments(wishes: DocumentWishes): readonly TakeDocument[] {
  return DOCUMENTS.filter((document) => document.wanted(wishes));
}
