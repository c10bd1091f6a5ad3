import { InputError } from '../../base/index.js';
import { compiledTakeResult, type SectionRecord, sectionRecordSchema, type TakeResult } from '../../result/index.js';
import { migrateResult } from './migrate-result.js';
import { refuseUnbounded } from './refuse-unbounded.js';

/** The versions of documents that are read. */
const READ_VERSION = 1;
/** Letters of the name and version of a program. */
const LONGEST_WRITER = 100;

/** What a JSON file holds; null when it is none of ours, or none that says how somebody played. */
export type HistoryDocument =
  | { readonly kind: 'take'; readonly result: TakeResult }
  | { readonly kind: 'section'; readonly section: SectionRecord }
  | null;

/**
 * Reads one JSON file of the record.
 *
 * @param bytes the file, UTF-8
 * @returns a take's result, brought to the fields of today, or a section's
 * @throws InputError `bad-result`: broken, of another version, or not as its own schema says
 *
 * Source: RFC 8259 for JSON.
 */
export function readDocument(bytes: Uint8Array): HistoryDocument {
  const document = parse(bytes);
  if (typeof document !== 'object' || document === null || !('format' in document)) return null;
  const { format } = document;
  if (format !== 'take-result' && format !== 'section-result') return null;
  refuseOtherVersions(document);
  refuseUnbounded(document);
  if (format === 'take-result') {
    return { kind: 'take', result: checked(compiledTakeResult(), migrateResult({ ...document })) };
  }
  return { kind: 'section', section: checked(sectionRecordSchema, document) };
}

function parse(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw new InputError('result-cut-off');
  }
}

function refuseOtherVersions(document: object): void {
  const version = 'version' in document ? document.version : undefined;
  if (version === READ_VERSION) return;
  throw new InputError('result-of-other-version', {
    version: typeof version === 'number' ? String(version) : '',
    tool: writerOf(document),
    readVersion: READ_VERSION,
  });
}

/** Name and version of the program that wrote a document, empty when it does not say. */
function writerOf(document: object): string {
  const tool = 'tool' in document ? document.tool : null;
  if (typeof tool !== 'object' || tool === null || !('name' in tool) || !('version' in tool)) return '';
  return `${String(tool.name)} ${String(tool.version)}`.slice(0, LONGEST_WRITER);
}

/** The part of a schema that is used here. */
interface Schema<T> {
  safeParse(
    value: unknown,
  ):
    | { success: true; data: T }
    | { success: false; error: { issues: readonly { path: readonly PropertyKey[]; message: string }[] } };
}

function checked<T>(schema: Schema<T>, document: unknown): T {
  const read = schema.safeParse(document);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const place = issue?.path.map(String).join('.') ?? '';
  throw new InputError('result-against-schema', { place });
}
