import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';

/** How long the daemons may take to come up, and a job to end. */
const PATIENCE_MS = 240_000;

/** A Slurm of one node, this machine, that ends with the test. */
export interface OwnSlurm {
  /** the environment in which sbatch and squeue speak to it */
  readonly env: NodeJS.ProcessEnv;
  /** resolves when no job is left, with the state in which each job ended */
  readonly idle: () => Promise<string[]>;
  /** ends the daemons and clears their folder away */
  readonly end: () => Promise<void>;
}

/**
 * Starts munged, slurmctld and slurmd on this machine, with a key, ports and a folder of their own.
 *
 * @returns the Slurm, ready to take jobs
 * @throws Error with what the daemons said when it does not come up
 *
 * Source: slurm.conf(5), munged(8).
 */
export async function startOwnSlurm(): Promise<OwnSlurm> {
  const folder = mkdtempSync(join(tmpdir(), 'own-slurm-'));
  // munged refuses to listen where others may not look.
  chmodSync(folder, 0o755);
  const node = hostname().split('.')[0] ?? 'localhost';
  const env = { ...process.env, SLURM_CONF: join(folder, 'slurm.conf'), SBATCH_MEM_PER_NODE: '400M' };
  for (const made of ['state', 'spool']) mkdirSync(join(folder, made));
  writeFileSync(join(folder, 'munge.key'), randomBytes(128), { mode: 0o400 });
  writeFileSync(env.SLURM_CONF, configuration(folder, node, [await freePort(), await freePort()]));
  const words = (name: string, ending: string): string => `--${name}=${join(folder, `munge.${ending}`)}`;
  const munge = [words('key-file', 'key'), words('socket', 'socket'), words('pid-file', 'pid')];
  const daemons: ChildProcess[] = [];
  const start = (program: string, options: readonly string[]): void => {
    daemons.push(spawn(program, options, { env, stdio: 'ignore' }));
  };
  const asked = (program: string, ...options: string[]): string =>
    execFileSync(program, options, { env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'], timeout: 60_000 });
  const end = async (): Promise<void> => {
    for (const daemon of daemons.reverse()) await endOf(daemon);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    start('munged', ['--foreground', ...munge, words('seed-file', 'seed'), words('log-file', 'log')]);
    await until(() => asked('munge', '-n', words('socket', 'socket')) !== '');
    start('slurmctld', ['-D', '-i', '-f', env.SLURM_CONF]);
    start('slurmd', ['-D', '-f', env.SLURM_CONF]);
    await until(() => asked('sinfo', '--noheader', '--format=%t').trim() === 'idle');
  } catch {
    const said = ['munge', 'slurmctld', 'slurmd'].map((name) => readIfThere(join(folder, `${name}.log`)));
    await end();
    throw new Error(`no Slurm could be started here:\n${said.join('\n')}`);
  }
  const idle = async (): Promise<string[]> => {
    await until(() => asked('squeue', '--noheader') === '');
    return [...asked('scontrol', '--oneliner', 'show', 'jobs').matchAll(/JobState=(\w+)/g)].map(
      ([, state]) => `${state}`,
    );
  };
  return { env, idle, end };
}

function configuration(folder: string, node: string, [control, work]: readonly [number, number]): string {
  const settings = {
    ClusterName: 'test',
    SlurmctldHost: `${node}(127.0.0.1)`,
    SlurmUser: 'root',
    SlurmctldPort: control,
    SlurmdPort: work,
    AuthType: 'auth/munge',
    AuthInfo: `socket=${join(folder, 'munge.socket')}`,
    StateSaveLocation: join(folder, 'state'),
    SlurmdSpoolDir: join(folder, 'spool'),
    SlurmctldPidFile: join(folder, 'slurmctld.pid'),
    SlurmdPidFile: join(folder, 'slurmd.pid'),
    SlurmctldLogFile: join(folder, 'slurmctld.log'),
    SlurmdLogFile: join(folder, 'slurmd.log'),
    ProctrackType: 'proctrack/pgid',
    TaskPlugin: 'task/none',
    MpiDefault: 'none',
    MailProg: '/bin/true',
    SchedulerType: 'sched/builtin',
    SchedulerParameters: 'batch_sched_delay=0,sched_interval=1,sched_min_interval=0',
    SelectType: 'select/cons_tres',
    SelectTypeParameters: 'CR_Core',
  };
  const lines = Object.entries(settings).map(([name, value]) => `${name}=${value}`);
  const machine = `NodeName=${node} NodeAddr=127.0.0.1 CPUs=2 RealMemory=1000 State=UNKNOWN`;
  return [...lines, machine, `PartitionName=all Nodes=${node} Default=YES State=UP`, ''].join('\n');
}

/** A port nobody listens on just now. */
function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

async function until(holds: () => boolean): Promise<void> {
  for (const begin = performance.now(); ; ) {
    try {
      if (holds()) return;
    } catch {
      // It does not answer yet.
    }
    if (performance.now() - begin > PATIENCE_MS) throw new Error('waited too long');
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

function endOf(daemon: ChildProcess): Promise<void> {
  if (daemon.pid === undefined || daemon.exitCode !== null || daemon.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    const kill = setTimeout(() => daemon.kill('SIGKILL'), 5000);
    daemon.once('exit', () => {
      clearTimeout(kill);
      resolve();
    });
    daemon.kill('SIGTERM');
  });
}

function readIfThere(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}
