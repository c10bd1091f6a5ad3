/** Tells what a file is that is not a WAV file, from its first bytes. */

interface Magic {
  readonly at: number;
  /** text of the bytes, one character a byte */
  readonly bytes: string;
  /** with its article, as said to the user */
  readonly name: string;
}

/** First match wins. Source: the formats' own specifications; Sony Wave64, CAF and AU as registered by their makers. */
const MAGICS: readonly Magic[] = [
  { at: 0, bytes: 'fLaC', name: 'a FLAC file' },
  { at: 0, bytes: 'ID3', name: 'an MP3 file' },
  { at: 0, bytes: 'OggS', name: 'an Ogg file' },
  { at: 4, bytes: 'ftyp', name: 'an M4A or MP4 file' },
  { at: 8, bytes: 'AIFF', name: 'an AIFF file' },
  { at: 8, bytes: 'AIFC', name: 'an AIFF file' },
  { at: 0, bytes: '\x30\x26\xb2\x75\x8e\x66\xcf\x11', name: 'a WMA file' },
  { at: 0, bytes: 'RIFX', name: 'a big-endian WAV file (RIFX)' },
  { at: 0, bytes: 'riff\x2e\x91\xcf\x11', name: 'a Wave64 file' },
  { at: 0, bytes: '.snd', name: 'an AU file' },
  { at: 0, bytes: 'caff', name: 'a CAF file' },
  { at: 0, bytes: 'wvpk', name: 'a WavPack file' },
  { at: 0, bytes: '#!AMR', name: 'an AMR file' },
  { at: 0, bytes: 'MThd', name: 'a MIDI file' },
  { at: 0, bytes: '\x1a\x45\xdf\xa3', name: 'a WebM or Matroska file' },
  { at: 0, bytes: 'PK\x03\x04', name: 'a ZIP archive' },
  { at: 0, bytes: '%PDF', name: 'a PDF file' },
];

const TEXT_PROBE_BYTES = 512;

function hasMagic(bytes: Uint8Array, magic: Magic): boolean {
  for (let i = 0; i < magic.bytes.length; i++) {
    if (bytes[magic.at + i] !== magic.bytes.charCodeAt(i)) return false;
  }
  return true;
}

/** MPEG audio frame header: 11 sync bits, then version and layer. Source: ISO/IEC 11172-3; layer 0 is AAC in ADTS. */
function mpegFrame(bytes: Uint8Array): string | null {
  const second = bytes[1] ?? 0;
  if (bytes[0] !== 0xff || (second & 0xe0) !== 0xe0) return null;
  const version = (second >> 3) & 3;
  const layer = (second >> 1) & 3;
  if (version === 1) return null;
  if (layer === 0) return (second & 0xf0) === 0xf0 ? 'an AAC file' : null;
  const bitrate = (bytes[2] ?? 0) >> 4;
  return bitrate === 15 ? null : 'an MP3 file';
}

function isText(bytes: Uint8Array): boolean {
  const probe = bytes.subarray(0, TEXT_PROBE_BYTES);
  return probe.every((byte) => byte >= 0x20 || byte === 0x09 || byte === 0x0a || byte === 0x0d) && probe.length > 0;
}

/**
 * @param bytes a whole file that does not begin as a WAV file
 * @returns what it is, with its article ("a FLAC file"), or null when it cannot be told
 *
 * Source: the formats' own specifications.
 */
export function recogniseOtherFormat(bytes: Uint8Array): string | null {
  const magic = MAGICS.find((candidate) => hasMagic(bytes, candidate));
  if (magic) return magic.name;
  return mpegFrame(bytes) ?? (isText(bytes) ? 'a text file' : null);
}
