import { InputError } from '../../base/index.js';
import type { PrintedBar } from './types.js';

/** The line of notes that is read as the player's. */
export interface ChosenVoice {
  readonly voice: string;
  readonly staff: string;
  /** notes to play in other voices and on other staves */
  readonly notesElsewhere: number;
}

/**
 * @param bars bars as printed
 * @param wanted number of a voice; undefined: the voice with the most notes on the first staff that has notes
 * @returns voice and staff to read
 * @throws InputError `bad-option` when the wanted voice has no notes, `score-without-notes` when no voice has
 *
 * Source: common practice.
 */
export function chooseVoice(bars: readonly PrintedBar[], wanted: string | undefined): ChosenVoice {
  const counts = noteCounts(bars);
  if (counts.length === 0) throw new InputError('part-without-notes');
  const candidates = counts.filter((count) => wanted === undefined || count.voice === wanted);
  if (candidates.length === 0) {
    const voices = [...new Set(counts.map((count) => count.voice))].sort();
    throw new InputError('voice-not-there', { wanted: wanted ?? '', voices });
  }
  const staff = candidates.map((count) => count.staff).sort()[0];
  const ranked = candidates
    .filter((count) => wanted !== undefined || count.staff === staff)
    .sort((a, b) => b.notes - a.notes);
  const best = ranked[0] as (typeof counts)[number];
  const notesElsewhere = counts.reduce((sum, count) => sum + (count === best ? 0 : count.notes), 0);
  return { voice: best.voice, staff: best.staff, notesElsewhere };
}

function noteCounts(bars: readonly PrintedBar[]): { voice: string; staff: string; notes: number }[] {
  const counts = new Map<string, { voice: string; staff: string; notes: number }>();
  for (const bar of bars) {
    for (const { voice, staff, pitch, inChord } of bar.notes) {
      if (pitch === null || inChord) continue;
      const count = counts.get(`${staff}/${voice}`) ?? { voice, staff, notes: 0 };
      count.notes++;
      counts.set(`${staff}/${voice}`, count);
    }
  }
  return [...counts.values()];
}
