/**
 * @param and the word before the last of several
 * @returns what lists one or more words: `1`, `1 and 2`, `1, 2 and 3`; none give nothing
 */
export function listedWith(and: string): (words: readonly string[]) => string {
  return (words) => {
    const last = words.at(-1) ?? '';
    return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${and} ${last}`;
  };
}
