import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, type TestContext } from 'vitest';
import { median } from '../../src/base/index.js';
import { decodeTake } from '../../src/decode/index.js';
import { decoderHere } from '../decode/decoder-here.js';
import { goodTake, SHORT_PART } from '../journeys/short-part.js';
import { takesheet } from '../journeys/takesheet.js';
import { inFolder, needs, printedBy } from './programs.js';

const BLACK = '-f lavfi -i color=c=black:s=64x64:r=10 -shortest -map 1:v -map 0:a';

/** How another program is asked for each format, and the ending of the file. */
const FORMATS: Readonly<Record<string, readonly [words: string, ending: string]>> = {
  flac: ['-c:a flac', 'flac'],
  'ogg-flac': ['-c:a flac', 'oga'],
  mp3: ['-c:a libmp3lame -b:a 96k', 'mp3'],
  'mp3-variable': ['-c:a libmp3lame -q:a 4', 'mp3'],
  'mp3-untagged': ['-c:a libmp3lame -b:a 96k -write_xing 0 -id3v2_version 0', 'mp3'],
  vorbis: ['-c:a libvorbis', 'ogg'],
  'vorbis-matroska': ['-c:a libvorbis', 'mkv'],
  aiff: ['-c:a pcm_s16be', 'aiff'],
  'aiff-float': ['-c:a pcm_f32be', 'aif'],
  caf: ['-c:a pcm_s24le', 'caf'],
  'caf-alac': ['-c:a alac', 'caf'],
  adts: ['-c:a aac -b:a 96k', 'aac'],
  'index-last': ['-c:a aac -b:a 96k', 'm4a'],
  'index-first': ['-c:a aac -b:a 96k -movflags +faststart', 'm4a'],
  fragments: ['-c:a aac -b:a 96k -movflags +frag_keyframe+empty_moov', 'm4a'],
  'stereo-48k': ['-ac 2 -ar 48000 -c:a aac -b:a 128k', 'm4a'],
  alac: ['-c:a alac', 'm4a'],
  'alac-fragments': ['-c:a alac -movflags +frag_keyframe+empty_moov', 'm4a'],
  film: [`${BLACK} -c:v mpeg4 -c:a aac`, 'mp4'],
  'film-quicktime': [`${BLACK} -c:v mpeg4 -c:a pcm_s16le`, 'mov'],
  'film-alac': [`${BLACK} -c:v mpeg4 -c:a alac`, 'mov'],
  'film-webm': [`${BLACK} -c:v libvpx -c:a libopus`, 'webm'],
  opus: ['-c:a libopus -b:a 48k', 'opus'],
  'opus-webm': ['-c:a libopus -b:a 32k', 'webm'],
  'opus-mp4': ['-c:a libopus -b:a 48k', 'mp4'],
  'aac-matroska': ['-c:a aac', 'mka'],
  'aac-3gp': ['-c:a aac', '3gp'],
  stream: ['-c:a aac', 'ts'],
};

interface Result {
  readonly notes: readonly { readonly status: string; readonly onset?: number }[];
}

/** One take in every format, and beside them what is damaged, reviewed in one run. */
function reviewAll(context: TestContext, look: (resultOf: (name: string) => Result, ended: Run) => void): void {
  needs(context, 'ffmpeg');
  inFolder((folder) => {
    mkdirSync(join(folder, 'takes'));
    writeFileSync(join(folder, 'part.musicxml'), SHORT_PART);
    writeFileSync(join(folder, 'takes/wav.wav'), goodTake());
    for (const [name, [words, ending]] of Object.entries(FORMATS)) {
      const to = join(folder, `takes/${name}.${ending}`);
      printedBy('ffmpeg', ['-y', '-i', join(folder, 'takes/wav.wav'), ...words.split(' '), '-bitexact', to]);
    }
    for (const [from, to] of DAMAGED) {
      const bytes = readFileSync(join(folder, 'takes', from));
      // One byte in 97 from the 40th on, its bits turned round.
      for (let at = 40; at < bytes.length; at += 97) bytes[at] = (bytes[at] as number) ^ 0xff;
      writeFileSync(join(folder, 'takes', to), bytes);
    }
    const ended = takesheet(folder, 'review', '--score', 'part.musicxml', '--out', 'out', 'takes', '--json-only');
    const read = (name: string) => JSON.parse(readFileSync(join(folder, `out/${name}.json`), 'utf8'));
    look((name) => read(`takes/${name}`) as Result, { ...ended, failures: read('section').failures });
  });
}

interface Run {
  readonly status: number | null;
  readonly failures: readonly { readonly file: string; readonly code: string; readonly message: string }[];
}

const DAMAGED = [
  ['index-last.m4a', 'damaged-1.m4a'],
  ['vorbis.ogg', 'damaged-2.ogg'],
  ['adts.aac', 'damaged-3.aac'],
  ['film-webm.webm', 'damaged-4.webm'],
] as const;

/** What may be said of a file that is damaged. */
const CODES = ['recording-damaged', 'sound-not-read', 'decoder-died', 'decoder-too-slow', 'decoder-too-large'];

describe('a folder of takes in every format, some damaged', () => {
  it('is reviewed to its end, and hears in each what it hears in the WAV file', (context) => {
    reviewAll(context, (resultOf, { status, failures }) => {
      const wav = resultOf('wav').notes;
      for (const name of Object.keys(FORMATS)) {
        const { notes } = resultOf(name);
        expect([name, notes.map((note) => note.status)]).toEqual([name, wav.map((note) => note.status)]);
        const shifts = notes.map((note, i) => Math.abs((note.onset as number) - (wav[i]?.onset as number)) * 1000);
        expect([name, median(shifts) <= 3, shifts]).toEqual([name, true, shifts]);
      }
      expect(status).toBe(1);
      expect(failures.map(({ file }) => file)).toEqual(DAMAGED.map(([, to]) => to));
      for (const { code, message } of failures) {
        expect(CODES).toContain(code);
        expect(message).toMatch(/^[^\n]{10,300}$/);
      }
    });
  });
});

/** Where packets begin in an ADTS file, and how long they are with their heads. Source: ISO/IEC 13818-7, 6.2. */
function adtsPackets(bytes: Uint8Array): { at: number; size: number }[] {
  const found: { at: number; size: number }[] = [];
  const byte = (at: number): number => bytes[at] as number;
  for (let at = 0; at + 7 < bytes.length; ) {
    const size = ((byte(at + 3) & 3) << 11) | (byte(at + 4) << 3) | (byte(at + 5) >> 5);
    found.push({ at, size });
    at += size;
  }
  return found;
}

describe('an AAC file with a few damaged packets', () => {
  it('is heard all the same, with silence in their places, and says where', async (context) => {
    needs(context, 'ffmpeg');
    const bytes = inFolder((folder) => {
      const [from, to] = [join(folder, 'take.wav'), join(folder, 'take.aac')];
      writeFileSync(from, goodTake());
      printedBy('ffmpeg', ['-y', '-i', from, '-c:a', 'aac', '-b:a', '96k', '-bitexact', to]);
      return new Uint8Array(readFileSync(to));
    });
    const decoder = decoderHere();
    const whole = await decodeTake(bytes, decoder);
    const packets = adtsPackets(bytes);
    const sick = [60, 120];
    const scratched = bytes.slice();
    for (const { at, size } of sick.map((k) => packets[k] as { at: number; size: number })) {
      for (let i = at + 7; i < at + size; i++) scratched[i] = (scratched[i] as number) ^ 0xa5;
    }
    const take = await decodeTake(scratched, decoder);
    // a packet holds 1024 samples (ISO/IEC 14496-3); the first one is left out
    const places = sick.map((k) => (k - 1) * 1024);
    const seconds = places.map((place) => Number((place / take.sampleRateHz).toFixed(1)));
    expect(take.cautions).toEqual([{ code: 'packets-lost', facts: { packets: 2, seconds } }]);
    expect(take.samples.length).toBe(whole.samples.length);
    for (const place of places) {
      expect(Math.max(...take.samples.subarray(place, place + 1024).map(Math.abs))).toBe(0);
      const [before, after] = [place - 4096, place + 4096].map((from) =>
        take.samples.subarray(from, from + 2048).slice(),
      );
      // noise that the coding only describes is drawn anew each time; the rest is the same
      for (const [heard, from] of [
        [before, place - 4096],
        [after, place + 4096],
      ] as const) {
        const own = whole.samples.subarray(from, from + 2048);
        const apart = (heard as Float32Array).map((sample, i) => Math.abs(sample - (own[i] as number)));
        expect(Math.max(...apart)).toBeLessThan(0.01);
      }
    }
    const ruined = bytes.slice();
    for (const { at, size } of packets.slice(20, 60)) {
      for (let i = at + 7; i < at + size; i++) ruined[i] = (ruined[i] as number) ^ 0xa5;
    }
    await expect(decodeTake(ruined, decoder)).rejects.toMatchObject({
      code: expect.stringMatching(/^(?:recording-damaged|decoder-died)$/),
    });
  });
});
