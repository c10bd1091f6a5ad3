import type { ContrastPlace } from '../../../brief/index.js';
import type { Demand } from '../../../study/index.js';
import { CRITERIA } from '../criteria.js';
import { listed } from '../lists.js';
import { NUMBERS } from '../numbers.js';

const { exact } = NUMBERS;

/** What each demand is about. */
export const DEMAND_TITLES: Readonly<Record<Demand['kind'], string>> = {
  points: 'Punkte',
  'left-out': 'Nicht beurteilt',
  contrast: 'Laut und leise',
  hairpin: 'Gabeln',
  fermata: 'Fermaten',
  intonation: 'Stimmung',
};

/**
 * @param demand what the teacher asks for
 * @returns it in one or two sentences
 */
export function demandInWords(demand: Demand): string {
  switch (demand.kind) {
    case 'points': {
      const worth = demand.criteria.map(({ criterion, points }) => `${CRITERIA[criterion]} ${exact(points)}`);
      return `${worth.join(', ')}; zusammen ${exact(demand.total)}. Sie helfen einer Jury und ersetzen sie nie.`;
    }
    case 'left-out':
      return `${listed(demand.criteria.map((criterion) => CRITERIA[criterion]))}.`;
    case 'contrast': {
      const usual = `Von einem Zeichen zum nächsten sind es ${exact(demand.leastDb)} Dezibel oder mehr`;
      return `${[usual, ...demand.places.map(placeInWords)].join('; ')}.`;
    }
    case 'hairpin':
      return `Ein Crescendo wächst und ein Diminuendo schwindet um ${exact(demand.leastDb)} Dezibel oder mehr.`;
    case 'fermata':
      return `Jede dauert ${exact(demand.leastTimes)}- bis ${exact(demand.mostTimes)}-mal so lang, wie sie notiert ist.`;
    case 'intonation':
      return `Ab ${exact(demand.fixCents)} Cent gilt ein gehaltener Ton als verstimmt. Ein Halbton hat 100.`;
  }
}

function placeInWords(place: ContrastPlace): string {
  const where = 'bar' in place ? `in Takt ${place.bar}` : `von ${place.from} zu ${place.to}`;
  return `${where} sind es ${exact(place.leastDb)}`;
}
