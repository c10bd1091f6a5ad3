/** Where a packet lies in a file. */
export interface PacketPlace {
  readonly at: number;
  readonly size: number;
}

interface Box {
  readonly type: string;
  readonly from: number;
  readonly to: number;
}

/** A box whose first four bytes are its version and flags. */
const FULL = 4;

function* boxesIn(view: DataView, from: number, to: number): Generator<Box> {
  for (let at = from; at + 8 <= to; ) {
    const type = String.fromCharCode(...[4, 5, 6, 7].map((byte) => view.getUint8(at + byte)));
    const short = view.getUint32(at);
    const head = short === 1 ? 16 : 8;
    if (at + head > to) return;
    const size = short === 1 ? Number(view.getBigUint64(at + 8)) : short === 0 ? to - at : short;
    if (size < head || at + size > to) return;
    yield { type, from: at + head, to: at + size };
    at += size;
  }
}

/** The boxes at the end of a path of types. */
function boxesAt(view: DataView, within: Box, [type, ...more]: readonly string[]): Box[] {
  if (type === undefined) return [within];
  const found = [...boxesIn(view, within.from, within.to)].filter((box) => box.type === type);
  return found.flatMap((box) => boxesAt(view, box, more));
}

/** The places a table of samples tells, null where it leaves something open. */
function placesIn(view: DataView, table: Box): PacketPlace[] | null {
  const parts = new Map([...boxesIn(view, table.from, table.to)].map((box) => [box.type, box.from + FULL]));
  const [sizes, runs] = [parts.get('stsz'), parts.get('stsc')];
  const chunks = parts.get('stco') ?? parts.get('co64');
  if (sizes === undefined || runs === undefined || chunks === undefined) return null;
  const chunkAt = (chunk: number): number =>
    parts.has('stco') ? view.getUint32(chunks + 4 + 4 * chunk) : Number(view.getBigUint64(chunks + 4 + 8 * chunk));
  const [same, count] = [view.getUint32(sizes), view.getUint32(sizes + 4)];
  const [runCount, chunkCount] = [view.getUint32(runs), view.getUint32(chunks)];
  const places: PacketPlace[] = [];
  for (let run = 0; run < runCount; run++) {
    const here = runs + 4 + 12 * run;
    const next = run + 1 < runCount ? view.getUint32(here + 12) - 1 : chunkCount;
    const packets = view.getUint32(here + 4);
    for (let chunk = view.getUint32(here) - 1; chunk < Math.min(next, chunkCount); chunk++) {
      let at = chunkAt(chunk);
      for (let k = 0; k < packets && places.length < count; k++) {
        const size = same === 0 ? view.getUint32(sizes + 8 + 4 * places.length) : same;
        if (at + size > view.byteLength) return null;
        places.push({ at, size });
        at += size;
      }
    }
  }
  return places.length === count ? places : null;
}

/**
 * Where the packets of a track lie in a file whose index lists them all. The reader of containers looks through a whole chunk
 * for each packet of it, and some programs write one chunk a file.
 *
 * @param bytes a whole MP4, QuickTime or 3GP file
 * @param first the first packet of the track
 * @param last the last one
 * @returns the places in order; null where the file is of another kind or in fragments, or its index is not as plain as that
 *
 * Source: ISO/IEC 14496-12: moov, trak, mdia, minf, stbl; stsz, stsc, stco, co64.
 */
export function samplePlaces(bytes: Uint8Array, first: Uint8Array, last: Uint8Array): readonly PacketPlace[] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const whole = { type: '', from: 0, to: bytes.length };
  const holds = (place: PacketPlace | undefined, data: Uint8Array): boolean =>
    place !== undefined && Buffer.compare(bytes.subarray(place.at, place.at + place.size), data) === 0;
  try {
    if (boxesAt(view, whole, ['moov', 'mvex']).length > 0) return null;
    for (const table of boxesAt(view, whole, ['moov', 'trak', 'mdia', 'minf', 'stbl'])) {
      const places = placesIn(view, table);
      if (places !== null && holds(places[0], first) && holds(places.at(-1), last)) return places;
    }
    return null;
  } catch (error) {
    // A table that is longer than its file.
    if (error instanceof RangeError) return null;
    throw error;
  }
}
