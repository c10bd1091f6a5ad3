const ESCAPED = /[.*+?^$()|[\]\\]/g;
const PLACE = /\{n?\}/g;

/** The more of a sentence is fixed, the surer it is meant. */
const fixedLength = (text: string) => text.replace(PLACE, '').length;

/**
 * @param table sentences of one language and the same in another; `{n}` stands for a number and `{}` for whatever else is
 * put in, in the same order
 * @param wordIn writes a number, or a name, of the one language as the other does; null for anything else
 * @returns what turns a sentence into the other language; null for one that is not known
 *
 * Source: definition.
 */
export function translator(
  table: Readonly<Record<string, string>>,
  wordIn: (text: string) => string | null,
): (sentence: string) => string | null {
  const patterns = Object.entries(table)
    .filter(([from]) => from.match(PLACE) !== null)
    .toSorted(([a], [b]) => fixedLength(b) - fixedLength(a))
    .map(([from, to]) => {
      const form = from.replace(ESCAPED, '\\$&').replaceAll('{n}', '([−-]?\\d+(?:[.,]\\d+)?)').replaceAll('{}', '(.*)');
      return { form: new RegExp(`^${form}$`, 's'), to };
    });
  const translated = (sentence: string): string | null => {
    const whole = table[sentence];
    if (whole !== undefined) return whole;
    for (const { form, to } of patterns) {
      const filled = form.exec(sentence)?.slice(1);
      if (filled === undefined) continue;
      let next = 0;
      return to.replace(PLACE, () => piece(filled[next++] ?? ''));
    }
    return null;
  };
  /** What was put into a sentence: numbers, names of channels, phrases of their own. */
  const piece = (text: string): string => {
    return (
      wordIn(text) ??
      translated(text) ??
      text
        .split(', ')
        .map((one) => translated(one) ?? one)
        .join(', ')
    );
  };
  return translated;
}
