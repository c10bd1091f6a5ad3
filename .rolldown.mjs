// Few files start faster than many: what tsc has compiled, and the packages that are plain JavaScript, gathered by thread.
// What is opened by path (typefaces) or loaded on first use and large stays where it is.
import { build } from 'rolldown';
import { lighterEngraver } from './.lighter-engraver.mjs';

await build({
  input: {
    cli: 'dist/cli/index.js',
    batch: 'dist/batch/index.js',
    worker: 'dist/batch/worker.js',
    'decoder-process': 'dist/decode/apart/decoder-process.js',
    'engraver-thread': 'dist/engrave/engraver-thread.js',
  },
  platform: 'node',
  plugins: [lighterEngraver],
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
