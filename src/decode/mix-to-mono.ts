import type { ChannelSource } from './read-channel.js';

/** A channel this far below the loudest one carries no sound of its own: power ratio, −40 dB. */
const EMPTY_POWER_RATIO = 1e-4;

/**
 * Channels cancel when their mean has less than this share of the power it would have if they were unrelated. Two
 * unrelated channels give 1, two equal ones 2, an inverted pair 0; 0.2 is a correlation of −0.8.
 */
const CANCELLING_SHARE = 0.2;

/** Frames worked on at a time, so that they stay in the processor's cache. */
const BLOCK_FRAMES = 2048;

/** Power is gathered from one block in so many: about 40 ms in every 170 ms, shorter than any note that matters. */
const METERED_EVERY = 4;

/** The mono mix and what had to be done for it. */
export interface MonoMix {
  readonly samples: Float32Array;
  readonly cautions: readonly string[];
}

interface Pass {
  readonly samples: Float32Array;
  /** mean square around the mean of each channel in the mix: a constant offset counts as no sound */
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

/** Means the given channels block by block and measures each of them and the mix on the way. */
function mixPass(source: ChannelSource, channels: readonly number[]): Pass {
  const samples = new Float32Array(source.frames);
  const scratch = new Float32Array(BLOCK_FRAMES);
  const meters = channels.map(() => new PowerMeter());
  const mixMeter = new PowerMeter();
  let replaced = 0;
  for (let from = 0, blocks = 0; from < source.frames; from += BLOCK_FRAMES, blocks++) {
    const mixBlock = samples.subarray(from, from + BLOCK_FRAMES);
    const block = scratch.subarray(0, mixBlock.length);
    const metered = blocks % METERED_EVERY === 0;
    for (let c = 0; c < channels.length; c++) {
      const target = c === 0 ? mixBlock : block;
      replaced += source.read(channels[c] as number, from, target);
      if (metered) (meters[c] as PowerMeter).add(target);
      if (c > 0) addThenScale(mixBlock, block, c === channels.length - 1 ? 1 / channels.length : 1);
    }
    if (metered) mixMeter.add(mixBlock);
  }
  return { samples, powers: meters.map((meter) => meter.power()), mixPower: mixMeter.power(), replaced };
}

function readOne(source: ChannelSource, channel: number): { samples: Float32Array; replaced: number } {
  const samples = new Float32Array(source.frames);
  return { samples, replaced: source.read(channel, 0, samples) };
}

function nameOf(channel: number, count: number): string {
  return count === 2 ? `the ${channel === 0 ? 'left' : 'right'} channel` : `channel ${channel + 1}`;
}

function emptyCaution(empty: readonly number[], count: number): string {
  const names = empty.map((channel) => nameOf(channel, count)).join(', ');
  return empty.length > 1 ? `${names} are empty and were left out` : `${names} is empty and was left out`;
}

function damageCautions(replaced: number): string[] {
  if (replaced === 0) return [];
  return [`${replaced} damaged ${replaced === 1 ? 'sample was' : 'samples were'} replaced by silence`];
}

/**
 * @param source at least one channel of at least one frame, full scale = ±1
 * @returns the mean of the channels that carry sound; where they cancel each other, the loudest of them alone
 *
 * Source: definition.
 */
export function mixToMono(source: ChannelSource): MonoMix {
  if (source.channels === 1) {
    const only = readOne(source, 0);
    return { samples: only.samples, cautions: damageCautions(only.replaced) };
  }
  const all = [...Array(source.channels).keys()];
  const first = mixPass(source, all);
  const power = (channel: number): number => first.powers[channel] as number;
  const loudest = all.reduce((best, channel) => (power(channel) > power(best) ? channel : best), 0);
  const empty = all.filter((channel) => power(channel) < power(loudest) * EMPTY_POWER_RATIO);
  const kept = all.filter((channel) => !empty.includes(channel));
  const mix = empty.length > 0 ? mixPass(source, kept) : first;
  const cautions = damageCautions(first.replaced);
  if (empty.length > 0) cautions.push(emptyCaution(empty, source.channels));
  const unrelated = mix.powers.reduce((sum, value) => sum + value, 0) / kept.length ** 2;
  if (kept.length === 1 || mix.mixPower >= CANCELLING_SHARE * unrelated) return { samples: mix.samples, cautions };
  const name = nameOf(loudest, source.channels);
  cautions.push(`the channels cancel each other (one is upside down); only ${name} was used`);
  return { samples: readOne(source, loudest).samples, cautions };
}
