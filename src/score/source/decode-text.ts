/**
 * Bytes of an XML document to text: byte order marks first, then the pattern of zero bytes, then the declared encoding.
 *
 * @param bytes whole document
 * @returns its text without byte order mark
 *
 * Source: XML 1.0 (Fifth Edition), appendix F, detection of character encodings.
 */
export function decodeText(bytes: Uint8Array): string {
  return new TextDecoder(encodingOf(bytes)).decode(bytes);
}

function encodingOf(bytes: Uint8Array): string {
  const [first, second] = [bytes[0], bytes[1]];
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first === 0x3c && second === 0x00) return 'utf-16le';
  if (first === 0x00 && second === 0x3c) return 'utf-16be';
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  const declared = /^\s*<\?xml[^>]*encoding\s*=\s*["']([A-Za-z0-9._-]+)["']/.exec(head)?.[1]?.toLowerCase();
  if (declared === 'iso-8859-1' || declared === 'windows-1252' || declared === 'latin1') return 'windows-1252';
  return 'utf-8';
}
