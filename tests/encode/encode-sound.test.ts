import { ALL_FORMATS, BufferSource, EncodedPacketSink, Input } from 'mediabunny';
import { OpusDecoder } from 'opus-decoder';
import { describe, expect, it } from 'vitest';
import { encodeSound } from '../../src/encode/index.js';

const OPUS_RATE_HZ = 48_000;

function sine(hz: number, rateHz: number, seconds: number, amplitude = 0.5): Float32Array {
  return Float32Array.from({ length: Math.round(rateHz * seconds) }, (_, n) => {
    return amplitude * Math.sin((2 * Math.PI * hz * n) / rateHz);
  });
}

/** Packets and facts as another program's reader of the container finds them, and the sound by another decoder of Opus. */
async function opened(bytes: Uint8Array) {
  const input = new Input({ source: new BufferSource(bytes), formats: ALL_FORMATS });
  const track = (await input.getPrimaryAudioTrack())!;
  const packets = [];
  for await (const packet of new EncodedPacketSink(track).packets()) packets.push(packet);
  const { description } = (await track.getDecoderConfig())!;
  const head = new DataView((description as Uint8Array).slice().buffer);
  const decoder = new OpusDecoder({ channels: 1, streamCount: 1, coupledStreamCount: 0, channelMappingTable: [0] });
  await decoder.ready;
  const { channelData } = decoder.decodeFrames(packets.map(({ data }) => data));
  decoder.free();
  // Source: RFC 7845, section 4.2: so many samples of 48 kHz come before the sound.
  const samples = channelData[0]!.subarray(head.getUint16(10, true));
  return { codec: track.codec, channels: track.numberOfChannels, packets, samples, head };
}

const encoded = (samples: Float32Array, sampleRateHz: number) => encodeSound({ samples, sampleRateHz });

const rms = (samples: Float32Array): number => Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
const decibels = (ratio: number): number => 20 * Math.log10(ratio);
const second = (samples: Float32Array, from: number): Float32Array =>
  samples.subarray(from * OPUS_RATE_HZ, (from + 1) * OPUS_RATE_HZ);

describe('a recording as a file to be heard', () => {
  it.each([8000, 11_025, 22_050, 44_100, 48_000, 96_000])(
    'holds a tone at its level and its pitch, from %d Hz',
    async (rateHz) => {
      const { samples, codec, channels } = await opened(encoded(sine(440, rateHz, 3), rateHz).bytes);
      expect([codec, channels]).toEqual(['opus', 1]);
      const middle = second(samples, 1);
      expect(Math.abs(decibels(rms(middle) / (0.5 / Math.SQRT2)))).toBeLessThan(0.2);
      const rises = middle.filter((x, i) => i > 0 && x >= 0 && middle[i - 1]! < 0).length;
      expect(Math.abs(rises - 440)).toBeLessThanOrEqual(1);
    },
  );

  // The sound before the click is silence: what is heard more than a tenth of the click's peak begins the click.
  it.each([22_050, 44_100, 48_000])('has every onset where it was, within 2 ms, from %d Hz', async (rateHz) => {
    const take = new Float32Array(rateHz * 8);
    const places = [0.5, 1.234, 2.9995, 5.0001, 7.777];
    for (const at of places) take.set(sine(1500, rateHz, 0.05), Math.round(at * rateHz));
    const { samples } = await opened(encoded(take, rateHz).bytes);
    for (const at of places) {
      const from = Math.round((at - 0.2) * OPUS_RATE_HZ);
      const onset = samples.subarray(from, from + OPUS_RATE_HZ / 2).findIndex((x) => Math.abs(x) > 0.05);
      expect(Math.abs((from + onset) / OPUS_RATE_HZ - at)).toBeLessThan(0.002);
    }
  });

  // Shannon 1949: what lies above half the new rate has to go, or it would fold back into hearing.
  it('leaves out what its rate cannot hold, and keeps what wind instruments sound with', async () => {
    const high = second((await opened(encoded(sine(15_000, 44_100, 3), 44_100).bytes)).samples, 1);
    expect(decibels(rms(high) / (0.5 / Math.SQRT2))).toBeLessThan(-55);
    const bright = second((await opened(encoded(sine(9000, 44_100, 3), 44_100).bytes)).samples, 1);
    expect(Math.abs(decibels(rms(bright) / (0.5 / Math.SQRT2)))).toBeLessThan(1);
  });

  it.each([1, 1439, 1441, 44_100, 441_001])('has the length of the recording, %d samples', async (length) => {
    const sound = encoded(new Float32Array(length).fill(0.1), 44_100);
    const { packets, samples } = await opened(sound.bytes);
    expect(sound.durationSeconds).toBe(length / 44_100);
    expect(samples.length / OPUS_RATE_HZ).toBeGreaterThanOrEqual(length / 44_100);
    expect(samples.length / OPUS_RATE_HZ).toBeLessThan(length / 44_100 + 0.07);
    packets.forEach((packet, i) => {
      expect(packet.duration === 0 || Math.abs(packet.duration - 0.06) < 0.0011).toBe(true);
      expect(packet.timestamp).toBeCloseTo(i * 0.06, 6);
    });
  });

  it('is about half a megabyte a minute at most, and the same each time', () => {
    const noise = Float32Array.from({ length: 44_100 * 20 }, (_, n) => Math.sin(n * n * 0.37) * 0.3);
    const [first, again] = [encoded(noise, 44_100), encoded(noise, 44_100)];
    expect(first.bytes.length * 3).toBeLessThan(500_000);
    expect(again).toEqual(first);
  });

  it('cuts off what is beyond full scale, and says nothing but what is to be heard', async () => {
    const { bytes } = encoded(sine(440, 48_000, 1, 3), 48_000);
    expect(Math.max(...(await opened(bytes)).samples)).toBeLessThan(1.5);
    // Source: RFC 9559: packets come in clusters, and those begin with 1F 43 B6 75.
    const head = Buffer.from(bytes.subarray(0, Buffer.from(bytes).indexOf('1f43b675', 'hex'))).toString('latin1');
    expect(head.match(/[A-Za-z_]{4,}/g)).toEqual(['webmB', 'webmWA', 'webm', 'A_OPUSc', 'OpusHead']);
  });
});
