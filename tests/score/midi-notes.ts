/** A note of a MIDI file: onset and length in quarters, MIDI number. */
export type TimedNote = readonly [onsetQuarters: number, lengthQuarters: number, midi: number];

interface Reader {
  readonly bytes: Uint8Array;
  at: number;
}

/**
 * @param bytes standard MIDI file with quarter-note division
 * @returns its notes over all tracks, in order of onset
 *
 * Source: Standard MIDI Files 1.0 (MIDI Association).
 */
export function midiNotes(bytes: Uint8Array): TimedNote[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const ticks = view.getUint16(12);
  const notes: TimedNote[] = [];
  for (let at = 14; at < bytes.length; at += 8 + view.getUint32(at + 4)) {
    notes.push(...trackNotes(bytes.subarray(at + 8, at + 8 + view.getUint32(at + 4)), ticks));
  }
  return notes.sort((a, b) => a[0] - b[0]);
}

function trackNotes(track: Uint8Array, ticks: number): TimedNote[] {
  const reader: Reader = { bytes: track, at: 0 };
  const notes: [number, number, number][] = [];
  const open = new Map<number, [number, number, number]>();
  let tick = 0;
  let status = 0;
  while (reader.at < track.length) {
    tick += variableLength(reader);
    if ((track[reader.at] as number) >= 0x80) status = track[reader.at++] as number;
    if (status === 0xff) reader.at++;
    if (status >= 0xf0) {
      const length = variableLength(reader);
      reader.at += length;
      continue;
    }
    const [key = 0, velocity = 0] = track.subarray(reader.at, reader.at + 2);
    const kind = status & 0xf0;
    reader.at += kind === 0xc0 || kind === 0xd0 ? 1 : 2;
    if (kind !== 0x80 && kind !== 0x90) continue;
    const sounding = open.get(key);
    if (sounding !== undefined) sounding[1] = tick / ticks - sounding[0];
    open.delete(key);
    if (kind === 0x80 || velocity === 0) continue;
    const started: [number, number, number] = [tick / ticks, 0, key];
    open.set(key, started);
    notes.push(started);
  }
  return notes;
}

function variableLength(reader: Reader): number {
  let value = 0;
  for (;;) {
    const byte = reader.bytes[reader.at++] ?? 0;
    value = (value << 7) | (byte & 0x7f);
    if (byte < 0x80) return value;
  }
}
