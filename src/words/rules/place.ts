import type { Place, PlaceWords } from '../shapes/places.js';
import { beatInFigures } from './beats.js';
import { concernsWholeTake } from './whole-take.js';

/**
 * @param words the pieces of a place in one language
 * @returns what says a place: the whole take, bars, or a bar and a beat; later passes through a repeat are named
 */
export function placeWith(words: PlaceWords): (place: Place) => string {
  return ({ kind, bar, toBar, pass, beat }) => {
    if (concernsWholeTake(kind) || (kind === 'went-well' && beat === undefined)) return words.wholeTake;
    const again = pass > 1 ? words.again(pass) : '';
    if (toBar !== undefined && toBar !== bar) return words.bars(bar, toBar) + again;
    return words.bar(bar) + (beat === undefined ? '' : words.beat(beatInFigures(beat))) + again;
  };
}
