// Changes one thing at a time in a copy of `src`, runs the tests of its room and counts which changes they notice.
//   npm run mutants                                    8 changes in each of the rooms that judge, and in that of weeks
//   npm run mutants -- --rooms judge,brief --count 20  more of them, in these rooms
//   npm run mutants -- --seed 2                        another sample; the same seed gives the same one
//   npm run mutants -- --rooms judge --list            prints every change there is, and runs nothing
//   npm run mutants -- --rooms align --quick           only the quick test files: minutes instead of hours, and no figure but
//                                                      a lower bound of it
// The quick files of a room run first, the others only where those notice nothing.
// The work tree is never written to. Exits with 1 when the tests of a room fail before anything is changed.
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { mutantsOf } from './mutants-of.mjs';

const COPIED = [
  ...['src', 'tests', 'fixtures', 'bin', 'reports', 'package.json', 'tsconfig.json'],
  ...['.vitest.mjs', '.room-script.mjs', '.loops.mjs'],
];
/** A change after which the tests take so many times as long, and so long above that, never ends: it is noticed, too. */
const MOST_TIMES = 10;
const MOST_MORE_MS = 60_000;
/** The tests of a room, unchanged. */
const LIMIT_MS = 1_800_000;
/** A test file is quick when it took no longer, unchanged. */
const QUICK_MS = 5_000;

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: 'judge,measure,standards,score,brief,weeks' },
    count: { type: 'string', default: '8' },
    seed: { type: 'string', default: '1' },
    list: { type: 'boolean', default: false },
    quick: { type: 'boolean', default: false },
  },
});

/** Numbers drawn by a seed, from 0 to below 1. Source: linear congruential generator of Numerical Recipes. */
function drawn(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** So many of a list, by a seed and the name of the room, in the order of the code. */
function sample(all, count, room) {
  const draw = drawn([...room].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), Number(values.seed)));
  const keyed = all.map((mutant, order) => ({ mutant, order, key: draw() }));
  const chosen = keyed.sort((a, b) => a.key - b.key).slice(0, count);
  return chosen.sort((a, b) => a.order - b.order).map(({ mutant }) => mutant);
}

function mutantsInRoom(room) {
  const files = readdirSync(join('src', room), { recursive: true }).filter((file) => /(?<!\.d)\.ts$/.test(file));
  return files.sort().flatMap((file) => {
    const path = join('src', room, file);
    return mutantsOf(path, readFileSync(path, 'utf8'));
  });
}

function runTests(copy, files, timeout, ...more) {
  const vitest = join(copy, 'node_modules/vitest/vitest.mjs');
  const args = [vitest, 'run', '--config', '.vitest.mjs', ...files, '--bail', '1', '--no-isolate', ...more];
  return spawnSync(process.execPath, args, { cwd: copy, timeout, stdio: 'ignore' }).status === 0;
}

/**
 * The test files of a room as stages to be run one after the other, the quick ones first; null when they fail unchanged.
 * Only the first stage when quick ones are all that is wanted.
 */
function stagesOf(copy, room) {
  const told = join(copy, 'times.json');
  if (!runTests(copy, [`tests/${room}/`], LIMIT_MS, '--reporter=json', `--outputFile=${told}`)) return null;
  const { testResults } = JSON.parse(readFileSync(told, 'utf8'));
  const quick = ({ startTime, endTime }) => endTime - startTime <= QUICK_MS;
  const stages = [testResults.filter(quick), values.quick ? [] : testResults.filter((file) => !quick(file))];
  return stages
    .filter((stage) => stage.length > 0)
    .map((stage) => ({
      files: stage.map(({ name }) => relative(copy, name)),
      limitMs: Math.round(
        MOST_MORE_MS + MOST_TIMES * stage.reduce((sum, { startTime, endTime }) => sum + endTime - startTime, 0),
      ),
    }));
}

function tryMutant(copy, stages, { path, from, to, text }) {
  const whole = readFileSync(path, 'utf8');
  writeFileSync(join(copy, path), whole.slice(0, from) + text + whole.slice(to));
  const noticed = !stages.every(({ files, limitMs }) => runTests(copy, files, limitMs));
  writeFileSync(join(copy, path), whole);
  return noticed;
}

const rooms = values.rooms.split(',');
const lacking = rooms.find((room) => !existsSync(join('src', room)) || !existsSync(join('tests', room)));
if (lacking !== undefined) throw new Error(`no room with tests: ${lacking}`);
const copy = values.list ? null : realpathSync(mkdtempSync(join(tmpdir(), 'takesheet-mutants-')));
try {
  if (copy !== null) {
    for (const name of COPIED.filter(existsSync)) cpSync(name, join(copy, name), { recursive: true });
    symlinkSync(resolve('node_modules'), join(copy, 'node_modules'));
  }
  for (const room of rooms) {
    const all = mutantsInRoom(room);
    if (copy === null) {
      for (const mutant of all) console.log(mutant.told);
      continue;
    }
    const stages = stagesOf(copy, room);
    if (stages === null) {
      console.log(`${room}: its tests fail before anything is changed`);
      process.exitCode = 1;
      continue;
    }
    const tried = sample(all, Number(values.count), room).map((mutant) => {
      const noticed = tryMutant(copy, stages, mutant);
      console.log(`${noticed ? 'noticed ' : 'survived'}  ${mutant.told}`);
      return noticed;
    });
    const by = values.quick ? ' by the quick files' : '';
    console.log(
      `${room}: ${tried.filter(Boolean).length} of ${tried.length} noticed${by}, of ${all.length} there are\n`,
    );
  }
} finally {
  if (copy !== null) rmSync(copy, { recursive: true, force: true });
}
