import type { Caution } from '../base/index.js';
import type { ChannelSource } from './common/channel-source.js';
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

/** The mean is left where it is so much weaker than the loudest channel; two unrelated equal channels lose 3 dB: 4 dB. */
const WEAKER_RATIO = 10 ** -0.4;

/** Of the blocks that sound, so many may lose more than they would by chance before the channels count as cancelling. */
const MOST_CANCELLING = 0.1;

/** Such a block has less than this share of the power of unrelated channels. */
const CANCELLING_BLOCK_SHARE = 0.4;

/** So much further must one channel stand out from its own quiet than the mean does: 3 dB. */
const CLEARER_RATIO = 10 ** 0.3;

/** A channel that stands at full scale this often is clipped; then it counts as noisier by 20 dB. */
const CLIPPED_SHARE = 1e-3;
const FULL_SCALE = 0.999;
const CLIPPED_PENALTY = 0.01;

/** What is softer than this is no noise of a room: −120 dBFS. */
const LEAST_POWER = 1e-12;

/** Power is gathered from one block in so many: about 40 ms in every 170 ms, shorter than any note that matters. */
const METERED_EVERY = 4;

/** The mono mix and what had to be done for it. */
export interface MonoMix {
  /** mixed each time they are asked for */
  readonly samples: Samples;
  readonly cautions: readonly Caution[];
}

interface Metered {
  readonly channels: readonly PowerMeter[];
  readonly mix: PowerMeter;
  readonly replaced: number;
}

/** Mean squares around the mean, block by block: a constant offset counts as no sound. */
class PowerMeter {
  readonly blocks: number[] = [];
  #sum = 0;
  #squares = 0;
  #count = 0;
  #clipped = 0;

  add(samples: Float32Array): void {
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < samples.length; i++) {
      const value = samples[i] as number;
      sum += value;
      squares += value * value;
      if (value >= FULL_SCALE || value <= -FULL_SCALE) this.#clipped++;
    }
    this.#sum += sum;
    this.#squares += squares;
    this.#count += samples.length;
    this.blocks.push(Math.max(0, squares / samples.length - (sum / samples.length) ** 2));
  }

  power(): number {
    return Math.max(0, this.#squares / this.#count - (this.#sum / this.#count) ** 2);
  }

  /** How far what is loud stands above what is quiet, as a ratio of powers; less where it is clipped. */
  clearness(): number {
    const sorted = [...this.blocks].sort((a, b) => a - b);
    const at = (share: number): number =>
      Math.max(LEAST_POWER, sorted[Math.floor(share * (sorted.length - 1))] as number);
    const penalty = this.#clipped > CLIPPED_SHARE * this.#count ? CLIPPED_PENALTY : 1;
    return (at(0.9) / at(0.1)) * penalty;
  }
}

function addThenScale(into: Float32Array, samples: Float32Array, scale: number): void {
  for (let i = 0; i < into.length; i++) into[i] = ((into[i] as number) + (samples[i] as number)) * scale;
}

/** The mean of the given channels, made anew for whatever stretch is asked for: that costs less than the memory to keep it. */
function mixOf(source: ChannelSource, channels: readonly number[]): Samples {
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
  return { channels: meters, mix: mixMeter, replaced };
}

/**
 * @param replaced samples that were no numbers, and were set to 0
 * @returns what is said of them
 */
export function damageCautions(replaced: number): Caution[] {
  return replaced === 0 ? [] : [{ code: 'damaged-samples', facts: { samples: replaced } }];
}

type OneChannelCode = 'channels-cancel' | 'channels-cancel-at-times' | 'channels-noisier' | 'channels-unequal';

/** Why one channel is better than the mean of all, and which; null when the mean is as good. */
function better(metered: Metered): { readonly place: number; readonly why: OneChannelCode } | null {
  const powers = metered.channels.map((one) => one.power());
  const loudest = powers.indexOf(Math.max(...powers));
  const clearness = metered.channels.map((one) => one.clearness());
  const clearest = clearness.indexOf(Math.max(...clearness));
  const mixPower = metered.mix.power();
  const unrelated = sumOf(powers) / powers.length ** 2;
  if (mixPower < CANCELLING_SHARE * unrelated) {
    return { place: loudest, why: 'channels-cancel' };
  }
  if ((clearness[clearest] as number) > CLEARER_RATIO * metered.mix.clearness()) {
    return { place: clearest, why: 'channels-noisier' };
  }
  if (mixPower < WEAKER_RATIO * (powers[loudest] as number)) {
    return { place: loudest, why: 'channels-unequal' };
  }
  return cancelAtTimes(metered) ? { place: clearest, why: 'channels-cancel-at-times' } : null;
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Two microphones apart from each other hear some notes in step and some against it. */
function cancelAtTimes({ channels, mix }: Metered): boolean {
  const together = mix.blocks.map((_, block) => sumOf(channels.map(({ blocks }) => blocks[block] as number)));
  const middle = [...together].sort((a, b) => a - b)[Math.floor(together.length / 2)] as number;
  const sounding = [...together.keys()].filter((block) => (together[block] as number) >= Math.max(middle, LEAST_POWER));
  const cancelling = sounding.filter((block) => {
    const unrelated = (together[block] as number) / channels.length ** 2;
    return (mix.blocks[block] as number) < CANCELLING_BLOCK_SHARE * unrelated;
  });
  return cancelling.length > MOST_CANCELLING * sounding.length;
}

/**
 * @param source at least one channel of at least one frame, full scale = ±1
 * @returns the mean of the channels that carry sound, or the better one alone: where they cancel each other, all the time
 * or at some notes, where one is much softer, noisier or clipped
 */
export function mixToMono(source: ChannelSource): MonoMix {
  const all = [...Array(source.channels).keys()];
  const of = (heard: readonly number[], cautions: readonly Caution[]): MonoMix => ({
    samples: mixOf(source, heard),
    cautions,
  });
  if (source.channels === 1 && !source.mayBeDamaged) return of(all, []);
  const first = meter(source, all);
  const cautions = damageCautions(first.replaced);
  const powers = first.channels.map((one) => one.power());
  const empty = all.filter((channel) => (powers[channel] as number) < Math.max(...powers) * EMPTY_POWER_RATIO);
  const kept = all.filter((channel) => !empty.includes(channel));
  if (empty.length > 0) {
    const channels = empty.map((channel) => channel + 1);
    cautions.push({ code: 'channels-empty', facts: { channels, of: source.channels } });
  }
  if (kept.length === 1) return of(kept, cautions);
  const alone = better(empty.length > 0 ? meter(source, kept) : first);
  if (alone === null) return of(kept, cautions);
  const channel = kept[alone.place] as number;
  cautions.push({ code: alone.why, facts: { usedChannel: channel + 1, of: source.channels } });
  return of([channel], cautions);
}
