import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A page in greys, 255 is white. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly greys: Uint8Array;
}

/**
 * @param pdf a PDF file
 * @param dotsPerInch resolution
 * @returns its pages as poppler paints them
 */
export function rasters(pdf: Uint8Array, dotsPerInch: number): Raster[] {
  const folder = mkdtempSync(join(tmpdir(), 'takesheet-raster-'));
  try {
    const file = join(folder, 'page.pdf');
    writeFileSync(file, pdf);
    const stream = execFileSync('pdftoppm', ['-gray', '-r', `${dotsPerInch}`, file], { maxBuffer: 2 ** 29 });
    return readGreys(stream);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Pictures one after the other. Source: Netpbm, PGM format (`P5`, width, height, greatest value, one byte a pixel). */
function readGreys(stream: Buffer): Raster[] {
  const found: Raster[] = [];
  for (let at = 0; at < stream.length; ) {
    const head = /^P5\s(\d+)\s(\d+)\s255\s/.exec(stream.subarray(at, at + 64).toString('latin1'));
    if (head === null) throw new Error('no picture where one was expected');
    const [width, height] = [Number(head[1]), Number(head[2])];
    const start = at + head[0].length;
    found.push({ width, height, greys: new Uint8Array(stream.subarray(start, start + width * height)) });
    at = start + width * height;
  }
  return found;
}
