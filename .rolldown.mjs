// Few files start faster than many: what tsc has compiled, and the packages that are plain JavaScript, gathered by thread.
// What is opened by path (typefaces) or loaded on first use and large stays where it is.
import { readFile } from 'node:fs/promises';
import { build } from 'rolldown';

/** Where the engraving program holds its WebAssembly: as one string of seven megabytes in its script. */
const BINARY_IN_SCRIPT = /function findWasmBinary\(\)\{return binaryDecode\(.*?\)\}(?=function getBinarySync\()/s;

/**
 * Puts the WebAssembly of the engraving program in a file beside its script. As a string in the script it is read, decoded and
 * collected again by every run with pages, which takes as long as laying out three parts.
 */
const binaryApart = {
  name: 'binary-apart',
  load: {
    filter: { id: /verovio-module\.mjs$/ },
    async handler(id) {
      const script = await readFile(id, 'utf8');
      const code = script.replace(
        BINARY_IN_SCRIPT,
        "function findWasmBinary(){return require('node:fs').readFileSync(new URL('verovio.wasm',import.meta.url))}",
      );
      if (code === script)
        this.error('the engraving program no longer holds its WebAssembly where .rolldown.mjs looks');
      this.emitFile({ type: 'asset', fileName: 'verovio.wasm', source: await binaryOf(id) });
      return code;
    },
  },
};

/** The WebAssembly that a script hands to the engine when it is started. */
async function binaryOf(file) {
  const { instantiate } = WebAssembly;
  let binary;
  WebAssembly.instantiate = (bytes, imports) => {
    binary = bytes;
    return instantiate(bytes, imports);
  };
  try {
    const { default: start } = await import(file);
    await start();
  } finally {
    WebAssembly.instantiate = instantiate;
  }
  return binary;
}

await build({
  input: {
    cli: 'dist/cli/index.js',
    batch: 'dist/batch/index.js',
    worker: 'dist/batch/worker.js',
    'decoder-process': 'dist/decode/apart/decoder-process.js',
    'engraver-thread': 'dist/engrave/engraver-thread.js',
  },
  platform: 'node',
  plugins: [binaryApart],
  external: [
    ...[/^node:/, 'pdfkit', 'yaml'],
    ...[
      'node-web-audio-api',
      'mediabunny',
      'opus-decoder',
      'opusscript',
      '@audio/decode-amr',
      'essentia.js',
      '@cantoo/pdf-lib',
    ],
  ],
  output: { dir: 'dist/program', format: 'esm' },
});
