// One review in a process of its own, so that its memory is its own. Prints seconds by the clock and of the processor, and
// megabytes, as JSON.
import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runReview } from '../../dist/program/batch.js';

// As the command does.
setFlagsFromString('--no-concurrent-marking');
setFlagsFromString('--interrupt-budget=500000');

/** Most memory ever held. Linux counts that of the starting process into `maxRSS`, so the kernel's own figure is read there. */
function mostKilobytes() {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS;
  return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8'))[1]);
}

const [scorePath, takes, outFolder, jobs, jsonOnly] = process.argv.slice(2);
const tool = { name: 'takesheet', version: 'bench' };
const begin = performance.now();
const summary = await runReview({
  ...{ tool, scorePath, outFolder, inputs: [takes], paper: 'a4' },
  jobs: Number(jobs),
  jsonOnly: jsonOnly === 'json',
});
const { user, system } = process.cpuUsage();
const seconds = (performance.now() - begin) / 1000;
const reviewed = summary.ends.filter((end) => end.row?.take.outcome === 'reviewed').length;
const megabytes = mostKilobytes() / 1024;
console.log(
  JSON.stringify({ seconds, cpuSeconds: (user + system) / 1e6, megabytes, reviewed, takes: summary.ends.length }),
);
