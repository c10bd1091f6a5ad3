/** How deep a document is taken apart; what lies deeper is small. */
const DEPTH = 5;
const STEP = '  ';

/**
 * The JSON text of a document, as `toJson` makes it, piece by piece, so that neither a large text nor all that it tells need be
 * in memory at once.
 *
 * @param document any result document; down to the fifth level a function in it stands for what it gives, which may also be an
 *   iterable in place of an array, and is asked when it is come to
 * @returns pieces of the text, to be joined
 *
 * Source: RFC 8259.
 */
export function* jsonPieces(document: object): Generator<string> {
  yield* piecesOf(document, '\n', DEPTH);
  yield '\n';
}

function* piecesOf(given: unknown, newLine: string, depth: number): Generator<string> {
  const value = typeof given === 'function' ? given() : given;
  if (depth === 0 || typeof value !== 'object' || value === null) yield whole(value, newLine);
  else if (Symbol.iterator in value) yield* listed(value as Iterable<unknown>, newLine, depth);
  else yield* named(value, newLine, depth);
}

/** Text in JSON holds no line break as such, so each is one between values. */
function whole(value: unknown, newLine: string): string {
  return (JSON.stringify(value, null, STEP) ?? 'null').replaceAll('\n', newLine);
}

function* listed(values: Iterable<unknown>, newLine: string, depth: number): Generator<string> {
  let before = '[';
  for (const value of values) {
    yield `${before}${newLine}${STEP}`;
    yield* piecesOf(value, newLine + STEP, depth - 1);
    before = ',';
  }
  yield before === '[' ? '[]' : `${newLine}]`;
}

function* named(value: object, newLine: string, depth: number): Generator<string> {
  let before = '{';
  for (const [name, inside] of Object.entries(value)) {
    if (inside === undefined) continue;
    yield `${before}${newLine}${STEP}${JSON.stringify(name)}: `;
    yield* piecesOf(inside, newLine + STEP, depth - 1);
    before = ',';
  }
  yield before === '{' ? '{}' : `${newLine}}`;
}
