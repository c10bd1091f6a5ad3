import { type FileFormat, InputError } from '../../base/index.js';
import { recognise } from '../common/recognise.js';
import { readAac } from './aac.js';
import { findAiffSound } from './aiff.js';
import { findAlacCookie, readAlac } from './alac.js';
import { readAmr } from './amr.js';
import { amrFile } from './amr-file.js';
import { openCaf } from './caf.js';
import { readFlac } from './flac.js';
import { readDelays, readMp3 } from './mp3.js';
import { decodeNatively } from './native.js';
import { readOpus } from './opus.js';
import { readPcm } from './pcm.js';
import { refuseToldHour } from './refuse-told-hour.js';
import type { Sound, Stretch } from './stretch.js';
import { openTrack, type Track } from './track.js';

const FIRST_PAGE_BYTES = 256;
/** Files made of boxes, of which one is the index. */
const BOXED = new Set(['mp4', 'mov', '3gp']);

/** Codings an engine or a page knows by a name of its own, said as a user may have heard it; AAC has none, for what is
 * common of it is read. */
const NAMES: Readonly<Record<string, string>> = {
  ac3: 'AC-3',
  eac3: 'Enhanced AC-3',
  dts: 'DTS',
  aac: '',
  ima4: 'IMA ADPCM',
  speex: 'Speex',
};

function inCoding(track: Track, bytes: Uint8Array): Sound | null {
  const { codec, packets, description } = track;
  if (codec === 'aac') return readAac(track);
  if (codec === 'opus') return readOpus(track);
  if (codec === 'mp3') return readMp3(track, readDelays(bytes));
  if (codec === 'flac') return readFlac(track);
  if (codec === 'samr' || codec === 'sawb') return readAmr(codec === 'sawb', packets());
  if (codec === 'vorbis')
    return { codec, sampleRateHz: track.sampleRateHz, stretches: whole(bytes, track.sampleRateHz) };
  if (codec === 'alac') {
    const cookie = findAlacCookie(bytes) ?? (description?.length === 24 ? description : null);
    return cookie === null ? null : readAlac(cookie, packets);
  }
  return readPcm(track, packets);
}

async function* whole(bytes: Uint8Array, sampleRateHz: number): AsyncGenerator<Stretch> {
  yield decodeNatively(bytes, sampleRateHz);
}

/** Source: the FLAC-to-Ogg mapping (RFC 9639, 10.1); the rate is 20 bits, 10 bytes behind the header of STREAMINFO. */
function flacInOgg(bytes: Uint8Array): Sound | null {
  const page = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, FIRST_PAGE_BYTES));
  const mark = page.indexOf('fLaC');
  if (mark < 0 || mark + 22 > page.length) return null;
  const sampleRateHz = page.readUIntBE(mark + 18, 3) >> 4;
  return { codec: 'flac', sampleRateHz, stretches: whole(bytes, sampleRateHz) };
}

async function* once(data: Uint8Array): AsyncGenerator<{ data: Uint8Array }> {
  yield { data };
}

/**
 * Opens the sound of a file of any kind that is read, by what it holds.
 *
 * @param bytes a whole file
 * @returns its sound, not decoded yet
 * @throws InputError `sound-not-read` when there is no sound in it, or in a coding that is not read; `recording-too-long` when
 * the file says that it is longer than an hour; Error when the file
 * cannot be taken apart
 */
export async function openSound(bytes: Uint8Array): Promise<Sound> {
  const { container } = recognise(bytes);
  if (container === 'amr') {
    const { wide, seconds, packets } = amrFile(bytes);
    // its packets were counted, so this is no saying of an index
    refuseToldHour(seconds, Number.POSITIVE_INFINITY);
    return readAmr(wide, packets());
  }
  if (container === 'aiff') {
    const found = findAiffSound(bytes);
    if (found === null) throw new Error('no sound in it');
    return readPcm(found.format, () => once(found.data)) ?? refuse(container, found.format.codec);
  }
  const track = container === 'caf' ? openCaf(bytes) : await openTrack(bytes);
  if (track !== null) {
    const { announcedSeconds, brokenOff } = track;
    refuseToldHour(announcedSeconds, bytes.length);
    return { ...(inCoding(track, bytes) ?? refuse(container, track.codec)), announcedSeconds, brokenOff };
  }
  const flac = container === 'ogg' ? flacInOgg(bytes) : null;
  if (flac !== null) return flac;
  const lacksIndex =
    BOXED.has(container) && Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).indexOf('moov') < 0;
  if (lacksIndex) throw new Error('the file is cut off before its index');
  throw new InputError('no-sound-in-it', { format: container });
}

function refuse(format: FileFormat, codec: string): never {
  throw new InputError('coding-not-read', { format, coding: NAMES[codec] ?? codec });
}
