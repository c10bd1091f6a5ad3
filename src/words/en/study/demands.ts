import type { ContrastPlace } from '../../../brief/index.js';
import type { Demand } from '../../../study/index.js';
import { CRITERIA } from '../criteria.js';
import { listed } from '../lists.js';
import { NUMBERS } from '../numbers.js';

const { exact } = NUMBERS;

/** What each demand is about. */
export const DEMAND_TITLES: Readonly<Record<Demand['kind'], string>> = {
  points: 'Points',
  'left-out': 'Not judged',
  contrast: 'Loud and soft',
  hairpin: 'Hairpins',
  fermata: 'Fermatas',
  intonation: 'In tune',
};

/**
 * @param demand what the teacher asks for
 * @returns it in one or two sentences
 */
export function demandInWords(demand: Demand): string {
  switch (demand.kind) {
    case 'points': {
      const worth = demand.criteria.map(({ criterion, points }) => `${CRITERIA[criterion]} ${exact(points)}`);
      return `${worth.join(', ')}; ${exact(demand.total)} in all. They support a panel and never replace one.`;
    }
    case 'left-out':
      return `This is left out and costs no points: ${listed(demand.criteria.map((criterion) => CRITERIA[criterion]))}.`;
    case 'contrast': {
      const usual = `From one mark to the next the sound has to change by ${exact(demand.leastDb)} dB or more`;
      return `${[usual, ...demand.places.map(placeInWords)].join('; ')}.`;
    }
    case 'hairpin':
      return `From end to end of each, the sound has to change by ${exact(demand.leastDb)} dB or more.`;
    case 'fermata':
      return `Each lasts ${exact(demand.leastTimes)} to ${exact(demand.mostTimes)} times its written length.`;
    case 'intonation':
      return `From ${exact(demand.fixCents)} cents on a held note counts as out of tune. A semitone has 100.`;
  }
}

function placeInWords(place: ContrastPlace): string {
  const where = 'bar' in place ? `in bar ${place.bar}` : `from ${place.from} to ${place.to}`;
  return `${where} by ${exact(place.leastDb)}`;
}
