import { drawTakeReport } from '../../report/index.js';
import { pageDate } from '../page-date.js';
import type { TakeDocument } from './types.js';

/** The pages to practise from. */
export const PAGES = {
  folder: 'takes',
  ending: 'pdf',
  wanted: ({ jsonOnly }) => !jsonOnly,
  hears: false,
  madeFor: ({ paper, listen = false }) => (listen ? `${paper}, linked` : paper),
  make: ({ result, part, loudness, engraved, who }, { paper }) =>
    drawTakeReport({ result, part, loudness, engraved, paper, creationDate: pageDate([who.date]) }),
} as const satisfies TakeDocument;
