import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { SoundFacts } from '../../report/index.js';
import { documentPath, SOUND, SOUND_FACTS } from '../../review/index.js';
import { LARGEST_DOCUMENT_BYTES, readWhole } from '../disk/read-whole.js';

const levels = z.array(z.number().nullable());

const soundFactsSchema = z.object({
  durationSeconds: z.number().nonnegative(),
  levelHopSeconds: z.number().positive(),
  levelsDb: levels,
  kWeightedDb: levels,
});

/**
 * @param folder the folder for results
 * @param name a take's name
 * @returns what is known of its sound; null when there is none to be heard, or nothing is known of it
 */
export function readSoundFacts(folder: string, name: string): SoundFacts | null {
  if (!existsSync(join(folder, documentPath(name, SOUND)))) return null;
  try {
    const bytes = readWhole(join(folder, documentPath(name, SOUND_FACTS)), LARGEST_DOCUMENT_BYTES);
    return soundFactsSchema.parse(JSON.parse(new TextDecoder().decode(bytes)));
  } catch {
    return null;
  }
}
