// Prints how fast takesheet is and how much memory it takes, beside other programs on the same files in the same session.
//   npm run bench                          everything, some minutes
//   npm run bench -- --quick               short takes, few of them
//   npm run bench -- --only stages,length  some of: stages, score, length, number, round
//   npm run bench -- --lengths 30,600 --counts 1,50    other lengths in seconds, other numbers of takes
//   npm run bench -- --only round --rounds 10,200      other numbers of takes of a minute
// Seconds are those of the processor where nothing else is said, so that a busy machine does not count.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { alignTake } from '../../dist/align/index.js';
import { runStudy } from '../../dist/batch/index.js';
import { decodeWav } from '../../dist/decode/index.js';
import { listen } from '../../dist/features/index.js';
import { judgeTake } from '../../dist/judge/index.js';
import { measureTake } from '../../dist/measure/index.js';
import { readPart } from '../../dist/score/index.js';
import { folderOfTakes, takeOfLength } from './material.mjs';
import { cpuSecondsOfProgram, PRAAT_SCRIPT, YARDSTICKS } from './yardsticks.mjs';

const TABLES = ['stages', 'score', 'length', 'number', 'round'];
const list = { type: 'string' };
const { values } = parseArgs({
  options: { quick: { type: 'boolean', default: false }, only: list, lengths: list, counts: list, rounds: list },
});
const numbersOf = (text) => text?.split(',').map(Number);
const wanted = values.only?.split(',') ?? TABLES;
const unknown = wanted.find((name) => !TABLES.includes(name));
if (unknown !== undefined) throw new Error(`there is no table "${unknown}"; there are: ${TABLES.join(', ')}`);

const STAGE_TAKE_SECONDS = values.quick ? 30 : 180;
const LENGTHS = numbersOf(values.lengths) ?? (values.quick ? [30, 60] : [30, 60, 180, 600, 1800]);
const COUNTS = numbersOf(values.counts) ?? (values.quick ? [1, 10] : [1, 10, 100, 500]);
const ROUNDS = numbersOf(values.rounds) ?? (values.quick ? [4] : [10, 50, 200]);
const SHORT_TAKE_SECONDS = 10;
const ROUND_TAKE_SECONDS = 60;
const REPEATS = 3;

const folder = mkdtempSync(join(tmpdir(), 'takesheet-bench-'));
const middle = (all) => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)];
const inMinutes = (seconds) => (seconds < 90 ? `${seconds.toFixed(0)} s` : `${(seconds / 60).toFixed(1)} min`);
const rate = (audioSeconds, seconds) => {
  const times = audioSeconds / seconds;
  return times < 100 ? times.toFixed(1) : times.toFixed(0);
};

function printTable(title, head, rows) {
  const line = (cells) => `| ${cells.join(' | ')} |`;
  console.log(`\n${title}\n\n${[head, head.map(() => '---'), ...rows].map(line).join('\n')}`);
}

const cpuSeconds = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Seconds of the processor for one run, the mean of as many as make half a second, after one that warms up. */
function secondsOf(work) {
  let result = work();
  let runs = 0;
  const begin = cpuSeconds();
  while (runs < REPEATS || cpuSeconds() - begin < 0.5) {
    result = work();
    runs += 1;
  }
  return { seconds: (cpuSeconds() - begin) / runs, result };
}

function review(scorePath, takes, jobs, format) {
  const script = fileURLToPath(new URL('review-in-process.mjs', import.meta.url));
  const words = [script, scorePath, takes, join(folder, 'out'), String(jobs), format];
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
  const outMegabytes = status === 0 ? megabytesIn(join(folder, 'out')) : 0;
  rmSync(join(folder, 'out'), { recursive: true, force: true });
  if (status !== 0) throw new Error(stderr);
  const ended = JSON.parse(stdout);
  if (ended.reviewed !== ended.takes) throw new Error(`${ended.reviewed} of ${ended.takes} takes could be reviewed`);
  return { ...ended, outMegabytes };
}

function megabytesIn(place) {
  const entries = readdirSync(place, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return entries.reduce((sum, entry) => sum + statSync(join(entry.parentPath, entry.name)).size, 0) / 2 ** 20;
}

/** The take of the stages in a folder of its own, as the review wants it. */
function writeTake(name, { score, wav }) {
  const place = join(folder, name);
  mkdirSync(join(place, 'takes'), { recursive: true });
  writeFileSync(join(place, 'score.musicxml'), score);
  writeFileSync(join(place, 'takes', 'take.wav'), wav);
  return {
    scorePath: join(place, 'score.musicxml'),
    takes: join(place, 'takes'),
    wavPath: join(place, 'takes', 'take.wav'),
  };
}

/** The study sheet of a score: seconds of its first drawing in a process, which loads the engraver, and of the next. */
async function studySheets(scorePath) {
  const request = { tool: { name: 'takesheet', version: 'bench' }, scorePath, format: 'pdf', paper: 'a4' };
  const drawn = [];
  for (const name of ['first.pdf', 'next.pdf']) {
    const begin = cpuSeconds();
    await runStudy({ ...request, out: join(folder, name) });
    drawn.push(cpuSeconds() - begin);
  }
  return drawn;
}

async function stages() {
  const made = takeOfLength(STAGE_TAKE_SECONDS);
  const { scorePath, takes, wavPath } = writeTake('stages', made);
  const score = secondsOf(() => readPart(made.score));
  const part = score.result;
  const pitches = part.notes.map((note) => note.soundingMidi);
  const range = { lowestMidi: Math.min(...pitches), highestMidi: Math.max(...pitches) + 4 };
  const decoded = secondsOf(() => {
    const take = decodeWav(made.wav);
    // a long take is decoded when its samples are asked for
    take.samples.subarray(0, take.samples.length);
    return take;
  });
  const heard = secondsOf(() => listen(decoded.result, range));
  const aligned = secondsOf(() => alignTake(heard.result, part));
  const context = { take: decoded.result, features: heard.result, part, alignment: aligned.result };
  const measured = secondsOf(() => measureTake(context));
  const judged = secondsOf(() => judgeTake({ part, alignment: aligned.result, measurements: measured.result }));
  const withPages = middle(Array.from({ length: REPEATS }, () => review(scorePath, takes, 1, 'pdf').cpuSeconds));
  const without = middle(Array.from({ length: REPEATS }, () => review(scorePath, takes, 1, 'json').cpuSeconds));
  const [firstSheet, nextSheet] = await studySheets(scorePath);
  const ours = [
    ['read the score', score.seconds],
    ['decode', decoded.seconds],
    ['features (pitch, change, level)', heard.seconds],
    ['align', aligned.seconds],
    ['measure', measured.seconds],
    ['judge', judged.seconds],
    ['pages of take and section (difference of the two reviews below)', Math.max(0, withPages - without)],
    ['study sheet: score, engraving and PDF, the first of a process', firstSheet],
    ['study sheet, the next', nextSheet],
    ['**whole review, JSON only**, start of the program included', without],
    ['**whole review, JSON and PDF**, start of the program included', withPages],
  ];
  const script = join(folder, 'pitch.praat');
  writeFileSync(script, PRAAT_SCRIPT);
  const theirs = YARDSTICKS.map(([what, program, words]) => {
    const all = Array.from({ length: REPEATS }, () => cpuSecondsOfProgram(program, words(wavPath, script)));
    return [`*${what}*`, all.includes(null) ? null : middle(all)];
  });
  const rows = [...ours, ...theirs].map(([what, seconds]) =>
    seconds === null
      ? [what, 'left out: not installed', '']
      : [what, seconds < 0.01 ? seconds.toFixed(5) : seconds.toFixed(3), rate(made.seconds, seconds)],
  );
  const title = `Stages, on one take of ${inMinutes(made.seconds)}, 44.1 kHz, ${part.notes.length} notes`;
  printTable(title, ['stage', 'CPU seconds', '× real time'], rows);
}

/** Reading a score must grow with its length and not with the square of it. */
function score() {
  const rows = [STAGE_TAKE_SECONDS, 4 * STAGE_TAKE_SECONDS].map((takeSeconds) => {
    const made = takeOfLength(takeSeconds);
    const { seconds, result } = secondsOf(() => readPart(made.score));
    return [result.notes.length, seconds.toFixed(4), ((1e6 * seconds) / result.notes.length).toFixed(1)];
  });
  printTable('Growth of reading a score with its length', ['notes', 'CPU seconds', 'µs a note'], rows);
}

function length() {
  const rows = LENGTHS.map((seconds) => {
    const made = takeOfLength(seconds);
    const { scorePath, takes } = writeTake(`length-${seconds}`, made);
    const ended = review(scorePath, takes, 1, 'pdf');
    rmSync(join(folder, `length-${seconds}`), { recursive: true });
    const notes = readPart(made.score).notes.length;
    const figures = [ended.cpuSeconds.toFixed(1), rate(made.seconds, ended.cpuSeconds), ended.megabytes.toFixed(0)];
    return [inMinutes(made.seconds), notes, ...figures];
  });
  printTable('Growth with the length of a take', ['take', 'notes', 'CPU seconds', '× real time', 'memory, MB'], rows);
}

function number() {
  const rows = COUNTS.flatMap((count) => {
    const place = join(folder, `number-${count}`);
    const { scorePath, takes, seconds } = folderOfTakes(place, count, SHORT_TAKE_SECONDS);
    const ended = [1, 2].map((jobs) => ({ jobs, ...review(scorePath, takes, jobs, 'pdf') }));
    rmSync(place, { recursive: true });
    return ended
      .filter(({ jobs }) => jobs === 1 || count > 1)
      .map((one) => [
        ...[count, one.jobs, one.seconds.toFixed(1), one.cpuSeconds.toFixed(1), (one.cpuSeconds / count).toFixed(2)],
        ...[rate(seconds, one.cpuSeconds), one.megabytes.toFixed(0)],
      ]);
  });
  const title = `Growth with the number of takes of ${SHORT_TAKE_SECONDS} s, JSON and PDF, by number of workers`;
  printTable(
    title,
    ['takes', 'workers', 'seconds by the clock', 'CPU seconds', 'CPU a take', '× real time', 'memory, MB'],
    rows,
  );
}

/** Five things that go wrong in a take, elsewhere in each. */
function fiveFaults(i) {
  const kinds = [
    { kind: 'wrong-note', semitones: 1 },
    { kind: 'out-of-tune', cents: 45 },
    { kind: 'missed-note' },
    { kind: 'out-of-tune', cents: -45 },
    { kind: 'wrong-note', semitones: -1 },
  ];
  return kinds.map((fault, k) => ({ ...fault, at: 5 + 7 * i + 5 * k }));
}

/** What a thousand takes of a minute cost, by one worker, from the mean of the round. */
function round() {
  const rows = ROUNDS.flatMap((count) => {
    const place = join(folder, `round-${count}`);
    const { scorePath, takes } = folderOfTakes(place, count, ROUND_TAKE_SECONDS, fiveFaults);
    const ended = ['json', 'pdf'].map((format) => ({ format, ...review(scorePath, takes, 1, format) }));
    rmSync(place, { recursive: true });
    return ended.map(({ format, cpuSeconds: seconds, megabytes, outMegabytes }) => [
      ...[count, format === 'pdf' ? 'JSON and PDF' : 'JSON only', (seconds / count).toFixed(2)],
      ...[((1000 / 3600) * (seconds / count)).toFixed(2), ((3600 * count) / seconds).toFixed(0)],
      ...[((1000 * outMegabytes) / count).toFixed(0), megabytes.toFixed(0)],
    ]);
  });
  const title = `What a round costs: takes of ${ROUND_TAKE_SECONDS} s with five faults each, one worker`;
  const head = ['takes', 'written', 'CPU seconds a take', 'CPU hours a thousand', 'takes a CPU hour'];
  printTable(title, [...head, 'MB on disk a thousand', 'memory, MB'], rows);
}

try {
  const [cpu] = cpus();
  console.log(
    `${cpu?.model ?? 'processor'}, ${cpus().length} cores, Node.js ${process.version}, load ${loadavg()[0].toFixed(1)} at the start`,
  );
  const tables = { stages, score, length, number, round };
  for (const name of wanted) await tables[name]();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
