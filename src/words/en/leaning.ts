import type { LeaningFacts, LeaningWords } from '../shapes/leaning.js';
import { NUMBERS } from './numbers.js';

const { whole } = NUMBERS;

const WHERE: Readonly<Record<LeaningFacts['causes'][number], string>> = {
  leap: 'before a leap',
  articulation: 'where slurs or dots start or end',
  first: 'at the start of a beat',
  last: 'at the end of a beat',
  register: 'on the way to high or low notes',
};

const where = ({ causes }: LeaningFacts) => causes.map((cause) => WHERE[cause]).join(' or ');
const length = ({ differenceShare }: LeaningFacts) => (differenceShare > 0 ? 'longer' : 'shorter');
const from = ({ intervalShare }: LeaningFacts) => {
  const [a = 0, b = 0] = intervalShare.map((bound) => Math.abs(100 * bound)).toSorted((x, y) => x - y);
  return `${whole(a)} to ${whole(b)}`;
};

/** How it is told that the notes of triplets and runs lean somewhere. */
export const LEANING: LeaningWords = {
  line: (f) =>
    `${where(f)} the notes of a beat are ${length(f)} than the rest: by ${from(f)} percent, on ${f.count} notes${f.causes.length > 1 ? '; which of these it is cannot be told here' : ''}`,
  sentence: (f) => {
    if (f === undefined) return '';
    const often = ` Your notes are often ${length(f)} ${where(f)}.`;
    return f.causes.length === 1 ? often : `${often} Which of these it is cannot be told here.`;
  },
};
