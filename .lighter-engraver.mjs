import { readFile } from 'node:fs/promises';

/**
 * What is changed in the script of the engraving program when it is gathered; what it draws stays the same. Every run with
 * pages loads it anew, and loading takes longer than laying out a part.
 */
const CHANGES = [
  {
    // As a string of seven megabytes in the script, the WebAssembly is read, decoded and collected again by every run.
    what: 'the WebAssembly in a file beside the script',
    from: /function findWasmBinary\(\)\{return binaryDecode\(.*?\)\}(?=function getBinarySync\()/s,
    to: "function findWasmBinary(){return require('node:fs').readFileSync(new URL('verovio.wasm',import.meta.url))}",
  },
  {
    // Every sign of every music face is a file in its memory: two in five are of faces that are never chosen here, and the
    // folders of each are there after the first.
    what: 'only the signs of the faces in use',
    from: /=ptr=>\{(do\{.{1,200}?)FS\.createPath\("\/",PATH\.dirname\(name\),true,true\);(?=FS\.createDataFile)/,
    to:
      '=ptr=>{var made="";$1if(/^\\/data\\/(?:Gootville|Leland|Petaluma)\\//.test(name))continue;' +
      'var folder=PATH.dirname(name);if(folder!==made)FS.createPath("/",made=folder,true,true);',
  },
];

/** Makes these changes while the program is gathered, and stops where one finds nothing to change. */
export const lighterEngraver = {
  name: 'lighter-engraver',
  load: {
    filter: { id: /verovio-module\.mjs$/ },
    async handler(id) {
      const code = CHANGES.reduce(
        (script, { what, from, to }) => {
          if (!from.test(script))
            this.error(`the engraving program has changed: .lighter-engraver.mjs cannot put ${what}`);
          return script.replace(from, to);
        },
        await readFile(id, 'utf8'),
      );
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
