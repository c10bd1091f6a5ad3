import { soundFacts } from '../sound-facts.js';
import type { TakeDocument } from './types.js';

/** What the listening room must know of the recording: how long it is, and how loud from moment to moment. */
export const SOUND_FACTS = {
  folder: 'listen/sound',
  ending: 'facts.json',
  wanted: ({ listen = false }) => listen,
  hears: true,
  madeFor: () => '',
  make: async ({ sound, loudness }) => {
    if (sound === null) throw new Error('the recording was given up before it was measured');
    return new TextEncoder().encode(JSON.stringify(soundFacts(sound(), loudness)));
  },
} as const satisfies TakeDocument;
