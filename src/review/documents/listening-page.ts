import { drawListeningPage } from '../../report/index.js';
import type { TakeDocument } from './types.js';

/** The page on which findings can be heard. */
export const LISTENING_PAGE = {
  ending: 'html',
  wanted: ({ listen = false }) => listen,
  hears: true,
  madeFor: () => '',
  make: async ({ result, part, loudness, engraved, take }) => {
    if (take === null) throw new Error('the recording was given up before the page to listen to was made');
    return new TextEncoder().encode(await drawListeningPage({ result, part, loudness, engraved, take }));
  },
} as const satisfies TakeDocument;
