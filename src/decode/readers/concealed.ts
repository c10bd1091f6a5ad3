import { InputError } from '../../base/index.js';
import { cut, type Stretch, stretchOf } from './stretch.js';

/** Beyond so many lost packets a file is damaged, and not only scratched. */
const MOST_LOST = 12;

/** How packets of one coding are decoded. */
export interface PacketDecoder<P> {
  /** frames in each */
  readonly frames: number;
  readonly channels: number;
  /** packets before it that a packet's decoder has to have seen */
  readonly warming: number;
  /** gives as many frames as the packets hold; fewer, or an Error, where one of them is damaged */
  readonly decode: (packets: readonly P[]) => Promise<Stretch>;
}

/**
 * Decodes packets, and puts silence of one packet's length where one is damaged. Which one is, is found by halves.
 *
 * @param how of their coding
 * @param onLost told as often as a packet is lost, before its silence is given
 * @returns gives the sound of the packets that follow those of the call before
 * @throws InputError where the decoder cannot work; Error when more than a few are lost
 */
export function concealing<P>(
  how: PacketDecoder<P>,
  onLost: () => void,
): (packets: readonly P[]) => AsyncGenerator<Stretch> {
  const { frames, channels, warming } = how;
  let before: readonly P[] = [];
  let lost = 0;
  return async function* decoded(packets: readonly P[]): AsyncGenerator<Stretch> {
    const all = [...before, ...packets];
    const sound = await wholeOrNull(how, all);
    if (sound !== null) {
      const own = cut(sound, before.length * frames, all.length * frames);
      before = all.slice(-warming);
      yield own;
    } else if (packets.length > 1) {
      const half = packets.length >> 1;
      yield* decoded(packets.slice(0, half));
      yield* decoded(packets.slice(half));
    } else {
      if (++lost > MOST_LOST) throw new Error('too many packets are damaged');
      onLost();
      yield stretchOf(Array.from({ length: channels }, () => new Float32Array(frames)));
    }
  };
}

async function wholeOrNull<P>({ decode, frames }: PacketDecoder<P>, packets: readonly P[]): Promise<Stretch | null> {
  try {
    const sound = await decode(packets);
    return sound.frames === packets.length * frames ? sound : null;
  } catch (error) {
    if (error instanceof InputError) throw error;
    return null;
  }
}
