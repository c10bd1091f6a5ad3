import { ALL_FORMATS, BufferSource, EncodedPacketSink, Input, type InputAudioTrack } from 'mediabunny';
import { samplePlaces } from './sample-places.js';

/** One packet of coded sound. */
export interface Packet {
  readonly data: Uint8Array;
  /** seconds; what lies before 0 is there for the decoder only */
  readonly timestamp: number;
  /** seconds */
  readonly duration: number;
}

/** Coded sound taken out of its container. */
export interface Track {
  /** as the reader of the container calls it */
  readonly codec: string;
  readonly sampleRateHz: number;
  readonly channels: number;
  /** what the decoder has to know beforehand; null when each packet says it */
  readonly description: Uint8Array | null;
  /** seconds, as an index or a header says it; null when none does */
  readonly announcedSeconds: number | null;
  /** in order, as far as the file goes: `brokenOff` tells whether it went on in a way that could not be followed */
  readonly packets: () => AsyncIterable<Packet>;
  readonly brokenOff: () => boolean;
}

/** The track that sounds: a file may hold one in a coding that has no name here, which is then called by its own. */
async function soundTrack(bytes: Uint8Array): Promise<InputAudioTrack | null> {
  const input = new Input({ source: new BufferSource(bytes), formats: ALL_FORMATS });
  return input.getPrimaryAudioTrack();
}

/**
 * @param bytes a whole MP4, QuickTime, 3GP, WebM, Matroska, Ogg, MPEG stream, ADTS, MP3 or FLAC file
 * @returns its sound, still coded; null when there is none in it
 * @throws Error when the file cannot be taken apart
 */
export async function openTrack(bytes: Uint8Array): Promise<Track | null> {
  const track = await soundTrack(bytes);
  if (track === null) return null;
  const known = await track.getCodec();
  const description = known === null ? undefined : (await track.getDecoderConfig())?.description;
  let isBroken = false;
  async function* packets(): AsyncGenerator<Packet> {
    const sink = new EncodedPacketSink(track as InputAudioTrack);
    const listed = known === 'aac' ? await listedPackets(bytes, sink) : null;
    if (listed !== null) {
      yield* listed;
      return;
    }
    let count = 0;
    try {
      for await (const packet of sink.packets()) {
        yield packet;
        count++;
      }
    } catch (error) {
      if (count === 0) throw error;
      isBroken = true;
    }
  }
  return {
    codec: known ?? codeOf(track.internalCodecId),
    sampleRateHz: await track.getSampleRate(),
    channels: await track.getNumberOfChannels(),
    description: description === undefined ? null : bytesOf(description),
    announcedSeconds: await track.getDurationFromMetadata(),
    packets,
    brokenOff: () => isBroken,
  };
}

/** Packets as the index of the file lists them: the times of those between the first and the last are counted from there. */
async function listedPackets(bytes: Uint8Array, sink: EncodedPacketSink): Promise<Packet[] | null> {
  const first = await sink.getFirstPacket();
  const last = await sink.getPacket(Number.POSITIVE_INFINITY).catch(() => null);
  if (first === null || last === null) return null;
  const places = samplePlaces(bytes, first.data, last.data);
  if (places === null) return null;
  const { timestamp, duration } = first;
  return places.map(({ at, size }, i) => ({
    data: bytes.subarray(at, at + size),
    timestamp: i + 1 < places.length ? timestamp + i * duration : last.timestamp,
    duration: i + 1 < places.length ? duration : last.duration,
  }));
}

function codeOf(id: unknown): string {
  return typeof id === 'string' && /^[\w.+/-]{1,24}$/.test(id) ? id : 'unknown';
}

function bytesOf(source: AllowSharedBufferSource): Uint8Array {
  if (!ArrayBuffer.isView(source)) return new Uint8Array(source);
  return new Uint8Array(source.buffer, source.byteOffset, source.byteLength);
}
