/** What a dynamic mark does: sets a level, strikes one note, or nothing that is known. */
export type DynamicSense = 'level' | 'event' | 'event-then-other-level' | 'other-level' | 'unknown';

/**
 * @param name mark as printed
 * @returns its sense: ppp … fff set a level; sf, sfz, rf strike a note; fp and its like strike it and go on soft; più f,
 *   n (niente) lead to a level without a name
 *
 * Source: MusicXML 4.0, `dynamics`; the sense of each: common practice.
 */
export function senseOfDynamic(name: string): DynamicSense {
  if (/^(p{1,6}|f{1,6}|mp|mf)$/.test(name)) return 'level';
  if (/^(s?f{1,4}z?p{1,4}|s?f{1,4}zp|pf)$/.test(name)) return 'event-then-other-level';
  if (/^(sf{1,4}z?|f{1,4}z|rfz?)$/.test(name)) return 'event';
  if (/^(n|niente|(pi[uù]|meno|poco|quasi|molto)\s*(f|p|mf|mp|forte|piano))$/i.test(name)) return 'other-level';
  return 'unknown';
}
