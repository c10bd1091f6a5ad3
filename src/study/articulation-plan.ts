import type { Part, PartNote } from '../score/index.js';
import { firstPasses } from './first-passes.js';
import type { ArticulationGroup, ArticulationPattern } from './types.js';

/** Bars with fewer notes have no pattern worth naming. */
const LEAST_NOTES = 4;

/**
 * How the bars are tongued and slurred, where slurs and single tongues mix; bars of the same pattern together.
 *
 * @param part the part
 * @returns patterns in the order in which they first come
 *
 * Source: common practice.
 */
export function articulationPlan(part: Part): ArticulationPattern[] {
  const notes = firstPasses(part).filter((note) => !note.grace);
  const groups = new Map<number, ArticulationGroup[]>();
  const counts = new Map<number, number>();
  for (let i = 0; i < notes.length; ) {
    const { barIndex } = notes[i] as PartNote;
    const { group, next } = groupAt(notes, i);
    for (let k = i; k < next; k++) {
      const { barIndex: bar } = notes[k] as PartNote;
      counts.set(bar, (counts.get(bar) ?? 0) + 1);
    }
    groups.set(barIndex, withGroup(groups.get(barIndex) ?? [], group));
    i = next;
  }
  const patterns = new Map<string, { bars: string[]; groups: ArticulationGroup[] }>();
  for (const [barIndex, own] of groups) {
    const mixed = own.some(({ kind }) => kind === 'slurred') && own.some(({ kind }) => kind !== 'slurred');
    const uneven = new Set(own.map(({ kind, count }) => `${kind} ${count}`)).size > 1;
    if (!(mixed || uneven) || (counts.get(barIndex) ?? 0) < LEAST_NOTES) continue;
    const bar = notes.find((note) => note.barIndex === barIndex)?.bar ?? '';
    const pattern = counted(own);
    const known = patterns.get(JSON.stringify(pattern));
    if (known === undefined) patterns.set(JSON.stringify(pattern), { bars: [bar], groups: pattern });
    else known.bars.push(bar);
  }
  return [...patterns.values()];
}

function groupAt(notes: readonly PartNote[], from: number): { group: ArticulationGroup; next: number } {
  const first = notes[from] as PartNote;
  let next = from + 1;
  while (notes[next - 1]?.slurredToNext && notes[next]?.slurredFromPrevious) next++;
  const last = notes[next - 1] as PartNote;
  const count = next - from;
  const accentOnFirst = count > 1 && first.articulations.some((one) => one === 'accent' || one === 'strong-accent');
  const dotOnLast = count > 1 && last.articulations.includes('staccato');
  const kind = count > 1 ? 'slurred' : (first.articulations[0] ?? 'tongued');
  return { group: { kind, count, accentOnFirst, dotOnLast, times: 1 }, next };
}

/** Single notes of one kind join; every slur stands by itself. */
function withGroup(groups: readonly ArticulationGroup[], group: ArticulationGroup): ArticulationGroup[] {
  const before = groups.at(-1);
  if (before === undefined || before.kind !== group.kind || group.kind === 'slurred') return [...groups, group];
  return [...groups.slice(0, -1), { ...before, count: before.count + 1 }];
}

/** Equal slurs after each other are counted. */
function counted(groups: readonly ArticulationGroup[]): ArticulationGroup[] {
  const runs: ArticulationGroup[] = [];
  for (const group of groups) {
    const last = runs.at(-1);
    const same = last !== undefined && JSON.stringify({ ...last, times: 1 }) === JSON.stringify(group);
    if (same) runs[runs.length - 1] = { ...last, times: last.times + 1 };
    else runs.push(group);
  }
  return runs;
}
