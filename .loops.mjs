// The inner loops that work on four numbers at a time are written in AssemblyScript, a language like TypeScript that compiles to
// WebAssembly: `src/simd/loops`. They are compiled here and written down as a module, which `src/simd` loads. Compiled only when
// something has changed, because that takes some seconds.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const LOOPS = join(import.meta.dirname, 'src', 'simd', 'loops');
const MODULE = join(import.meta.dirname, 'src', 'simd', 'loops-binary.ts');
const WORDS = ['index.ts', '-O3', '--noAssert', '--runtime', 'stub', '--enable', 'simd', '--importMemory'];

/** What the loops were compiled from: their texts, how, and the version of the compiler. */
function madeFrom() {
  const { version } = createRequire(import.meta.url)('assemblyscript/package.json');
  const hash = createHash('sha256').update(JSON.stringify([version, WORDS]));
  for (const file of readdirSync(LOOPS).sort()) hash.update(file).update(readFileSync(join(LOOPS, file)));
  return hash.digest('hex');
}

/** Compiles the loops; also what the tests do first, so that they never try old ones. */
export default async function compileLoops() {
  const mark = `// from ${madeFrom()}`;
  if (existsSync(MODULE) && readFileSync(MODULE, 'utf8').startsWith(mark)) return;
  const { default: asc } = await import('assemblyscript/asc');
  let binary = null;
  const { error, stderr } = await asc.main([...WORDS, '--baseDir', LOOPS, '--outFile', 'loops.wasm'], {
    writeFile: (_, content) => {
      binary = content;
    },
  });
  if (error !== null) throw new Error(`the inner loops cannot be compiled: ${stderr}`);
  const text = Buffer.from(binary).toString('base64');
  writeFileSync(
    MODULE,
    `${mark}\n/** The inner loops as WebAssembly, in base64: compiled from \`loops/\`, never edited. */\nexport const LOOPS_BINARY: string =\n  '${text}';\n`,
  );
}

if (process.argv[1] === import.meta.filename) await compileLoops();
