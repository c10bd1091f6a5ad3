import type { Part } from '../score/index.js';
import type { Brief } from './types.js';

/**
 * The part as the teacher wants it: title, tempo (later tempos keep their proportion to the first) and breaths.
 *
 * @param part the part as written
 * @param brief the teacher's brief for it
 * @returns the part to practise and to be heard by
 */
export function applyBrief(part: Part, brief: Brief): Part {
  const breaths = new Set(brief.breaths.map(({ index }) => index));
  const notes = part.notes.map((note) => {
    const breathAfter = breaths.has(note.index) ? (note.breathAfter ?? 'breath') : null;
    return breathAfter === note.breathAfter ? note : { ...note, breathAfter };
  });
  return { ...atTempo(part, brief.tempo), title: brief.title, notes };
}

/**
 * @param part the part as written
 * @param tempo the tempo asked for, null to leave it as it is
 * @returns the part at this tempo
 */
export function atTempo(part: Part, tempo: Pick<NonNullable<Brief['tempo']>, 'quarterBpm'> | null): Part {
  const first = part.tempos[0];
  if (tempo === null || first === undefined) return part;
  const factor = tempo.quarterBpm / first.quarterBpm;
  if (factor === 1 && first.printed) return part;
  const tempos = part.tempos.map((mark, i) => ({
    ...mark,
    quarterBpm: mark.quarterBpm * factor,
    printed: i === 0 || mark.printed,
  }));
  return { ...part, tempos, remarks: part.remarks.filter(({ code }) => code !== 'tempo-assumed') };
}
