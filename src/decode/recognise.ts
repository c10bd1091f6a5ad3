import type { FaultFacts } from '../base/index.js';

/** Tells what a file is that is not a WAV file, from its first bytes. */

type OtherFormat = FaultFacts<'other-format'>['format'];

interface Magic {
  readonly at: number;
  /** text of the bytes, one character a byte */
  readonly bytes: string;
  readonly format: OtherFormat;
}

/** First match wins. Source: the formats' own specifications; Sony Wave64, CAF and AU as registered by their makers. */
const MAGICS: readonly Magic[] = [
  { at: 0, bytes: 'fLaC', format: 'flac' },
  { at: 0, bytes: 'ID3', format: 'mp3' },
  { at: 0, bytes: 'OggS', format: 'ogg' },
  { at: 4, bytes: 'ftyp', format: 'mp4' },
  { at: 8, bytes: 'AIFF', format: 'aiff' },
  { at: 8, bytes: 'AIFC', format: 'aiff' },
  { at: 0, bytes: '\x30\x26\xb2\x75\x8e\x66\xcf\x11', format: 'wma' },
  { at: 0, bytes: 'RIFX', format: 'rifx' },
  { at: 0, bytes: 'riff\x2e\x91\xcf\x11', format: 'wave64' },
  { at: 0, bytes: '.snd', format: 'au' },
  { at: 0, bytes: 'caff', format: 'caf' },
  { at: 0, bytes: 'wvpk', format: 'wavpack' },
  { at: 0, bytes: '#!AMR', format: 'amr' },
  { at: 0, bytes: 'MThd', format: 'midi' },
  { at: 0, bytes: '\x1a\x45\xdf\xa3', format: 'matroska' },
  { at: 0, bytes: 'PK\x03\x04', format: 'zip' },
  { at: 0, bytes: '%PDF', format: 'pdf' },
];

const TEXT_PROBE_BYTES = 512;

function hasMagic(bytes: Uint8Array, magic: Magic): boolean {
  for (let i = 0; i < magic.bytes.length; i++) {
    if (bytes[magic.at + i] !== magic.bytes.charCodeAt(i)) return false;
  }
  return true;
}

/** MPEG audio frame header: 11 sync bits, then version and layer. Source: ISO/IEC 11172-3; layer 0 is AAC in ADTS. */
function mpegFrame(bytes: Uint8Array): OtherFormat | null {
  const second = bytes[1] ?? 0;
  if (bytes[0] !== 0xff || (second & 0xe0) !== 0xe0) return null;
  const version = (second >> 3) & 3;
  const layer = (second >> 1) & 3;
  if (version === 1) return null;
  if (layer === 0) return (second & 0xf0) === 0xf0 ? 'aac' : null;
  const bitrate = (bytes[2] ?? 0) >> 4;
  return bitrate === 15 ? null : 'mp3';
}

function isText(bytes: Uint8Array): boolean {
  const probe = bytes.subarray(0, TEXT_PROBE_BYTES);
  return probe.every((byte) => byte >= 0x20 || byte === 0x09 || byte === 0x0a || byte === 0x0d) && probe.length > 0;
}

/**
 * @param bytes a whole file that does not begin as a WAV file
 * @returns what it is, `unknown` when it cannot be told
 *
 * Source: the formats' own specifications.
 */
export function recogniseOtherFormat(bytes: Uint8Array): OtherFormat {
  const magic = MAGICS.find((candidate) => hasMagic(bytes, candidate));
  if (magic) return magic.format;
  return mpegFrame(bytes) ?? (isText(bytes) ? 'text' : 'unknown');
}
