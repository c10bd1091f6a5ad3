// Damages files of every format in every way and prints what becomes of them; needs ffmpeg, and sox for AMR.
//   npm run drill:formats                              200 damaged files a format, some minutes
//   npm run drill:formats -- --count 20 --only aac,mp3 fewer, of some formats
// Exits with 1 when a damaged file costs another file anything.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Decoder } from '../../dist/decode/apart/decoder.js';
import { decodeTake } from '../../dist/decode/index.js';
import { reviewTake } from '../../dist/review/index.js';
import { readPart } from '../../dist/score/index.js';
import { takeOfLength } from './material.mjs';

const FORMATS = {
  'm4a-aac': ['m4a', '-c:a aac -b:a 96k'],
  'm4a-fragments': ['m4a', '-c:a aac -b:a 96k -movflags +frag_keyframe+empty_moov'],
  adts: ['aac', '-c:a aac -b:a 96k'],
  mp3: ['mp3', '-c:a libmp3lame -b:a 96k'],
  vorbis: ['ogg', '-c:a libvorbis'],
  opus: ['opus', '-c:a libopus -b:a 32k'],
  webm: ['webm', '-c:a libopus -b:a 32k'],
  flac: ['flac', '-c:a flac'],
  alac: ['m4a', '-c:a alac'],
  aiff: ['aiff', '-c:a pcm_s16be'],
  caf: ['caf', '-c:a pcm_s24le'],
  amr: ['amr', '-r 8000 -c 1 -C 7 -t amr-nb', 'sox'],
  wav: ['wav', '-c:a pcm_s16le'],
};
/** No damaged file may be worked on for longer: what is still at it then hangs. */
const SECONDS = 20;
const TAKE_SECONDS = 12;

const { values } = parseArgs({ options: { count: { type: 'string', default: '200' }, only: { type: 'string' } } });
const count = Number(values.count);
const wanted = values.only?.split(',') ?? Object.keys(FORMATS);
const folder = mkdtempSync(join(tmpdir(), 'takesheet-drill-'));

/** Numbers drawn by a seed, from 0 to below 1. Source: linear congruential generator of Numerical Recipes. */
function drawn(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Ways in which files are damaged: `at` and `size` lie within the file. */
const DAMAGES = [
  ['cut off', (bytes, at) => bytes.slice(0, at)],
  ['one byte', (bytes, at) => bytes.with(at, bytes[at] ^ 0x5a)],
  ['one byte in 97', (bytes, at) => bytes.map((byte, i) => ((i + at) % 97 === 0 ? byte ^ 0xff : byte))],
  ['one byte in 4000', (bytes, at) => bytes.map((byte, i) => ((i + at) % 4000 === 0 ? byte ^ 0xff : byte))],
  ['a stretch of zeros', (bytes, at, size) => bytes.map((byte, i) => (i >= at && i < at + size ? 0 : byte))],
  ['a stretch lacks', (bytes, at, size) => Uint8Array.from([...bytes.subarray(0, at), ...bytes.subarray(at + size)])],
  ['a stretch twice', (bytes, at, size) => Uint8Array.from([...bytes.subarray(0, at + size), ...bytes.subarray(at)])],
  ['a head of noise', (bytes, at) => bytes.map((byte, i) => (i > 11 && i < 64 ? (byte * 31 + at) & 255 : byte))],
];

function damaged(bytes, k) {
  const draw = drawn(k + 1);
  const at = Math.floor(draw() * bytes.length);
  const size = Math.min(bytes.length - at, 1 + Math.floor(draw() * 4096));
  return DAMAGES[k % DAMAGES.length][1](bytes, at, size);
}

const { score, wav: original, seconds } = takeOfLength(TAKE_SECONDS);
const part = readPart(score);
writeFileSync(join(folder, 'take.wav'), original);

async function onsetsOf(bytes) {
  const { result } = await reviewTake({
    ...{ bytes, file: 'take', part, jsonOnly: true, paper: 'a4' },
    who: { player: null, date: null, instrument: null },
    score: { file: 'score', sha256: '0'.repeat(64) },
    tool: { name: 'takesheet', version: 'drill' },
  });
  return result.notes.map((note) => note.onset);
}

/** Most memory ever held by a process, MB. Source: proc(5), VmHWM. */
function mostMegabytes(processId) {
  try {
    return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${processId}/status`, 'utf8'))[1]) / 1024;
  } catch {
    return 0;
  }
}

const share = (sorted, of) => sorted[Math.floor(of * (sorted.length - 1))];
const inOriginal = await onsetsOf(original);

async function drill(name) {
  const [ending, words, program = 'ffmpeg'] = FORMATS[name];
  const path = join(folder, `${name}.${ending}`);
  const from = join(folder, 'take.wav');
  const before = program === 'ffmpeg' ? ['-v', 'error', '-y', '-i', from] : [from];
  try {
    execFileSync(program, [...before, ...words.split(' '), path], { stdio: 'ignore' });
  } catch {
    return [name, `left out: ${program} does not write it here`, ...Array(9).fill('')];
  }
  const whole = new Uint8Array(readFileSync(path));
  const onsets = await onsetsOf(whole);
  const shifts = onsets.flatMap((onset, i) =>
    onset === undefined || inOriginal[i] === undefined ? [] : [1000 * Math.abs(onset - inOriginal[i])],
  );
  shifts.sort((a, b) => a - b);
  const entry = new URL('../../dist/program/decoder-process.js', import.meta.url);
  const decoder = new Decoder({ entry, seconds: SECONDS });
  await decodeTake(whole, decoder);
  const began = performance.now();
  for (let i = 0; i < 5; i++) await decodeTake(whole, decoder);
  const times = (5 * seconds) / ((performance.now() - began) / 1000);
  const ends = { clean: 0, cautioned: 0, refused: 0, died: 0, hung: 0, large: 0 };
  let megabytes = 0;
  const codes = { 'decoder-died': 'died', 'decoder-too-slow': 'hung', 'decoder-too-large': 'large' };
  for (let k = 0; k < count; k++) {
    try {
      const { cautions } = await decodeTake(damaged(whole, k), decoder);
      ends[cautions.length > 0 ? 'cautioned' : 'clean'] += 1;
    } catch (error) {
      if (typeof error.code !== 'string') throw error;
      ends[codes[error.code] ?? 'refused'] += 1;
    }
    megabytes = Math.max(megabytes, mostMegabytes(decoder.processId));
  }
  // After all of them the sound file is still what it was.
  const after = await decodeTake(whole, decoder);
  if (Math.abs(after.samples.length / after.sampleRateHz - seconds) > 0.1) process.exitCode = 1;
  decoder.close();
  const { clean, cautioned, refused, died, hung, large } = ends;
  return [name, clean, cautioned, refused, died, hung, large].concat([
    ...[times.toFixed(0), share(shifts, 0.5).toFixed(1), share(shifts, 0.95).toFixed(1)],
    megabytes === 0 ? '–' : megabytes.toFixed(0),
  ]);
}

const HEAD = [
  ...['format', 'read', 'read, with a caution', 'refused', 'aborts survived', 'hangs ended', 'too large, ended'],
  ...['× real time', 'onset shift, median ms', '95 of 100 within, ms', 'most memory, MB'],
];
const line = (cells) => `| ${cells.join(' | ')} |`;
console.log(`${count} damaged files a format, made from a take of ${seconds.toFixed(0)} s\n`);
console.log([line(HEAD), line(HEAD.map(() => '---'))].join('\n'));
for (const name of wanted) console.log(line(await drill(name)));
rmSync(folder, { recursive: true });
process.exit();
