import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const layout = resolve(import.meta.dirname, '../../src/report');

/** Names of structure types, which no reader sees. Source: ISO 32000-1, 14.8.4. */
const STRUCTURE = new Set(['Figure', 'Table', 'Document', 'Sect', 'Row', 'Column']);

/** Two words, or one with a capital letter: something that is meant to be read. */
const READ = /\p{L}{2,} \p{L}|^\p{Lu}\p{Ll}+|: ?\p{L}/u;

function inlineIn(text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) return;
    const said =
      ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)
        ? node.text
        : ts.isTemplateExpression(node)
          ? [node.head.text, ...node.templateSpans.map((span) => span.literal.text)].join('')
          : '';
    if (READ.test(said) && !STRUCTURE.has(said)) found.push(said);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('x.ts', text, ts.ScriptTarget.ES2023, true));
  return found;
}

describe('words of the sheets', () => {
  const files = ['section', 'weeks'].flatMap((folder) =>
    readdirSync(join(layout, folder)).map((file) => join(layout, folder, file)),
  );

  it.each(files.map((file) => [file.slice(layout.length + 1), file] as const))(
    'stand apart from layout: %s',
    (_, file) => {
      expect(inlineIn(readFileSync(file, 'utf8'))).toEqual([]);
    },
  );

  it('would be found out', () => {
    expect(files.length).toBeGreaterThan(12);
    const template = ['const a = `Bar $', '{x}`;'].join('');
    expect(inlineIn(`${template} const b = 'to fix'; const c = 'Who'; const d = 'M1 2H3'; const e = 'H1';`)).toEqual([
      'Bar ',
      'to fix',
      'Who',
    ]);
  });
});
