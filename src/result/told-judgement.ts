import { codeAsData, criterionReason, type Language } from '../base/index.js';
import type { CriterionLine, Facts, Finding, Judgement } from '../judge/index.js';
import { reasonSaid, tellCriterion, tellFinding, type Words, wordsIn } from '../words/index.js';
import type { ResultFinding, TakeResult } from './schema/take-result-schema.js';

/** A judgement in words. */
export interface ToldJudgement {
  readonly findings: readonly ResultFinding[];
  readonly criteria: TakeResult['criteria'];
}

/**
 * @param judgement findings and lines of criteria as codes and facts
 * @param language of the words
 * @returns the same as documents tell them; numbers are not rounded yet
 */
export function toldJudgement({ findings, criteria }: Judgement, language: Language): ToldJudgement {
  const words = wordsIn(language);
  return {
    findings: findings.map((finding) => toldFinding(words, finding)),
    criteria: criteria.map((line) => toldLine(words, language, line)),
  };
}

function toldFinding(words: Words, finding: Finding): ResultFinding {
  const { alsoInBars: _, perhapsInBars: __, facts, measured, ...place } = finding;
  const { text, practice, expected } = tellFinding(words, finding);
  const asked = expected === undefined ? {} : { expected };
  return {
    ...place,
    ...('misreading' in facts ? { misreading: facts.misreading } : {}),
    ...(measured === undefined ? {} : { measured: { value: measured.value, unit: measured.unit, ...asked } }),
    ...('cause' in facts && facts.cause !== undefined ? { cause: causeOf(facts.cause) } : {}),
    text,
    practice,
  };
}

/** What a group's unevenness goes with, as a document holds it. */
function causeOf({ causes, intervalShare, ...more }: NonNullable<Facts['uneven-group']['cause']>) {
  return { ...more, causes: [...causes], intervalShare: [...intervalShare] };
}

function toldLine(
  words: Words,
  language: Language,
  { sayings, reason, ...line }: CriterionLine,
): TakeResult['criteria'][number] {
  if (reason === undefined) return { ...line, summary: tellCriterion(words, { sayings }) };
  return { ...line, summary: reasonSaid(language, criterionReason(reason)), reason: codeAsData(reason) };
}
