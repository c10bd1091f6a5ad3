/**
 * @param mark a dynamic mark that sets a level
 * @returns its place from soft to loud, NaN for any other mark
 *
 * Source: order of the dynamic marks, common practice (e.g. Read, Music Notation).
 */
export function loudnessRank(mark: string): number {
  if (/^p{1,6}$/.test(mark)) return -mark.length - 0.5;
  if (/^f{1,6}$/.test(mark)) return mark.length + 0.5;
  return mark === 'mp' ? -0.5 : mark === 'mf' ? 0.5 : Number.NaN;
}
