import type { XmlElement } from '../source/xml-element.js';
import type { RouteSigns } from './types.js';

/** Route signs while a bar is read; a coda sign by itself may mean "jump off here" or "land here". */
export type DraftRoute = { -readonly [K in keyof RouteSigns]: RouteSigns[K] } & { codaSymbol: boolean };

/** @returns route signs of a bar that has none. */
export function emptyRoute(): DraftRoute {
  return {
    forwardRepeat: false,
    backwardRepeatTimes: 0,
    endingStart: null,
    endingStop: false,
    segno: null,
    coda: null,
    toCoda: null,
    daCapo: false,
    dalSegno: null,
    fine: false,
    alFine: false,
    alCoda: false,
    withRepeats: false,
    codaSymbol: false,
  };
}

/**
 * @param sound `sound` element
 * @returns the route signs its attributes name
 *
 * Source: MusicXML 4.0, `sound`: dacapo, dalsegno, fine, tocoda, coda, segno, forward-repeat.
 */
export function routeOfSound(sound: XmlElement): Partial<DraftRoute> {
  const { segno, coda, tocoda, dalsegno, dacapo, fine } = sound.attributes;
  return {
    ...(segno === undefined ? {} : { segno }),
    ...(coda === undefined ? {} : { coda }),
    ...(tocoda === undefined ? {} : { toCoda: tocoda }),
    ...(dalsegno === undefined ? {} : { dalSegno: dalsegno }),
    ...(dacapo === 'yes' ? { daCapo: true } : {}),
    ...(fine === undefined || fine === 'no' ? {} : { fine: true }),
    ...(sound.attributes['forward-repeat'] === 'yes' ? { forwardRepeat: true } : {}),
  };
}

/**
 * The words count for how far to play; where to go is taken from `sound` when it says so, else from words and symbols.
 *
 * @param types children of the `direction-type` elements
 * @param words their words joined
 * @param sound `sound` of the direction
 * @returns the route signs of the direction
 *
 * Source: MusicXML 4.0, `sound`, `segno`, `coda`; the Italian words: common practice.
 */
export function routeOfDirection(
  types: readonly XmlElement[],
  words: string,
  sound: XmlElement | undefined,
): Partial<DraftRoute> {
  const sounded = sound === undefined ? {} : routeOfSound(sound);
  const limits = {
    ...(/\bal\s+fine\b/i.test(words) ? { alFine: true } : {}),
    ...(/\b(al|to)\s+coda\b/i.test(words) ? { alCoda: true } : {}),
    ...(/\b(with|con)\s+(rep|rip|rit?ornell)/i.test(words) ? { withRepeats: true } : {}),
  };
  const read = Object.keys(sounded).length > 0 ? sounded : routeOfWords(types, words);
  const jumps = read.daCapo === true || read.dalSegno !== undefined;
  return jumps ? { ...read, ...limits } : read;
}

function routeOfWords(types: readonly XmlElement[], words: string): Partial<DraftRoute> {
  if (/(^|[\s(])(d\.\s*c\.?|dc|da\s+capo)(?=[\s.,)]|$)/i.test(words)) return { daCapo: true };
  if (/(^|[\s(])(d\.\s*s\.?|ds|dal\s+segno)(?=[\s.,)]|$)/i.test(words)) return { dalSegno: 'segno' };
  if (/\bto\s+(the\s+)?coda\b/i.test(words) || (/^to$/i.test(words) && has(types, 'coda'))) return { toCoda: 'coda' };
  if (/^\(?fine\.?\)?$/i.test(words)) return { fine: true };
  if (/^coda\.?$/i.test(words)) return { coda: 'coda' };
  return {
    ...(has(types, 'segno') ? { segno: 'segno' } : {}),
    ...(has(types, 'coda') ? { codaSymbol: true } : {}),
  };
}

function has(types: readonly XmlElement[], name: string): boolean {
  return types.some((type) => type.name === name);
}
