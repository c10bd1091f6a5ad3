import ts from 'typescript';

const OPERATORS = new Map([
  [ts.SyntaxKind.LessThanToken, '<='],
  [ts.SyntaxKind.LessThanEqualsToken, '<'],
  [ts.SyntaxKind.GreaterThanToken, '>='],
  [ts.SyntaxKind.GreaterThanEqualsToken, '>'],
  [ts.SyntaxKind.EqualsEqualsEqualsToken, '!=='],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken, '==='],
  [ts.SyntaxKind.AmpersandAmpersandToken, '||'],
  [ts.SyntaxKind.BarBarToken, '&&'],
  [ts.SyntaxKind.PlusToken, '-'],
  [ts.SyntaxKind.MinusToken, '+'],
]);
const JOINS = new Set([ts.SyntaxKind.AmpersandAmpersandToken, ts.SyntaxKind.BarBarToken]);
/** A whole number below this is a count or a place rather than a size: it is changed by one. */
const COUNTS_BELOW = 10;

/**
 * Every single change to a file: a number by a fifth, a comparison by its edge, “and” for “or”, plus for minus, true for
 * false, one side of a condition dropped, a branch never taken. Types, texts and comments are left alone.
 *
 * @param path of the file, as it is to be told
 * @param source its text
 * @returns in the order of the code: what stands from `from` to `to` (characters) becomes `text`; `told` is for a reader
 */
export function mutantsOf(path, source) {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true);
  const found = [];
  const change = (node, text) => {
    const [from, to] = [node.getStart(file), node.getEnd()];
    const { line } = file.getLineAndCharacterOfPosition(from);
    const was = source.split('\n')[line].trim();
    const told = `${path}:${line + 1}  ${oneLine(source.slice(from, to))} -> ${oneLine(text)}    in: ${was}`;
    found.push({ path, from, to, text, told });
  };
  const visit = (node) => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node)) return;
    if (ts.isNumericLiteral(node)) change(node, otherNumber(Number(node.text.replaceAll('_', ''))));
    if (node.kind === ts.SyntaxKind.TrueKeyword) change(node, 'false');
    if (node.kind === ts.SyntaxKind.FalseKeyword) change(node, 'true');
    if (ts.isIfStatement(node)) change(node.expression, 'false');
    if (ts.isBinaryExpression(node)) {
      const other = OPERATORS.get(node.operatorToken.kind);
      if (other !== undefined) change(node.operatorToken, other);
      if (JOINS.has(node.operatorToken.kind)) {
        change(node, node.left.getText(file));
        change(node, node.right.getText(file));
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function otherNumber(value) {
  return String(Number.isInteger(value) && value < COUNTS_BELOW ? value + 1 : Number((value * 1.2).toPrecision(12)));
}

function oneLine(text) {
  const line = text.replaceAll(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 59)}…` : line;
}
