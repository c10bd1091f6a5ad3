import type { Articulation, Part, PartNote } from '../score/index.js';
import { firstPasses } from './first-passes.js';
import { countName } from './names.js';
import type { ArticulationPattern } from './types.js';

/** Bars with fewer notes have no pattern worth naming. */
const LEAST_NOTES = 4;

/** Notes that follow each other and are played alike. */
interface Token {
  readonly kind: 'slurred' | 'tongued' | Articulation;
  count: number;
  /** the last note of a slur carries a dot */
  readonly lastShort: boolean;
  readonly accented: boolean;
}

const WORDS: Readonly<Record<Exclude<Token['kind'], 'slurred'>, string>> = {
  tongued: 'tongued',
  staccato: 'short',
  staccatissimo: 'very short',
  tenuto: 'held',
  accent: 'accented',
  'strong-accent': 'strongly accented',
  'detached-legato': 'held but apart',
};

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
  const tokens = new Map<number, Token[]>();
  const counts = new Map<number, number>();
  for (let i = 0; i < notes.length; ) {
    const { barIndex } = notes[i] as PartNote;
    const { token, next } = tokenAt(notes, i);
    for (let k = i; k < next; k++) {
      const { barIndex: bar } = notes[k] as PartNote;
      counts.set(bar, (counts.get(bar) ?? 0) + 1);
    }
    tokens.set(barIndex, withToken(tokens.get(barIndex) ?? [], token));
    i = next;
  }
  const patterns = new Map<string, string[]>();
  for (const [barIndex, own] of tokens) {
    const mixed = own.some(({ kind }) => kind === 'slurred') && own.some(({ kind }) => kind !== 'slurred');
    const uneven = new Set(own.map(({ kind, count }) => `${kind} ${count}`)).size > 1;
    if (!(mixed || uneven) || (counts.get(barIndex) ?? 0) < LEAST_NOTES) continue;
    const words = patternWords(own);
    const bar = notes.find((note) => note.barIndex === barIndex)?.bar ?? '';
    patterns.set(words, [...(patterns.get(words) ?? []), bar]);
  }
  return [...patterns].map(([words, bars]) => ({ bars, words }));
}

function tokenAt(notes: readonly PartNote[], from: number): { token: Token; next: number } {
  const first = notes[from] as PartNote;
  let next = from + 1;
  while (notes[next - 1]?.slurredToNext && notes[next]?.slurredFromPrevious) next++;
  const last = notes[next - 1] as PartNote;
  const count = next - from;
  const accented = count > 1 && first.articulations.some((one) => one === 'accent' || one === 'strong-accent');
  const lastShort = count > 1 && last.articulations.includes('staccato');
  const kind = count > 1 ? 'slurred' : (first.articulations[0] ?? 'tongued');
  return { token: { kind, count, lastShort, accented }, next };
}

function withToken(tokens: readonly Token[], token: Token): Token[] {
  const before = tokens.at(-1);
  if (before === undefined || before.kind !== token.kind || token.kind === 'slurred') return [...tokens, token];
  return [...tokens.slice(0, -1), { ...before, count: before.count + 1 }];
}

/** Equal slurs after each other are counted. */
function patternWords(tokens: readonly Token[]): string {
  const runs: { words: string; times: number }[] = [];
  for (const token of tokens) {
    const words = tokenWords(token);
    const last = runs.at(-1);
    if (last?.words === words) last.times += 1;
    else runs.push({ words, times: 1 });
  }
  return runs.map(({ words, times }) => (times === 1 ? words : `${timesName(times)} ${words}`)).join(', ');
}

function timesName(times: number): string {
  return times === 2 ? 'twice' : `${countName(times)} times`;
}

function tokenWords({ kind, count, lastShort, accented }: Token): string {
  if (kind !== 'slurred') return `${countName(count)} ${WORDS[kind]}`;
  const signs = [...(accented ? ['accent on the first'] : []), ...(lastShort ? ['dot on the last'] : [])];
  return `${countName(count)} slurred${signs.length === 0 ? '' : ` (${signs.join(', ')})`}`;
}
