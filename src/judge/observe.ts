import type { Brief } from '../brief/index.js';
import type { Standards } from '../standards/index.js';
import type { JudgeInput } from './observed/judge-input.js';
import type { Observation } from './observed/observation.js';
import { contrastStandard, fermataStandards } from './standards-for.js';

/** A place where the brief asks for something else than elsewhere. */
interface Exception {
  readonly standards: Partial<Standards>;
  readonly concerns: (o: Observation) => boolean;
}

/**
 * What one judge sees, by the teacher's brief: other standards where it sets them for one place, nothing about what it
 * leaves out, and no word on a tempo within its range.
 *
 * @param judge a judge
 * @param input one take; without a brief the judge is simply asked
 * @returns its observations
 */
export function observe(judge: (input: JudgeInput) => Observation[], input: JudgeInput): Observation[] {
  const { brief } = input;
  if (brief === undefined) return judge(input);
  const exceptions = exceptionsIn(brief);
  const exceptionFor = (o: Observation): Exception | undefined => exceptions.find(({ concerns }) => concerns(o));
  const usual = judge(input).filter((o) => exceptionFor(o) === undefined);
  const special = exceptions.flatMap((exception) =>
    judge({ ...input, standards: { ...input.standards, ...exception.standards } }).filter(
      (o) => exceptionFor(o) === exception,
    ),
  );
  return [...usual, ...special].filter((o) => brief.criteria[o.criterion].judged && !isTempoAskedFor(o, brief));
}

function exceptionsIn({ fermata, contrast }: Brief): Exception[] {
  return [
    ...fermata.bars.map((range): Exception => {
      return { standards: fermataStandards(range), concerns: (o) => isAboutFermata(o) && o.bar === range.bar };
    }),
    ...contrast.places.map((place): Exception => {
      const here = (o: Observation): boolean => {
        if ('bar' in place) return o.bar === place.bar;
        const marks = marksOf(o);
        return marks?.from === place.from && marks.to === place.to;
      };
      return { standards: contrastStandard(place), concerns: (o) => marksOf(o) !== null && here(o) };
    }),
  ];
}

function isAboutFermata({ kind }: Observation): boolean {
  return kind === 'fermata-long' || kind === 'fermata-short';
}

/** The two marks of an observation about a contrast, praise included; null for any other. */
function marksOf(o: Observation): { readonly from: string; readonly to: string } | null {
  if (o.kind === 'weak-contrast' || o.kind === 'reversed-contrast') return o.facts;
  return o.kind === 'went-well' && o.facts.about.what === 'contrast' ? o.facts.about : null;
}

function isTempoAskedFor(o: Observation, { tempo }: Brief): boolean {
  if (o.kind !== 'off-tempo' || tempo === null) return false;
  return o.facts.played >= tempo.lowestQuarterBpm && o.facts.played <= tempo.highestQuarterBpm;
}
