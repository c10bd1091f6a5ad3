import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, type TestContext } from 'vitest';
import { median } from '../../src/base/index.js';
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
