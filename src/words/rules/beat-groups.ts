import { beatInFigures } from './beats.js';

/**
 * @param beats 1-based, may be fractional
 * @returns figures of those that have one, and of the beats after which the others come; each once
 */
export function beatGroups(beats: readonly number[]): { readonly on: string[]; readonly after: string[] } {
  const figures = beats.map(beatInFigures);
  const texts = (after: boolean): string[] => [
    ...new Set(figures.filter((one) => one.after === after).map(({ text }) => text)),
  ];
  return { on: texts(false), after: texts(true) };
}
