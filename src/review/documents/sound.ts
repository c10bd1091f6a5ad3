import type { TakeDocument } from './types.js';

/** The recording, to be heard in the listening room. */
export const SOUND = {
  folder: 'listen/sound',
  ending: 'webm',
  wanted: ({ listen = false }) => listen,
  hears: true,
  madeFor: () => '',
  make: async ({ sound }) => {
    if (sound === null) throw new Error('the recording was given up before it was compressed');
    return sound().bytes;
  },
} as const satisfies TakeDocument;
