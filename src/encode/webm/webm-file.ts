import { opusHead } from '../opus/opus-head.js';
import type { OpusSound } from '../opus/opus-packets.js';
import { type Bytes, element, float, lengthOf, signed, text, unsigned } from './ebml.js';

/** Elements by their names in RFC 9559 (Matroska). */
const ID = {
  EBML: 0x1a45dfa3,
  EBMLVersion: 0x4286,
  EBMLReadVersion: 0x42f7,
  EBMLMaxIDLength: 0x42f2,
  EBMLMaxSizeLength: 0x42f3,
  DocType: 0x4282,
  DocTypeVersion: 0x4287,
  DocTypeReadVersion: 0x4285,
  Segment: 0x18538067,
  SeekHead: 0x114d9b74,
  Seek: 0x4dbb,
  SeekID: 0x53ab,
  SeekPosition: 0x53ac,
  Info: 0x1549a966,
  TimestampScale: 0x2ad7b1,
  Duration: 0x4489,
  MuxingApp: 0x4d80,
  WritingApp: 0x5741,
  Tracks: 0x1654ae6b,
  TrackEntry: 0xae,
  TrackNumber: 0xd7,
  TrackUID: 0x73c5,
  TrackType: 0x83,
  FlagLacing: 0x9c,
  CodecID: 0x86,
  CodecPrivate: 0x63a2,
  CodecDelay: 0x56aa,
  SeekPreRoll: 0x56bb,
  Audio: 0xe1,
  SamplingFrequency: 0xb5,
  Channels: 0x9f,
  Cues: 0x1c53bb6b,
  CuePoint: 0xbb,
  CueTime: 0xb3,
  CueTrackPositions: 0xb7,
  CueTrack: 0xf7,
  CueClusterPosition: 0xf1,
  Cluster: 0x1f43b675,
  Timestamp: 0xe7,
  SimpleBlock: 0xa3,
  BlockGroup: 0xa0,
  Block: 0xa1,
  DiscardPadding: 0x75a2,
} as const;

const TRACK = 1;
const AUDIO_TRACK = 2;
const KEYFRAME = 0x80;
const NANOSECONDS = 1e9;
const MILLISECONDS = 1000;
/** What the decoder must hear before a place to be right there: 80 ms. Source: RFC 7845, section 4.6. */
const PRE_ROLL_SECONDS = 0.08;
/** About three seconds: a place is looked for from the beginning of its cluster on. */
const PACKETS_A_CLUSTER = 50;
/** Places in the file take so many bytes, whatever they are: then the table in front is as long as it is before they are known. */
const PLACE_BYTES = 4;
/** Names no program: the file says nothing but what is to be heard. */
const APP = 'webm';

/**
 * Puts Opus packets into a WebM file: with its length, with how much of the first packet comes before the sound and how much
 * of the last one after it, and with a table of places in front, so that a player need not look for them.
 *
 * @param sound the packets
 * @returns the file
 *
 * Source: RFC 9559 (Matroska); RFC 8794 (EBML); the WebM container guidelines; for Opus the mapping of the Matroska codec
 * specification.
 */
export function webmFile(sound: OpusSound): Uint8Array {
  const clusters = clustersOf(sound);
  const [info, tracks] = [infoOf(sound), tracksOf(sound)];
  const lengths = clusters.map(({ bytes }) => lengthOf(bytes));
  // the lengths of both tables do not depend on the places they hold
  const head = (cuesAt: number, firstCluster: number): Bytes => {
    const infoAt = lengthOf(seekHead(0, 0, 0));
    const tracksAt = infoAt + lengthOf(info);
    return [
      ...seekHead(infoAt, tracksAt, cuesAt),
      ...info,
      ...tracks,
      ...cuesOf(
        clusters.map(({ milliseconds }) => milliseconds),
        lengths,
        firstCluster,
      ),
    ];
  };
  const firstCluster = lengthOf(head(0, 0));
  const cuesAt = lengthOf(seekHead(0, 0, 0)) + lengthOf(info) + lengthOf(tracks);
  const segment = element(ID.Segment, head(cuesAt, firstCluster), ...clusters.map(({ bytes }) => bytes));
  return joined([...EBML_HEAD, ...segment]);
}

const EBML_HEAD = element(
  ID.EBML,
  unsigned(ID.EBMLVersion, 1),
  unsigned(ID.EBMLReadVersion, 1),
  unsigned(ID.EBMLMaxIDLength, 4),
  unsigned(ID.EBMLMaxSizeLength, 8),
  text(ID.DocType, 'webm'),
  unsigned(ID.DocTypeVersion, 4),
  unsigned(ID.DocTypeReadVersion, 2),
);

function seekHead(infoAt: number, tracksAt: number, cuesAt: number): Bytes {
  const seek = (id: number, place: number): Bytes =>
    element(ID.Seek, unsigned(ID.SeekID, id), unsigned(ID.SeekPosition, place, PLACE_BYTES));
  return element(ID.SeekHead, seek(ID.Info, infoAt), seek(ID.Tracks, tracksAt), seek(ID.Cues, cuesAt));
}

function infoOf({ durationSeconds }: OpusSound): Bytes {
  return element(
    ID.Info,
    unsigned(ID.TimestampScale, NANOSECONDS / MILLISECONDS),
    float(ID.Duration, durationSeconds * MILLISECONDS),
    text(ID.MuxingApp, APP),
    text(ID.WritingApp, APP),
  );
}

function tracksOf(sound: OpusSound): Bytes {
  const entry = element(
    ID.TrackEntry,
    unsigned(ID.TrackNumber, TRACK),
    unsigned(ID.TrackUID, TRACK),
    unsigned(ID.TrackType, AUDIO_TRACK),
    unsigned(ID.FlagLacing, 0),
    text(ID.CodecID, 'A_OPUS'),
    element(ID.CodecPrivate, opusHead(sound)),
    unsigned(ID.CodecDelay, Math.round(sound.delaySeconds * NANOSECONDS)),
    unsigned(ID.SeekPreRoll, PRE_ROLL_SECONDS * NANOSECONDS),
    element(ID.Audio, float(ID.SamplingFrequency, 48_000), unsigned(ID.Channels, 1)),
  );
  return element(ID.Tracks, entry);
}

function cuesOf(times: readonly number[], lengths: readonly number[], firstCluster: number): Bytes {
  let place = firstCluster;
  const points = times.map((time, i) => {
    const positions = element(
      ID.CueTrackPositions,
      unsigned(ID.CueTrack, TRACK),
      unsigned(ID.CueClusterPosition, place, PLACE_BYTES),
    );
    place += lengths[i] ?? 0;
    return element(ID.CuePoint, unsigned(ID.CueTime, time), positions);
  });
  return element(ID.Cues, ...points);
}

interface Cluster {
  /** at which it begins */
  readonly milliseconds: number;
  readonly bytes: Bytes;
}

function clustersOf({ packets, packetSeconds, delaySeconds, durationSeconds }: OpusSound): Cluster[] {
  const packetMs = packetSeconds * MILLISECONDS;
  const filling = packets.length * packetSeconds - delaySeconds - durationSeconds;
  const clusters: Cluster[] = [];
  for (let from = 0; from < packets.length; from += PACKETS_A_CLUSTER) {
    const blocks = packets.slice(from, from + PACKETS_A_CLUSTER).map((packet, i) => {
      const header = blockHeader(Math.round(i * packetMs));
      if (from + i < packets.length - 1) return element(ID.SimpleBlock, header(KEYFRAME), packet);
      const padding = signed(ID.DiscardPadding, Math.round(filling * NANOSECONDS));
      return element(ID.BlockGroup, element(ID.Block, header(0), packet), padding);
    });
    const milliseconds = Math.round(from * packetMs);
    clusters.push({ milliseconds, bytes: element(ID.Cluster, unsigned(ID.Timestamp, milliseconds), ...blocks) });
  }
  return clusters;
}

/** Track, time after the beginning of the cluster, and flags. */
function blockHeader(milliseconds: number): (flags: number) => Uint8Array {
  return (flags) => Uint8Array.of(0x80 | TRACK, milliseconds >> 8, milliseconds & 0xff, flags);
}

function joined(pieces: Bytes): Uint8Array {
  const file = new Uint8Array(lengthOf(pieces));
  let at = 0;
  for (const piece of pieces) {
    file.set(piece, at);
    at += piece.length;
  }
  return file;
}
