import type { CodeTable, LooseCode } from '../../../base/index.js';

/** A sentence of an earlier program; the name of a fact in braces stands for the fact. */
export interface OldSentence {
  readonly code: string;
  /** facts that the sentence implies */
  readonly facts?: Readonly<Record<string, unknown>>;
  readonly en: string;
  readonly de: string;
}

const SIGNS_OF_A_PATTERN = /[.*+?^$()|[\]\\]/g;
const FACT = /\{(\w+)\}/g;
const NUMBER = String.raw`[−-]?\d+(?:[.,]\d+)?|0x[\da-f]+`;

/**
 * @param sentences of earlier programs
 * @param table codes and the facts that belong to them
 * @returns what finds the code of a sentence in either language, with its facts; null for one that is not known
 */
export function codeOf(sentences: readonly OldSentence[], table: CodeTable): (sentence: string) => LooseCode | null {
  const known = sentences.flatMap(({ code, facts = {}, en, de }) =>
    [en, de].map((form) => ({
      code,
      facts,
      fixed: form.replace(FACT, '').length,
      pattern: patternOf(form, code, table),
    })),
  );
  // The more of a sentence is fixed, the surer it is meant.
  known.sort((a, b) => b.fixed - a.fixed);
  return (sentence) => {
    for (const { code, facts, pattern } of known) {
      const found = pattern.exec(sentence);
      if (found !== null) return { code, facts: { ...facts, ...factsIn(found.groups ?? {}, table[code] ?? {}) } };
    }
    return null;
  };
}

function patternOf(form: string, code: string, table: CodeTable): RegExp {
  const pattern = form
    .replace(SIGNS_OF_A_PATTERN, String.raw`\$&`)
    .replace(FACT, (_, name: string) => `(?<${name}>${table[code]?.[name] === 'number' ? NUMBER : '.*'})`);
  return new RegExp(`^${pattern}$`, 's');
}

function factsIn(found: Readonly<Record<string, string>>, shapes: CodeTable[string]): Record<string, unknown> {
  const facts = Object.entries(found).map(([name, text]) => {
    return [name, shapes[name] === 'number' ? Number(text.replace('−', '-').replace(',', '.')) : text];
  });
  return Object.fromEntries(facts);
}
