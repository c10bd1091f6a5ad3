import type { Expected, Facts, Finding, FindingKind, FindingOf } from '../judge/index.js';
import { saidOf } from './rules/said-of.js';
import type { FindingWords } from './shapes/findings.js';
import type { Words } from './shapes/words.js';

/** What a finding says to the player. */
export interface ToldFinding {
  /** one or two plain sentences; other bars in which the same shows are named after them */
  readonly text: string;
  /** one plain sentence on how to practise it; empty for praise */
  readonly practice: string;
  /** what was expected in place of what was measured; undefined where nothing is */
  readonly expected: string | undefined;
}

/**
 * @param words of one language
 * @param finding as the judges give it
 * @returns what it says
 */
export function tellFinding(words: Words, finding: Finding): ToldFinding {
  const { alsoInBars, perhapsInBars, measured } = finding;
  const said = saidOfKind(words, finding);
  const also = alsoInBars.length === 0 ? [] : [words.otherBars.also(alsoInBars)];
  const perhaps = perhapsInBars.length === 0 ? [] : [words.otherBars.perhaps(perhapsInBars)];
  return {
    text: [said.text, ...also, ...perhaps].join(' '),
    practice: said.practice,
    expected: measured?.expected && tellExpected(words, measured.expected),
  };
}

/** Kind and facts of a finding belong together, which the compiler cannot see through the union. */
function saidOfKind<K extends FindingKind>(words: Words, { kind, facts }: Pick<FindingOf<K>, 'kind' | 'facts'>) {
  const about: FindingWords<Facts[K]> = words.findings[kind];
  return { text: saidOf(about.text, facts), practice: saidOf(about.practice, facts) };
}

function tellExpected(words: Words, { code, facts }: Expected): string {
  const say = words.expected[code] as (facts: Expected['facts']) => string;
  return say(facts);
}
