import type { Caution } from '../base/index.js';
import type { ChannelSource } from './read-channel.js';
import { createScratch } from './scratch.js';
import type { Samples } from './types.js';

/** A channel this far below the loudest one carries no sound of its own: power ratio, −40 dB. */
const EMPTY_POWER_RATIO = 1e-4;

/**
 * Channels cancel when their mean has less than this share of the power it would have if they were unrelated. Two
 * unrelated channels give 1, two equal ones 2, an inverted pair 0; 0.2 is a correlation of −0.8.
 */
const CANCELLING_SHARE = 0.2;

/** Frames worked on at a time, so that they stay in the processor's cache. */
const BLOCK_FRAMES = 2048;

/** Up to so many frames, a minute and a half, are mixed once and kept: 16 MB. */
const KEPT_FRAMES = 2 ** 22;

/** Power is gathered from one block in so many: about 40 ms in every 170 ms, shorter than any note that matters. */
const METERED_EVERY = 4;

/** The mono mix and what had to be done for it. */
export interface MonoMix {
  /** of a long take mixed each time they are asked for */
  readonly samples: Samples;
  readonly cautions: readonly Caution[];
}

interface Metered {
  /** mean square around the mean of each channel: a constant offset counts as no sound */
  readonly powers: readonly number[];
  readonly mixPower: number;
  readonly replaced: number;
}

/** Mean square around the mean, gathered block by block. */
class PowerMeter {
  private sum = 0;
  private squares = 0;
  private count = 0;

  add(samples: Float32Array): void {
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < samples.length; i++) {
      const value = samples[i] as number;
      sum += value;
      squares += value * value;
    }
    this.sum += sum;
    this.squares += squares;
    this.count += samples.length;
  }

  power(): number {
    return Math.max(0, this.squares / this.count - (this.sum / this.count) ** 2);
  }
}

function addThenScale(into: Float32Array, samples: Float32Array, scale: number): void {
  for (let i = 0; i < into.length; i++) into[i] = ((into[i] as number) + (samples[i] as number)) * scale;
}

/** The mean of the given channels: of a long take made anew for whatever stretch is asked for. */
function mixOf(source: ChannelSource, channels: readonly number[]): Samples {
  const mix = mixWhenAsked(source, channels);
  return source.frames <= KEPT_FRAMES ? mix.subarray() : mix;
}

function mixWhenAsked(source: ChannelSource, channels: readonly number[]): Samples {
  const scratch = new Float32Array(BLOCK_FRAMES);
  const memory = createScratch();
  return {
    length: source.frames,
    subarray(from = 0, to = source.frames) {
      const samples = memory(to - from);
      if (channels.length === 1) {
        source.read(channels[0] as number, from, samples);
        return samples;
      }
      for (let at = 0; at < samples.length; at += BLOCK_FRAMES) {
        const block = samples.subarray(at, at + BLOCK_FRAMES);
        mixBlock(source, channels, from + at, block, scratch);
      }
      return samples;
    },
  };
}

/** One block of the mean; tells of each channel as it is read. Returns how many samples were damaged. */
function mixBlock(
  source: ChannelSource,
  channels: readonly number[],
  from: number,
  mix: Float32Array,
  scratch: Float32Array,
  onChannel: (c: number, samples: Float32Array) => void = () => {},
): number {
  const block = scratch.subarray(0, mix.length);
  let replaced = 0;
  for (let c = 0; c < channels.length; c++) {
    const target = c === 0 ? mix : block;
    replaced += source.read(channels[c] as number, from, target);
    onChannel(c, target);
    if (c > 0) addThenScale(mix, block, c === channels.length - 1 ? 1 / channels.length : 1);
  }
  return replaced;
}

/** Measures the given channels and their mix. Blocks that are not metered are read only if they may be damaged. */
function meter(source: ChannelSource, channels: readonly number[]): Metered {
  const meters = channels.map(() => new PowerMeter());
  const mixMeter = new PowerMeter();
  const [memory, scratch] = [new Float32Array(BLOCK_FRAMES), new Float32Array(BLOCK_FRAMES)];
  let replaced = 0;
  for (let from = 0, blocks = 0; from < source.frames; from += BLOCK_FRAMES, blocks++) {
    const metered = blocks % METERED_EVERY === 0;
    if (!metered && !source.mayBeDamaged) continue;
    const mix = memory.subarray(0, Math.min(BLOCK_FRAMES, source.frames - from));
    const onChannel = metered ? (c: number, of: Float32Array) => (meters[c] as PowerMeter).add(of) : undefined;
    replaced += mixBlock(source, channels, from, mix, scratch, onChannel);
    if (metered) mixMeter.add(mix);
  }
  return { powers: meters.map((one) => one.power()), mixPower: mixMeter.power(), replaced };
}

function damageCautions(samples: number): Caution[] {
  return samples === 0 ? [] : [{ code: 'damaged-samples', facts: { samples } }];
}

/**
 * @param source at least one channel of at least one frame, full scale = ±1
 * @returns the mean of the channels that carry sound; where they cancel each other, the loudest of them alone
 */
export function mixToMono(source: ChannelSource): MonoMix {
  const all = [...Array(source.channels).keys()];
  if (source.channels === 1 && !source.mayBeDamaged) return { samples: mixOf(source, all), cautions: [] };
  const first = meter(source, all);
  const cautions = damageCautions(first.replaced);
  const power = (channel: number): number => first.powers[channel] as number;
  const loudest = all.reduce((best, channel) => (power(channel) > power(best) ? channel : best), 0);
  const empty = all.filter((channel) => power(channel) < power(loudest) * EMPTY_POWER_RATIO);
  const kept = all.filter((channel) => !empty.includes(channel));
  const of = source.channels;
  if (empty.length > 0) {
    cautions.push({ code: 'channels-empty', facts: { channels: empty.map((channel) => channel + 1), of } });
  }
  if (kept.length === 1) return { samples: mixOf(source, kept), cautions };
  const mix = empty.length > 0 ? meter(source, kept) : first;
  const unrelated = mix.powers.reduce((sum, value) => sum + value, 0) / kept.length ** 2;
  if (mix.mixPower >= CANCELLING_SHARE * unrelated) return { samples: mixOf(source, kept), cautions };
  cautions.push({ code: 'channels-cancel', facts: { usedChannel: loudest + 1, of } });
  return { samples: mixOf(source, [loudest]), cautions };
}
