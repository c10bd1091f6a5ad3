/** What a tempo word does. */
export type TempoSense = 'slower' | 'faster' | 'step-slower' | 'step-faster' | 'a-tempo' | 'tempo-primo' | 'new-tempo';

/** Quarters a minute that are assumed for a tempo word without a number. Source: from memory, the middle of usual ranges. */
const BPM_OF_WORD: readonly (readonly [RegExp, number])[] = [
  [/\bprestissimo\b/i, 190],
  [/\bpresto\b/i, 172],
  [/\bviva(ce|cissimo)\b|\bvivo\b/i, 150],
  [/\ballegretto\b/i, 112],
  [/\ballegro\b/i, 128],
  [/\bmoderato\b/i, 100],
  [/\bandantino\b/i, 88],
  [/\bandante\b/i, 80],
  [/\badagi(o|etto)\b/i, 68],
  [/\blarghetto\b/i, 62],
  [/\b(lento|largo)\b/i, 54],
  [/\bgrave\b/i, 44],
];

/**
 * @param words words of a direction
 * @returns what they do to the tempo, null when nothing
 *
 * Source: common practice.
 */
export function senseOfTempoWords(words: string): TempoSense | null {
  if (/\b(non|senza|no|without)\s+(rit|rall|accel|string)/i.test(words)) return null;
  if (/\b(a\s+tempo|in\s+tempo)\b/i.test(words)) return 'a-tempo';
  if (/\btempo\s+(i\b|1|primo)|\b(primo|1[°º]?)\s+tempo\b/i.test(words)) return 'tempo-primo';
  if (
    /\b(ritard|ritenuto|rit\b|riten\b|rall|allarg|slarg|slentando|calando|morendo|smorz|slow(ing)? down)/i.test(words)
  )
    return 'slower';
  if (/\b(accel|string(endo|\.)|affrett|speeding up)/i.test(words)) return 'faster';
  if (/\bmeno\s+(mosso|vivo|allegro|presto)|\bpi[uù]\s+(lento|largo|adagio|tranquillo)|\bslower\b/i.test(words))
    return 'step-slower';
  if (/(^|\W)pi[uù]\s+(mosso|vivo|vivace|allegro|presto|animato)|\bmeno\s+lento\b|\bfaster\b/i.test(words))
    return 'step-faster';
  return assumedQuarterBpm(words) === null ? null : 'new-tempo';
}

/**
 * @param words words of a direction
 * @returns quarters a minute usually meant by a tempo word, null when there is none
 *
 * Source: from memory, the middle of usual ranges; an assumption, never called printed.
 */
export function assumedQuarterBpm(words: string): number | null {
  return BPM_OF_WORD.find(([pattern]) => pattern.test(words))?.[1] ?? null;
}
