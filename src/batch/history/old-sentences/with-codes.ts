import { codeAsData, isCoded, type LooseCode, REASONS } from '../../../base/index.js';
import { codeOf } from './code-of.js';
import { OLD_REASONS } from './old-reasons.js';

/** Any JSON object. */
type Json = Record<string, unknown>;

const reasonOf = codeOf(OLD_REASONS, REASONS);
/** How the line of a criterion begins whose measure has no number. */
const NOT_MEASURED = /^(?:not measured|nicht gemessen): /;

/**
 * Adds the codes of reasons to a take's result that holds only sentences. A sentence that nobody knows stays alone.
 *
 * @param document a result of version 1
 * @returns the same; a document of today comes back as it is
 */
export function withCodes(document: Json): Json {
  if (isObject(document.recording) && 'cautionCodes' in document.recording) return document;
  const coded = coding(document) as Json;
  return Array.isArray(coded.criteria) ? { ...coded, criteria: coded.criteria.map(withReason) } : coded;
}

const isObject = (value: unknown): value is Json => typeof value === 'object' && value !== null;

function coding(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(coding);
  if (!isObject(value)) return value;
  const { notMeasured: said } = value;
  if (typeof said === 'string' && !('code' in value)) return { ...value, ...known(said) };
  return Object.fromEntries(Object.entries(value).map(([name, field]) => [name, coding(field)]));
}

/** A criterion that was not judged says in its line why. */
function withReason(line: unknown): unknown {
  if (!isObject(line) || typeof line.summary !== 'string' || 'reason' in line) return line;
  const reason = known(line.summary.replace(NOT_MEASURED, ''));
  return 'code' in reason ? { ...line, reason } : line;
}

function known(sentence: string): LooseCode | Record<string, never> {
  const found = reasonOf(sentence);
  if (found === null) return {};
  const coded = { code: found.code, facts: found.facts ?? {} };
  return isCoded(REASONS, coded) ? codeAsData(coded) : {};
}
