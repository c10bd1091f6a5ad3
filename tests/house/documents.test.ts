import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const src = resolve(import.meta.dirname, '../../src');

const rooms = readdirSync(src);
const doorOf = (room: string): string => join(src, room, 'index.ts');
/** A door that breaks the rules. */
const BROKEN = join(import.meta.dirname, 'undocumented-door.ts');

const program = ts.createProgram({
  rootNames: [...rooms.map(doorOf), BROKEN],
  options: {
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    target: ts.ScriptTarget.ES2023,
    noLib: true,
  },
});
const checker = program.getTypeChecker();

/** What is missing in the comments of everything that leaves through a door. */
function undocumented(door: string): string[] {
  const file = program.getSourceFile(door);
  const module = file && checker.getSymbolAtLocation(file);
  if (file === undefined || module === undefined) return [`${relative(src, door)}: exports nothing`];
  const head = file.text.startsWith('/**') ? [] : [`${relative(src, door)}: does not open with its conventions`];
  const exported = checker.getExportsOfModule(module);
  return [...head, ...exported.flatMap((symbol) => missing(symbol).map((what) => `${symbol.name}: ${what}`))];
}

function missing(symbol: ts.Symbol): string[] {
  const meant = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const declaration = meant.declarations?.[0];
  if (declaration === undefined) return ['cannot be found'];
  const docs = ts
    .getJSDocCommentsAndTags(declaration)
    .map((doc) => doc.getText())
    .join('\n');
  if (docs === '') return ['has no doc comment'];
  if (!ts.isFunctionDeclaration(declaration)) return [];
  const undescribed = declaration.parameters.filter((parameter) => ts.getJSDocParameterTags(parameter).length === 0);
  const silent = declaration.type?.kind === ts.SyntaxKind.VoidKeyword;
  return [
    ...undescribed.map((parameter) => `@param for ${parameter.name.getText()} is missing`),
    ...(silent || /@returns\s+\S/.test(docs) ? [] : ['@returns is missing']),
  ];
}

describe('what leaves a room', () => {
  it.each(rooms)('%s: the door says its conventions, and everything that leaves is described', (room) => {
    expect(undocumented(doorOf(room))).toEqual([]);
  });
});

describe('the check, tried on a door that breaks it', () => {
  it('finds what is missing', () => {
    const found = undocumented(BROKEN);
    expect(found.map((line) => line.split('/').at(-1)).sort()).toEqual([
      'bare: has no doc comment',
      'partly: @param for b is missing',
      'partly: @returns is missing',
      'undocumented-door.ts: does not open with its conventions',
    ]);
  });
});

describe('the length of files', () => {
  it('stays within what can be read at one sitting', () => {
    const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
    const long = files.filter((file) => readFileSync(join(src, file), 'utf8').split('\n').length > 301);
    expect(files.length).toBeGreaterThan(0);
    expect(long).toEqual([]);
  });
});
