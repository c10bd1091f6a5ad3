import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { decodeTake, type Take } from '../../src/decode/index.js';
import { cautionSaid } from '../../src/words/index.js';
import { saidOf } from '../helpers/in-words.js';
import { decoderHere } from './decoder-here.js';
import { ascii } from './wav-bytes.js';

const folder = join(import.meta.dirname, '../../fixtures/takes/knock');
const bytesOf = (file: string): Uint8Array => new Uint8Array(readFileSync(join(folder, file)));

const decoder = decoderHere();
afterAll(() => decoder.close());

async function refusal(bytes: Uint8Array): Promise<{ code: string; message: string }> {
  try {
    await decodeTake(bytes, decoder);
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    const { code, message } = saidOf(error) as InputError;
    expect(message).not.toContain('\n');
    return { code, message };
  }
  throw new Error('the file was read');
}

/** Milliseconds at which the sound passes half of its loudest level. */
function tonePlace({ samples, sampleRateHz }: Take): { fromMs: number; toMs: number } {
  const all = samples.subarray();
  const step = sampleRateHz / 1000;
  const levels = Array.from({ length: Math.floor(all.length / step) - 2 }, (_, ms) => {
    const window = all.subarray(Math.round(ms * step), Math.round((ms + 2) * step));
    return Math.sqrt(window.reduce((sum, sample) => sum + sample * sample, 0) / window.length);
  });
  const half = Math.max(...levels) / 2;
  // the middle of the window of 2 ms
  return {
    fromMs: levels.findIndex((level) => level > half) + 1,
    toMs: levels.findLastIndex((level) => level > half) + 1,
  };
}

/** Frequency by counting how often the sound crosses zero between 0.3 s and 0.5 s. */
function frequency({ samples, sampleRateHz }: Take): number {
  const part = samples.subarray().subarray(Math.round(0.3 * sampleRateHz), Math.round(0.5 * sampleRateHz));
  let crossings = 0;
  for (let i = 1; i < part.length; i++) if ((part[i - 1] as number) < 0 !== (part[i] as number) < 0) crossings++;
  return crossings / 2 / 0.2;
}

// What each file holds, see fixtures/ORIGINS.md: 880 Hz from 0.25 s to 0.55 s.
describe('a sound in every format', () => {
  it.each<[string, string, string, number]>([
    ['knock.m4a', 'mp4', 'aac', 44100],
    ['knock-first.m4a', 'mp4', 'aac', 44100],
    ['knock-fragments.mp4', 'mp4', 'aac', 44100],
    ['knock-film.mov', 'mov', 'aac', 44100],
    ['knock.aac', 'aac', 'aac', 44100],
    ['knock-alac.m4a', 'mp4', 'alac', 16000],
    ['knock.mp3', 'mp3', 'mp3', 44100],
    ['knock-untagged.mp3', 'mp3', 'mp3', 44100],
    ['knock.ogg', 'ogg', 'vorbis', 44100],
    ['knock.opus', 'ogg', 'opus', 48000],
    ['knock.webm', 'matroska', 'opus', 48000],
    ['knock.flac', 'flac', 'flac', 8000],
    ['knock.aiff', 'aiff', 'pcm', 8000],
    ['knock.caf', 'caf', 'pcm', 8000],
    ['knock.amr', 'amr', 'amr', 8000],
    ['knock-wide.amr', 'amr', 'amr-wb', 16000],
    ['knock.3gp', '3gp', 'amr', 8000],
  ])('%s', async (file, container, codec, rate) => {
    const take = await decodeTake(bytesOf(file), decoder);
    expect(take).toMatchObject({ sampleRateHz: rate, channels: 1, origin: { container, codec } });
    // Nothing can sound above half the rate.
    const told = codec.startsWith('amr') ? ['speech-coding'] : rate === 8000 ? ['narrow-band'] : [];
    expect(take.cautions.map(({ code }) => code)).toEqual(told);
    const place = tonePlace(take);
    expect(Math.abs(place.fromMs - 250)).toBeLessThanOrEqual(3);
    expect(Math.abs(place.toMs - 550)).toBeLessThanOrEqual(3);
    expect(Math.abs(frequency(take) - 880)).toBeLessThanOrEqual(2.5);
  });
});

describe('what is told of it', () => {
  it('says what a codec leaves out, and what is made for speech', async () => {
    const of = async (file: string) => (await decodeTake(bytesOf(file), decoder)).origin;
    expect(await of('knock.m4a')).toMatchObject({ lossy: true, speech: false });
    expect(await of('knock-alac.m4a')).toMatchObject({ lossy: false, speech: false, onsetSpreadSeconds: 0 });
    expect(await of('knock.amr')).toMatchObject({ lossy: true, speech: true });
    // 1,286 bytes of 0.8 s, see ORIGINS.md
    expect((await of('knock.amr'))?.bitsASecond).toBeCloseTo((1286 * 8) / 0.8, -3);
  });
});

describe('what cannot be read', () => {
  it('is refused by name', async () => {
    expect(await refusal(Uint8Array.from(ascii('%PDF-1.7 and more')))).toEqual({
      code: 'not-a-recording',
      message: 'this is a PDF file; a recording is needed, as it was made or saved as WAV',
    });
    expect(await refusal(Uint8Array.from([0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11]))).toEqual({
      code: 'sound-not-read',
      message: 'this is a WMA file, which is not read; save the take as WAV or M4A',
    });
    expect((await refusal(new Uint8Array())).code).toBe('empty-file');
  });

  it('a film without sound', async () => {
    // The handler of the sound track, `soun`, made one of nothing known. Source: ISO/IEC 14496-12, 8.4.3.
    const mute = Buffer.from(bytesOf('knock.m4a'));
    mute.write('none', mute.indexOf('soun'));
    expect(await refusal(new Uint8Array(mute))).toEqual({
      code: 'sound-not-read',
      message: 'this is an M4A or MP4 file in which no sound is found; save the take as WAV or M4A',
    });
  });

  it('a coding that has no reader', async () => {
    const odd = Buffer.from(bytesOf('knock.m4a'));
    odd.write('ac-3', odd.indexOf('mp4a'));
    expect((await refusal(new Uint8Array(odd))).message).toMatch(
      /^this is an M4A or MP4 file whose sound is coded as AC-3, which is not read; /,
    );
  });

  it('a file whose end is missing, its index with it', async () => {
    const whole = bytesOf('knock.m4a');
    expect((await refusal(whole.subarray(0, 3000))).code).toBe('recording-damaged');
  });

  it('is read as far as it goes where the index comes first', async () => {
    const whole = bytesOf('knock-first.m4a');
    const take = await decodeTake(whole.subarray(0, 4500), decoder);
    expect(take.breaksOff).toBe(true);
    const [caution] = take.cautions;
    expect(caution && cautionSaid('en', caution)).toMatch(
      /^the file breaks off: it should hold 0\.8 s and holds 0\.[345] s$/,
    );
  });

  it('less than a tenth of a second', async () => {
    // a mark of 6 bytes and 4 packets of 32, 20 ms each, of which the first 5 ms are the encoder's. Source: RFC 4867, 5.
    expect(await refusal(bytesOf('knock.amr').subarray(0, 6 + 4 * 32))).toEqual({
      code: 'recording-too-short',
      message: 'the recording holds only 75 ms of sound; record or copy the take again',
    });
  });
});
