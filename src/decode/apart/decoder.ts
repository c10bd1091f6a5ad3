import { type ChildProcessByStdio, spawn } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { type FileFormat, InputError } from '../../base/index.js';
import { recognise } from '../common/recognise.js';
import { type DecodedApart, incomingSound } from './incoming-sound.js';
import { messageReader, requestHead } from './messages.js';

/** A machine that is busy with other things may take this long to start the process and decode a take. */
const LEAST_SECONDS = 25;
/** A megabyte is a minute of what telephones record; decoding that takes a fraction of a second. */
const SECONDS_A_FILE_MB = 0.5;
const MOST_SECONDS = 70;
/** Ten minutes need 300 MB, half an hour 600. */
const LEAST_MB = 1024;
/** The file's bytes, and those of the sound in it once more. */
const MB_A_FILE_MB = 3;
/** The process ends itself so much later than it is ended from here, in case nobody is here any more. */
const LATER_SECONDS = 5;

/** How a decoder may be lost over a file. */
type LossCode = 'decoder-died' | 'decoder-too-slow' | 'decoder-too-large';

/** How the process may be set up otherwise. */
export interface DecoderOptions {
  /** the process's own program */
  readonly entry?: URL;
  /** seconds a file may take, whatever its size */
  readonly seconds?: number;
  /** megabytes the process may need, whatever the file's size */
  readonly megabytes?: number;
}

/** A process and what it is at. */
interface Running {
  readonly child: ChildProcessByStdio<Writable, Readable, null>;
  /** told what the process writes, and how it ended; null while it waits */
  task: { readonly onData: (chunk: Uint8Array) => void; readonly onEnd: (signal: string | null) => void } | null;
}

/**
 * Decodes files in a process of its own, one after the other. Decoders are other people's work and files are strangers':
 * what hangs, breaks down or swells there ends with that process, costs the file alone, and the next one gets a new process.
 * The process lives on for the next file, ends with this one, and does not keep this one from ending.
 *
 * Source: node:child_process for how a process ends.
 */
export class Decoder {
  readonly #options: DecoderOptions;
  #running: Running | null = null;
  #last: Promise<unknown> = Promise.resolve();

  /** @param options left out but for tests */
  constructor(options: DecoderOptions = {}) {
    this.#options = options;
  }

  /** @returns number of the process in the system, null when none runs */
  get processId(): number | null {
    return this.#running?.child.pid ?? null;
  }

  /**
   * @param bytes a whole file, not a WAV file
   * @returns its sound
   * @throws InputError `sound-not-read`, `recording-damaged`, `recording-too-long`, `sound-library-missing`,
   * `decoder-died`, `decoder-too-slow` or `decoder-too-large`, saying what was found and is needed
   */
  decode(bytes: Uint8Array): Promise<DecodedApart> {
    const turn = this.#last.then(() => this.#decode(bytes));
    this.#last = turn.catch(() => {});
    return turn;
  }

  /** Starts the process before there is a file for it, which then has to wait less. */
  start(): void {
    if (this.#running === null) holdOpen(this.#start(), false);
  }

  /** Ends the process; the next file begins a new one. */
  close(): void {
    const running = this.#running;
    this.#running = null;
    running?.child.kill('SIGKILL');
  }

  #start(): Running {
    const entry = fileURLToPath(this.#options.entry ?? new URL('./decoder-process.js', import.meta.url));
    // Options meant for this process may be wrong for that one.
    const { NODE_OPTIONS: _, ...env } = process.env;
    const child = spawn(process.execPath, ['--no-concurrent-marking', entry], {
      env,
      stdio: ['pipe', 'pipe', 'ignore'],
      windowsHide: true,
    });
    const running: Running = { child, task: null };
    const ended = (signal: string | null): void => {
      if (this.#running === running) this.#running = null;
      running.task?.onEnd(signal);
    };
    child.on('error', () => ended(null));
    // The pipes close after the process has ended, when all it has said is read.
    child.on('close', (_code, signal) => ended(signal));
    // A process that has gone takes no more bytes; its end is told anyhow.
    child.stdin.on('error', () => {});
    child.stdout.on('data', (chunk: Uint8Array) => running.task?.onData(chunk));
    this.#running = running;
    return running;
  }

  async #decode(bytes: Uint8Array): Promise<DecodedApart> {
    const running = this.#running ?? this.#start();
    const { container } = recognise(bytes);
    const fileMb = bytes.length / 2 ** 20;
    const seconds = this.#options.seconds ?? Math.min(MOST_SECONDS, LEAST_SECONDS + SECONDS_A_FILE_MB * fileMb);
    const megabytes = this.#options.megabytes ?? LEAST_MB + MB_A_FILE_MB * fileMb;
    const work = outcomeOf(running, container, seconds);
    holdOpen(running, true);
    running.child.stdin.write(requestHead(bytes.length, seconds + LATER_SECONDS, megabytes));
    running.child.stdin.write(bytes);
    try {
      return await work;
    } finally {
      running.task = null;
      holdOpen(running, false);
    }
  }
}

/** What the process makes of a file; a process that does not keep to the rules, or to the time, is ended. */
function outcomeOf(running: Running, format: FileFormat, seconds: number): Promise<DecodedApart> {
  return new Promise((resolve, reject) => {
    let loss: LossCode | null = null;
    const end = (why: LossCode): void => {
      loss = why;
      running.child.kill('SIGKILL');
    };
    const timer = setTimeout(() => end('decoder-too-slow'), seconds * 1000);
    const settled = (settle: () => void): void => {
      clearTimeout(timer);
      settle();
    };
    const read = messageReader(
      incomingSound(
        format,
        (sound) => settled(() => resolve(sound)),
        (error) => settled(() => reject(error)),
      ),
    );
    running.task = {
      onData: (chunk) => {
        try {
          read(chunk);
        } catch {
          end('decoder-died');
        }
      },
      onEnd: (signal) =>
        settled(() =>
          reject(new InputError(loss ?? (signal === 'SIGKILL' ? 'decoder-too-large' : 'decoder-died'), { format })),
        ),
    };
  });
}

/** While it works the process keeps this one alive, while it waits it does not. */
function holdOpen({ child }: Running, hold: boolean): void {
  for (const held of [child, child.stdin, child.stdout] as { ref(): void; unref(): void }[]) {
    if (hold) held.ref();
    else held.unref();
  }
}
