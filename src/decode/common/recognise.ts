/** Tells what a file is from its first bytes, whatever its name says. */
import type { FileFormat } from '../../base/index.js';

/** What is done with a file of a kind: read in this process, read in one of its own, or not at all. */
export type Handling = 'here' | 'apart' | 'sound-not-read' | 'not-a-recording';

/** What a file is. */
export interface FileKind {
  readonly container: FileFormat;
  readonly handling: Handling;
}

interface Magic extends FileKind {
  readonly at: number;
  /** text of the bytes, one character a byte */
  readonly bytes: string;
}

type Row = readonly [at: number, bytes: string, container: FileFormat];

const rows = (handling: Handling, ...all: readonly Row[]): Magic[] =>
  all.map(([at, bytes, container]) => ({ at, bytes, container, handling }));

/** First match wins. Source: the formats' own specifications; Sony Wave64, CAF and AU as registered by their makers. */
const MAGICS: readonly Magic[] = [
  ...rows(
    'apart',
    [0, 'fLaC', 'flac'],
    [0, 'ID3', 'mp3'],
    [0, 'OggS', 'ogg'],
    [4, 'ftyp3g', '3gp'],
    [4, 'ftypqt', 'mov'],
    [4, 'ftyp', 'mp4'],
    [4, 'moov', 'mov'],
    [4, 'mdat', 'mov'],
    [4, 'wide', 'mov'],
    [8, 'AIFF', 'aiff'],
    [8, 'AIFC', 'aiff'],
    [0, 'caff', 'caf'],
    [0, '#!AMR\n', 'amr'],
    [0, '#!AMR-WB\n', 'amr'],
    [0, '\x1a\x45\xdf\xa3', 'matroska'],
  ),
  ...rows(
    'sound-not-read',
    [0, '\x30\x26\xb2\x75\x8e\x66\xcf\x11', 'wma'],
    [0, 'RIFX', 'rifx'],
    [0, 'riff\x2e\x91\xcf\x11', 'wave64'],
    [0, '.snd', 'au'],
    [0, 'wvpk', 'wavpack'],
    [0, '#!AMR', 'amr-of-many'],
  ),
  ...rows('not-a-recording', [0, 'MThd', 'midi'], [0, 'PK\x03\x04', 'zip'], [0, '%PDF', 'pdf']),
];

const WAV: FileKind = { container: 'wav', handling: 'here' };
const OTHER_RIFF: FileKind = { container: 'riff', handling: 'not-a-recording' };
const TEXT: FileKind = { container: 'text', handling: 'not-a-recording' };
const MP3: FileKind = { container: 'mp3', handling: 'apart' };
const ADTS: FileKind = { container: 'aac', handling: 'apart' };
const STREAM: FileKind = { container: 'mpeg-ts', handling: 'apart' };
const UNKNOWN: FileKind = { container: 'no-known-kind', handling: 'not-a-recording' };

const TEXT_PROBE_BYTES = 512;
/** Source: ISO/IEC 13818-1, transport stream packets. */
const STREAM_PACKET_BYTES = 188;

function hasBytes(bytes: Uint8Array, at: number, wanted: string): boolean {
  for (let i = 0; i < wanted.length; i++) {
    if (bytes[at + i] !== wanted.charCodeAt(i)) return false;
  }
  return true;
}

function riff(bytes: Uint8Array): FileKind | null {
  if (!['RIFF', 'RF64', 'BW64'].some((container) => hasBytes(bytes, 0, container))) return null;
  return bytes.length < 12 || hasBytes(bytes, 8, 'WAVE') ? WAV : OTHER_RIFF;
}

/** MPEG audio frame header: 11 sync bits, then version and layer. Source: ISO/IEC 11172-3; layer 0 is AAC in ADTS. */
function mpegFrame(bytes: Uint8Array): FileKind | null {
  const second = bytes[1] ?? 0;
  if (bytes[0] !== 0xff || (second & 0xe0) !== 0xe0) return null;
  const version = (second >> 3) & 3;
  const layer = (second >> 1) & 3;
  if (version === 1) return null;
  if (layer === 0) return (second & 0xf0) === 0xf0 ? ADTS : null;
  const bitrate = (bytes[2] ?? 0) >> 4;
  return bitrate === 15 ? null : MP3;
}

function transportStream(bytes: Uint8Array): FileKind | null {
  const isStream = [0, 1, 2].every((packet) => bytes[packet * STREAM_PACKET_BYTES] === 0x47);
  return isStream ? STREAM : null;
}

function text(bytes: Uint8Array): FileKind | null {
  const probe = bytes.subarray(0, TEXT_PROBE_BYTES);
  const isText = probe.every((byte) => byte >= 0x20 || byte === 0x09 || byte === 0x0a || byte === 0x0d);
  return isText && probe.length > 0 ? TEXT : null;
}

/**
 * @param bytes a file, or its first 600 bytes
 * @returns what it is
 *
 * Source: the formats' own specifications.
 */
export function recognise(bytes: Uint8Array): FileKind {
  const magic = riff(bytes) ?? MAGICS.find((candidate) => hasBytes(bytes, candidate.at, candidate.bytes));
  return magic ?? mpegFrame(bytes) ?? transportStream(bytes) ?? text(bytes) ?? UNKNOWN;
}

/**
 * @param head the first 12 bytes of a file or more
 * @returns whether they are those of sound or of a film, so that a file without a telling name is looked at; marks of two
 * bytes are not trusted here
 *
 * Source: the formats' own specifications.
 */
export function soundsLikeOne(head: Uint8Array): boolean {
  const kind = riff(head) ?? MAGICS.find((candidate) => hasBytes(head, candidate.at, candidate.bytes));
  if (kind === undefined || kind.handling === 'not-a-recording') return false;
  return !PICTURES.some((brand) => hasBytes(head, 8, brand));
}

/** Still pictures in the box structure of films. Source: ISO/IEC 23008-12 (HEIF), AV1 Image File Format. */
const PICTURES = ['heic', 'heix', 'heif', 'mif1', 'msf1', 'avif'];
