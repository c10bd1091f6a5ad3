import type { Face, LentFace } from '../../drawing.js';
import { packagesFor } from './families.js';
import { sliceWith } from './slices.js';

/** Weights that go with the text faces. Source: OpenType 1.9, OS/2, usWeightClass. */
const REGULAR = 400;
const SEMIBOLD = 600;

/**
 * @param letter that the text faces lack
 * @param beside the face that the text is set in
 * @param text in which it stands; all its letters come from one package where one holds them all
 * @returns the face that holds the letter, or undefined when no package that is there has it
 */
export function lentFace(letter: string, beside: Face, text: string): LentFace | undefined {
  const packages = packagesFor(letter, text);
  const fellows = [...text].filter((other) => packagesFor(other, text) === packages);
  const has = (name: string, one: string): boolean => sliceWith(name, one.codePointAt(0) as number) !== null;
  const name =
    packages.find((one) => fellows.every((other) => has(one, other))) ?? packages.find((one) => has(one, letter));
  const slice = name === undefined ? null : sliceWith(name, letter.codePointAt(0) as number);
  return slice === null ? undefined : `lent ${beside === 'semibold' ? SEMIBOLD : REGULAR} ${slice}`;
}
