import { CRITERIA } from '../../brief/index.js';
import { toldReason } from '../../result/index.js';
import { withCodes } from './old-sentences/with-codes.js';

/** Any JSON object. */
type Json = Record<string, unknown>;

const NOT_KEPT = toldReason('en', { code: 'not-kept-then', facts: {} });

/**
 * Brings a result of version 1 that an earlier program wrote to the fields of today. What was not kept then is said to be
 * not measured; nothing is invented. A document of today comes back as it is.
 *
 * @param found a document with `format` take-result and `version` 1
 * @returns the document with every field of today that has an honest value
 *
 * The fields that have always been required are those of the contract in `fixtures/contract`.
 */
export function migrateResult(found: Json): Json {
  const document = withCodes(found);
  const notes = listOf(document.notes).map((note) => ({ grace: false, confidence: 0, ...note }));
  const findings = listOf(document.findings).map((finding) => ({ practice: '', ...finding }));
  const tempo = isObject(document.tempo) ? document.tempo : {};
  return {
    fit: { share: shareAsWritten(notes), offsetSemitones: 0 },
    skips: [],
    ...document,
    tempo: 'playedQuarterBpm' in tempo ? { bars: [], ...tempo } : document.tempo,
    notes,
    levels: listOf(document.levels).map((level) => ({ toIndex: level.index, ...level })),
    contrasts: listOf(document.contrasts).map((contrast) => ({ registerAdjustedDb: NOT_KEPT, ...contrast })),
    hairpins: listOf(document.hairpins).map((hairpin) => ({ slopeDbPerSecond: NOT_KEPT, ...hairpin })),
    findings,
    criteria: criteriaOf(document, findings),
  };
}

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The objects of a list; anything else is left to the check that follows. */
function listOf(value: unknown): Json[] {
  return Array.isArray(value) ? value.filter(isObject) : [];
}

function shareAsWritten(notes: readonly Json[]): number {
  return notes.length === 0 ? 0 : notes.filter((note) => note.status === 'as-written').length / notes.length;
}

/** Programs that did not say whether a criterion was judged said it in the summary. */
function criteriaOf(document: Json, findings: readonly Json[]): Json[] {
  if (Array.isArray(document.criteria)) {
    return listOf(document.criteria).map((line) => ({
      judged: !String(line.summary).startsWith('not judged'),
      ...line,
    }));
  }
  if (document.outcome !== 'reviewed') return [];
  return CRITERIA.map((criterion) => {
    const count = (weight: string) =>
      findings.filter((finding) => finding.criterion === criterion && finding.weight === weight).length;
    return { criterion, judged: true, fix: count('fix'), watch: count('watch'), summary: NOT_KEPT.notMeasured };
  });
}
