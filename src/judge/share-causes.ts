import type { Observation } from './observation.js';
import type { Criterion } from './types.js';

/** A finding together with the other bars in which the same habit shows. */
export interface LedObservation {
  readonly observation: Observation;
  /** bars of the others of its kind, in order; empty when it stands alone */
  readonly alsoInBars: readonly string[];
}

/** Criteria in which one habit shows in many places. A wrong note is a matter of its own. */
const HABITS: ReadonlySet<Criterion> = new Set(['rhythm', 'dynamics', 'articulation', 'breath']);

/**
 * Findings of one kind share a cause: the plainest leads and names the bars of the others, which are then only watched,
 * so that the first things to work on are different things.
 *
 * @param observations most useful first
 * @returns the same, most useful first
 *
 * Source: definition.
 */
export function shareCauses(observations: readonly Observation[]): LedObservation[] {
  const leads = new Map<string, Observation>();
  for (const o of observations) {
    if (o.weight === 'fix' && HABITS.has(o.criterion) && !leads.has(o.kind)) leads.set(o.kind, o);
  }
  return observations.map((o) => {
    const lead = leads.get(o.kind);
    if (lead === undefined || o.weight !== 'fix') return { observation: o, alsoInBars: [] };
    if (lead !== o) return { observation: { ...o, weight: 'watch' }, alsoInBars: [] };
    const others = observations.filter((other) => other !== o && other.kind === o.kind && other.weight === 'fix');
    const bars = others.sort((a, b) => (a.index ?? 0) - (b.index ?? 0)).map((other) => other.bar);
    return { observation: o, alsoInBars: [...new Set(bars)].filter((bar) => bar !== o.bar) };
  });
}
