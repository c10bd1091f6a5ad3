import { isMeasured, type Language } from '../base/index.js';
import { toldReason } from '../result/index.js';
import { reviewedDays } from './follow-player.js';
import { MEASURES } from './measures.js';
import { moderatedDeviation, smallestChange, type WithinDays, withinDays, workingDeviation } from './noise.js';
import { measureSchema, type ProgressResult } from './progress-result-schema.js';
import type { Played } from './sort-etudes.js';

/**
 * @param played études with their players' results
 * @param language in which reasons are told
 * @returns every measure, with its noise as the takes themselves show it
 */
export function measuresOf(played: readonly Played[], language: Language): ProgressResult['measures'] {
  const days = played
    .flatMap(({ players }) => players.flatMap((placed) => reviewedDays(placed)))
    .map(({ results }) => results.flatMap(({ figures }) => figures ?? []));
  return MEASURES.map(({ id, criterion, unit, wanted, usual, noise }) => {
    const found = withinDays(days.map((takes) => takes.map((one) => one[id]).filter(isMeasured<number>)));
    const standardDeviation = moderatedDeviation(found, workingDeviation(noise));
    // Rounded here already: what days are compared by is the number that the document gives.
    return measureSchema.parse({
      measure: id,
      criterion,
      unit,
      wanted,
      usual,
      noise: {
        standardDeviation,
        smallestChange: smallestChange(standardDeviation),
        working: noise,
        fromTakes: scatterOf(found, language),
      },
    });
  });
}

function scatterOf({ standardDeviation, degreesOfFreedom, days }: WithinDays, language: Language) {
  const known =
    degreesOfFreedom > 0 ? standardDeviation : toldReason(language, { code: 'no-second-take-of-a-day', facts: {} });
  return { standardDeviation: known, degreesOfFreedom, days };
}
