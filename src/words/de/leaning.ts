import type { LeaningFacts, LeaningWords } from '../shapes/leaning.js';
import { NUMBERS } from './numbers.js';

const { whole } = NUMBERS;

const WHERE: Readonly<Record<LeaningFacts['causes'][number], string>> = {
  leap: 'vor einem Sprung',
  articulation: 'wo Bögen oder Punkte anfangen oder enden',
  first: 'am Anfang eines Schlags',
  last: 'am Ende eines Schlags',
  register: 'auf dem Weg in die Höhe oder Tiefe',
};

const where = ({ causes }: LeaningFacts) => causes.map((cause) => WHERE[cause]).join(' oder ');
const length = ({ differenceShare }: LeaningFacts) => (differenceShare > 0 ? 'länger' : 'kürzer');
const from = ({ intervalShare }: LeaningFacts) => {
  const [a = 0, b = 0] = intervalShare.map((bound) => Math.abs(100 * bound)).toSorted((x, y) => x - y);
  return `${whole(a)} bis ${whole(b)}`;
};

/** How it is told that the notes of triplets and runs lean somewhere. */
export const LEANING: LeaningWords = {
  line: (f) =>
    `${where(f)} sind die Noten im Schlag ${length(f)} als die anderen: um ${from(f)} Prozent, an ${f.count} Noten${f.causes.length > 1 ? '; woran davon es liegt, lässt sich hier nicht sagen' : ''}`,
  sentence: (f) => {
    if (f === undefined) return '';
    const often = ` Deine Noten sind oft ${length(f)}: ${where(f)}.`;
    return f.causes.length === 1 ? often : `${often} Woran davon es liegt, lässt sich hier nicht sagen.`;
  },
};
