import { InputError } from '../base/index.js';

/** A stretch of the file. `size` is what the file really holds, never more. */
export interface Span {
  readonly start: number;
  readonly size: number;
}

/** The two chunks that matter, and what had to be repaired to find them. */
export interface WavChunks {
  readonly format: Span;
  readonly data: Span;
  /** audio bytes the header announces when that is more than the file holds, otherwise null */
  readonly announcedDataBytes: number | null;
  /** the recorder never filled in the length of the audio */
  readonly openEnded: boolean;
}

const CHUNK_HEADER_BYTES = 8;
const UNKNOWN_SIZE = 0xffffffff;
/** Recorders that stream write 0, 4 GB − 1, or a value at or just under 2 or 4 GB; no shorter file can mean these. */
const STREAM_SIZE_MARGIN = 0x10000;

interface DataFound extends Span {
  readonly announced: number;
  readonly openEnded: boolean;
}

function tagAt(view: DataView, at: number): string {
  return String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));
}

function looksStreamed(size: number): boolean {
  return (size >= 0x80000000 - STREAM_SIZE_MARGIN && size <= 0x80000000) || size >= UNKNOWN_SIZE - STREAM_SIZE_MARGIN;
}

/** A chunk that fills the file exactly to its end, give or take the padding byte: then an empty `data` is really empty. */
function chunksFillTheRest(view: DataView, from: number): boolean {
  let at = from;
  while (at + CHUNK_HEADER_BYTES <= view.byteLength) {
    if (!/^[ -~]{4}$/.test(tagAt(view, at))) return false;
    const size = view.getUint32(at + 4, true);
    at += CHUNK_HEADER_BYTES + size + (size & 1);
  }
  return at === view.byteLength || at === view.byteLength + 1;
}

function dataChunk(
  view: DataView,
  start: number,
  field: number,
  longSize: number | null,
  fillTheRest: () => boolean,
): DataFound {
  const available = view.byteLength - start;
  const announced = field === UNKNOWN_SIZE && longSize !== null ? longSize : field;
  const reallyEmpty = announced === 0 && fillTheRest();
  const openEnded = (announced === 0 && !reallyEmpty) || (announced > available && looksStreamed(announced));
  return { start, size: openEnded ? available : Math.min(announced, available), announced, openEnded };
}

/** Where the next chunk begins: after a padding byte when the size is odd, unless the writer plainly left it out. */
function nextChunk(view: DataView, start: number, size: number): number {
  const end = start + size;
  if (size % 2 === 0) return end;
  const unpadded = end + CHUNK_HEADER_BYTES <= view.byteLength ? tagAt(view, end) : '';
  return unpadded === 'data' || unpadded === 'fmt ' ? end : end + 1;
}

/** The 64 bit length of the audio in a `ds64` chunk: RIFF size, then data size, each low word first. */
function longDataSize(view: DataView, start: number): number {
  return view.getUint32(start + 8, true) + view.getUint32(start + 12, true) * 2 ** 32;
}

/**
 * Walks the chunks once, from front to back; every step moves on, so it ends.
 *
 * @param view the whole file, which begins with RIFF, RF64 or BW64 and WAVE
 * @returns where format and audio lie
 * @throws InputError `wav-damaged` when one of the two is missing
 *
 * Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), RIFF and WAVE;
 * EBU Tech 3306 (RF64, ds64); ITU-R BS.2088 (BW64).
 */
export function findWavChunks(view: DataView): WavChunks {
  let format: Span | null = null;
  let data: DataFound | null = null;
  let longSize: number | null = null;
  // From where it is asked first; what follows an empty chunk lies on the same way.
  let fill: boolean | null = null;
  const fillTheRest = (from: number): boolean => {
    fill ??= chunksFillTheRest(view, from);
    return fill;
  };
  let at = 12;
  while (at + CHUNK_HEADER_BYTES <= view.byteLength && !(format && data && data.size > 0)) {
    const tag = tagAt(view, at);
    const field = view.getUint32(at + 4, true);
    const start = at + CHUNK_HEADER_BYTES;
    let size = Math.min(field, view.byteLength - start);
    if (tag === 'fmt ') format ??= { start, size };
    if (tag === 'ds64' && size >= 16) longSize = longDataSize(view, start);
    if (tag === 'data' && !(data && data.size > 0)) {
      data = dataChunk(view, start, field, longSize, () => fillTheRest(start));
      size = data.size;
    }
    at = nextChunk(view, start, size);
  }
  if (!data) throw new InputError('wav-without-data-chunk');
  if (!format) {
    throw new InputError('wav-without-format-chunk');
  }
  const announcedDataBytes = !data.openEnded && data.announced > data.size ? data.announced : null;
  return { format, data: { start: data.start, size: data.size }, announcedDataBytes, openEnded: data.openEnded };
}
