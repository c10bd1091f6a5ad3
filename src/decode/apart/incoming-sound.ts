import { type FaultArguments, type FileFormat, InputError } from '../../base/index.js';
import type { ChannelSource } from '../common/channel-source.js';
import { type About, type Done, type Message, PIECE_FRAMES, PIECE_HEADER_BYTES, type Refused } from './messages.js';

/** Sound decoded apart. */
export interface DecodedApart extends Done {
  /** short name of the coding */
  readonly codec: string;
  readonly sampleRateHz: number;
  /** channels in the file */
  readonly channels: number;
  /** one channel where all are the same */
  readonly source: ChannelSource;
}

/** Channels of one piece; one alone when all are the same. */
type Piece = readonly Float32Array[];

/** @throws Error when the bytes are not what they say */
function pieceOf(payload: Uint8Array<ArrayBuffer>, about: About): Piece {
  const [channels = 0] = new Uint32Array(payload.buffer, 0, 1);
  const samples = new Float32Array(payload.buffer, PIECE_HEADER_BYTES);
  const frames = samples.length / channels;
  const isWhole = (channels === 1 || channels === about.channels) && Number.isInteger(frames) && frames <= PIECE_FRAMES;
  if (!isWhole) throw new Error('this is no piece of sound');
  return Array.from({ length: channels }, (_, c) => samples.subarray(c * frames, (c + 1) * frames));
}

function sourceOf(pieces: readonly Piece[]): ChannelSource {
  const channels = Math.max(...pieces.map((piece) => piece.length));
  const frames = pieces.reduce((sum, [first]) => sum + (first?.length ?? 0), 0);
  return {
    channels,
    frames,
    mayBeDamaged: false,
    read: (channel, fromFrame, out) => {
      for (let done = 0; done < out.length; ) {
        const frame = fromFrame + done;
        const piece = pieces[Math.floor(frame / PIECE_FRAMES)] as Piece;
        const samples = (piece[channel] ?? piece[0]) as Float32Array;
        const start = frame % PIECE_FRAMES;
        const part = samples.subarray(start, start + out.length - done);
        out.set(part, done);
        done += part.length;
      }
      return 0;
    },
  };
}

const data = (payload: Uint8Array): unknown => JSON.parse(Buffer.from(payload).toString());

function refusal(format: FileFormat, { fault }: Refused): InputError {
  // What the process does not explain is a file that its readers could not follow.
  if (fault === null) return new InputError('recording-damaged', { format });
  return new InputError(...([fault.code, fault.facts] as FaultArguments));
}

/**
 * Puts sound together as it comes from the process that decodes.
 *
 * @param format what the file is
 * @param onSound told the sound once it is whole
 * @param onRefused told why there is none
 * @returns takes the next message
 * @throws Error when the messages contradict each other
 */
export function incomingSound(
  format: FileFormat,
  onSound: (sound: DecodedApart) => void,
  onRefused: (why: InputError) => void,
): (message: Message) => void {
  const pieces: Piece[] = [];
  let about: About | null = null;
  return ({ kind, payload }) => {
    if (kind === 'refused') onRefused(refusal(format, data(payload) as Refused));
    else if (kind === 'about') about = data(payload) as About;
    else if (about === null) onRefused(refusal(format, { fault: null }));
    else if (kind === 'piece') pieces.push(pieceOf(payload, about));
    else onSound({ ...about, ...(data(payload) as Done), source: sourceOf(pieces) });
  };
}
