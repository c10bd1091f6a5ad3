import { type Brief, CRITERIA, defaultBrief } from '../brief/index.js';
import type { Part } from '../score/index.js';
import type { Demand } from './types.js';

/**
 * What a teacher asks for beyond what the part says, and what it is worth; what other sections of a sheet tell at its place
 * (tempo, breaths, fermatas of single bars) is not among it.
 *
 * @param part the part
 * @param brief the teacher's brief for it
 * @returns what differs from asking for nothing
 */
export function demandsOf(part: Part, brief: Brief): Demand[] {
  const usual = defaultBrief(part);
  const demands: Demand[] = [];
  const judged = CRITERIA.filter((criterion) => brief.criteria[criterion].judged);
  const worth = judged.map((criterion) => ({ criterion, points: brief.criteria[criterion].points }));
  if (judged.some((criterion) => brief.criteria[criterion].points !== usual.criteria[criterion].points)) {
    demands.push({ kind: 'points', criteria: worth, total: worth.reduce((sum, { points }) => sum + points, 0) });
  }
  const leftOut = CRITERIA.filter((criterion) => !brief.criteria[criterion].judged);
  if (leftOut.length > 0) demands.push({ kind: 'left-out', criteria: leftOut });
  const { contrast, hairpin, intonation, fermata } = brief;
  const asksForContrast = contrast.leastDb !== usual.contrast.leastDb || contrast.places.length > 0;
  if (part.dynamics.length > 1 && asksForContrast) demands.push({ kind: 'contrast', ...contrast });
  if (part.hairpins.length > 0 && hairpin.leastDb !== usual.hairpin.leastDb) {
    demands.push({ kind: 'hairpin', leastDb: hairpin.leastDb });
  }
  const { leastTimes, mostTimes } = fermata;
  const ownFermata = leastTimes !== usual.fermata.leastTimes || mostTimes !== usual.fermata.mostTimes;
  if (part.notes.some((note) => note.fermata) && ownFermata) demands.push({ kind: 'fermata', leastTimes, mostTimes });
  const { fixCents } = intonation;
  if (fixCents !== usual.intonation.fixCents) demands.push({ kind: 'intonation', fixCents });
  return demands;
}
