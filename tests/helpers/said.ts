import { criterionReason, DEFAULT_LANGUAGE, type Language } from '../../src/base/index.js';
import type { CriterionLine, Facts, Finding, Judgement, Saying } from '../../src/judge/index.js';
import { reasonSaid } from '../../src/words/index.js';
import { saidOf } from '../../src/words/rules/said-of.js';
import type { FindingWords } from '../../src/words/shapes/findings.js';
import { tellCriterion } from '../../src/words/tell-criterion.js';
import { tellFinding } from '../../src/words/tell-finding.js';
import { wordsIn } from '../../src/words/words-in.js';

/** What is said of a kind of finding. */
export function saidOfKind(language: Language, kind: keyof Facts, facts: unknown): { text: string; practice: string } {
  const words = wordsIn(language).findings[kind] as FindingWords<unknown>;
  return { text: saidOf(words.text, facts), practice: saidOf(words.practice, facts) };
}

/** What is said of a criterion, as one line. */
export function lineOf(language: Language, ...sayings: readonly Saying[]): string {
  return tellCriterion(wordsIn(language), { sayings });
}

export type SaidFinding = Finding & { readonly text: string; readonly practice: string };
export type SaidLine = CriterionLine & { readonly summary: string };

/** A judgement with its words beside its codes. */
export function said(judgement: Judgement, language: Language = DEFAULT_LANGUAGE) {
  const findings = judgement.findings.map((finding): SaidFinding => {
    const { text, practice } = tellFinding(wordsIn(language), finding);
    return { ...finding, text, practice };
  });
  const criteria = judgement.criteria.map((line): SaidLine => {
    const { reason, sayings } = line;
    const summary = reason === undefined ? lineOf(language, ...sayings) : reasonSaid(language, criterionReason(reason));
    return { ...line, summary };
  });
  return { findings, criteria };
}
