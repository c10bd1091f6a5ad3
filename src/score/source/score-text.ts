import { type UnzipFileFilter, unzipSync } from 'fflate';
import { InputError } from '../../base/index.js';
import { decodeText } from './decode-text.js';
import { parseXml } from './parse-xml.js';
import { childNamed, childrenNamed, type XmlElement } from './xml-element.js';

/** Largest document that is read, in bytes after inflating. An orchestral movement is about 10 MB. */
const LARGEST_DOCUMENT_BYTES = 16 * 1024 * 1024;
/** Notation programs reach about 40:1; a bomb reaches 1000:1. Small files may be anything. */
const LARGEST_RATIO = 200;
const RATIO_MATTERS_BYTES = 1024 * 1024;
const LARGEST_CONTAINER_BYTES = 64 * 1024;
/** Inflating costs time even where a false directory entry hides the size. */
const LARGEST_PACKED_BYTES = 8 * 1024 * 1024;

/**
 * The MusicXML text in a file, compressed or not; which one is told by the content.
 *
 * @param bytes whole file: XML in UTF-8 or UTF-16, or a compressed score (.mxl)
 * @returns XML text
 * @throws InputError `empty-file`, `not-musicxml` for a zip without a score, `score-refused` beyond the size limits
 *
 * Source: MusicXML 4.0, compressed .mxl files: META-INF/container.xml names the root file first.
 */
export function scoreText(bytes: Uint8Array): string {
  if (bytes.length === 0) throw new InputError('score-empty');
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
  const document = isZip ? rootFileOf(bytes) : bytes;
  if (document.length > LARGEST_DOCUMENT_BYTES) throw tooLarge(document.length);
  const text = decodeText(document);
  if (!/^\s*</.test(text)) {
    throw new InputError('score-no-xml');
  }
  return text;
}

function tooLarge(length: number): InputError {
  const megabytes = Math.ceil(length / (1024 * 1024));
  return new InputError('score-too-large', { megabytes });
}

function implausible(): InputError {
  return new InputError('score-grows', { ratio: LARGEST_RATIO });
}

function rootFileOf(zip: Uint8Array): Uint8Array {
  const container = fileIn(zip, (name) => name === 'META-INF/container.xml', LARGEST_CONTAINER_BYTES);
  const named = container === null ? null : rootFileName(parseXml(decodeText(container.content)));
  const wanted = (name: string): boolean =>
    named === null ? /\.(musicxml|xml)$/i.test(name) && !name.startsWith('META-INF/') : name === named;
  const found = fileIn(zip, wanted, LARGEST_DOCUMENT_BYTES);
  if (found !== null) return found.content;
  throw new InputError(named === null ? 'score-zip-without-score' : 'score-zip-names-nothing');
}

function rootFileName(container: XmlElement): string | null {
  const rootFiles = childNamed(container, 'rootfiles');
  const scores = (rootFiles === undefined ? [] : childrenNamed(rootFiles, 'rootfile')).filter((file) => {
    const type = file.attributes['media-type'];
    return type === undefined || type.includes('musicxml');
  });
  return scores[0]?.attributes['full-path'] ?? null;
}

/** The first wanted file. Sizes are checked on the directory entry, and the output never grows beyond that entry. */
function fileIn(
  zip: Uint8Array,
  wanted: (name: string) => boolean,
  limitBytes: number,
): { readonly content: Uint8Array } | null {
  let seen = false;
  let refused: InputError | null = null;
  const filter = (file: { name: string; size: number; originalSize: number }): boolean => {
    if (seen || !wanted(file.name)) return false;
    seen = true;
    const bomb = file.originalSize > RATIO_MATTERS_BYTES && file.originalSize > LARGEST_RATIO * file.size;
    const packedTooLarge = file.size > LARGEST_PACKED_BYTES;
    if (file.originalSize <= limitBytes && !bomb && !packedTooLarge) return true;
    refused = bomb ? implausible() : tooLarge(Math.max(file.originalSize, file.size));
    return false;
  };
  const content = Object.values(unzipped(zip, filter))[0];
  if (refused !== null) throw refused;
  return content === undefined ? null : { content };
}

function unzipped(zip: Uint8Array, filter: UnzipFileFilter): Record<string, Uint8Array> {
  try {
    return unzipSync(zip, { filter });
  } catch {
    throw new InputError('score-zip-damaged');
  }
}
