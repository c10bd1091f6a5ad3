import { drawTakeReport } from '../../report/index.js';
import { pageDate } from '../page-date.js';
import type { TakeDocument } from './types.js';

/** The listening room, as it is reached from the folder of the pages. */
const ROOM = '../listen/index.html';

/** The pages to practise from. */
export const PAGES = {
  folder: 'takes',
  ending: 'pdf',
  wanted: ({ jsonOnly }) => !jsonOnly,
  hears: false,
  madeFor: ({ paper, listen = false }) => (listen ? `${paper}, linked` : paper),
  make: ({ name, result, part, loudness, engraved, who }, { paper, listen = false }) => {
    const room = listen && name !== null ? { room: { page: ROOM, take: name } } : {};
    return drawTakeReport({ result, part, loudness, engraved, paper, ...room, creationDate: pageDate([who.date]) });
  },
} as const satisfies TakeDocument;
