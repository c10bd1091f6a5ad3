import type { Brief, ContrastPlace, FermataRange } from '../brief/index.js';
import { STANDARDS, type Standard, type Standards } from '../standards/index.js';

const SOURCE = 'the teacher’s brief';

function asked(standard: Standard, value: number): Standard {
  return { value, unit: standard.unit, source: SOURCE };
}

/**
 * @param standard one a take is judged by
 * @param usual the same of the house
 * @returns `asked: true` where the teacher asks for something else than the house does
 */
export function askedFor(standard: Standard, usual: Standard): { readonly asked?: true } {
  return standard.value === usual.value ? {} : { asked: true };
}

/**
 * @param brief the teacher's brief, undefined without one
 * @returns the standards of the house with those the brief sets; a tempo range that is narrower on one side counts with
 * that side, as what lies within it is not told anyhow
 */
export function standardsFor(brief: Brief | undefined): Standards {
  if (brief === undefined) return STANDARDS;
  const { tempo, contrast, hairpin, intonation } = brief;
  const sides =
    tempo === null
      ? STANDARDS.tempoWatch.value
      : Math.min(tempo.highestQuarterBpm / tempo.quarterBpm - 1, 1 - tempo.lowestQuarterBpm / tempo.quarterBpm);
  return {
    ...STANDARDS,
    ...fermataStandards(brief.fermata),
    contrastLeast: asked(STANDARDS.contrastLeast, contrast.leastDb),
    hairpinLeast: asked(STANDARDS.hairpinLeast, hairpin.leastDb),
    noteWatch: asked(STANDARDS.noteWatch, intonation.watchCents),
    noteFix: asked(STANDARDS.noteFix, intonation.fixCents),
    tempoWatch: asked(STANDARDS.tempoWatch, sides),
  };
}

/**
 * @param range how long a fermata may last, times its written length
 * @returns the standards it sets
 */
export function fermataStandards(range: FermataRange): Pick<Standards, 'fermataLeast' | 'fermataMost'> {
  return {
    fermataLeast: asked(STANDARDS.fermataLeast, range.leastTimes),
    fermataMost: asked(STANDARDS.fermataMost, range.mostTimes),
  };
}

/**
 * @param place a contrast asked for at one place
 * @returns the standard it sets
 */
export function contrastStandard(place: ContrastPlace): Pick<Standards, 'contrastLeast'> {
  return { contrastLeast: asked(STANDARDS.contrastLeast, place.leastDb) };
}
