import type { Criterion } from './finding-kinds.js';
import type { Observation } from './observed/observation.js';

/** A finding together with the other bars in which the same habit shows. */
export interface LedObservation {
  readonly observation: Observation;
  /** bars of the sure ones of its kind, in order; empty when it stands alone */
  readonly alsoInBars: readonly string[];
  /** bars of those of its kind that are worth a listen */
  readonly perhapsInBars: readonly string[];
  /** bar of the finding that speaks for this one too; absent when it speaks for itself */
  readonly ledByBar?: string;
  /** what it would weigh by itself; present when another one leads */
  readonly ownWeight?: Observation['weight'];
}

/** Criteria in which one habit shows in many places. A wrong note is a matter of its own. */
const HABITS: ReadonlySet<Criterion> = new Set(['rhythm', 'dynamics', 'articulation', 'breath', 'sound']);

/**
 * Findings of one kind share a cause: the most useful one leads and names the bars of the others, which are then only
 * watched, so that the first things to work on are different things.
 *
 * @param observations most useful first
 * @returns the same, in the same order
 */
export function shareCauses(observations: readonly Observation[]): LedObservation[] {
  const leads = new Map<string, Observation>();
  for (const o of observations) {
    if (o.weight !== 'well' && HABITS.has(o.criterion) && !leads.has(o.kind)) leads.set(o.kind, o);
  }
  return observations.map((o) => {
    const lead = leads.get(o.kind);
    if (lead === undefined) return { observation: o, alsoInBars: [], perhapsInBars: [] };
    if (lead !== o) {
      return {
        observation: { ...o, weight: 'watch' },
        alsoInBars: [],
        perhapsInBars: [],
        ledByBar: lead.bar,
        ownWeight: o.weight,
      };
    }
    const others = observations.filter((other) => other !== o && other.kind === o.kind);
    const alsoInBars = barsOf(others, o.weight).filter((bar) => bar !== o.bar);
    const perhaps = o.weight === 'fix' ? barsOf(others, 'watch') : [];
    const perhapsInBars = perhaps.filter((bar) => bar !== o.bar && !alsoInBars.includes(bar));
    return { observation: o, alsoInBars, perhapsInBars };
  });
}

/** Bars of the observations of one weight, once each, in the order of the music. */
function barsOf(observations: readonly Observation[], weight: Observation['weight']): string[] {
  const sorted = observations.filter((o) => o.weight === weight).sort((a, b) => (a.index ?? 0) - (b.index ?? 0));
  return [...new Set(sorted.map((o) => o.bar))];
}
