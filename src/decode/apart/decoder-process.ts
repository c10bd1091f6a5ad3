import { Console } from 'node:console';
import { isMainThread, Worker, workerData } from 'node:worker_threads';
import { InputError } from '../../base/index.js';
import { type Done, framed, type Kind, REQUEST_BYTES, type Refused } from './messages.js';

/**
 * The process that decodes: takes one file after the other from its standard input and writes its sound to its standard
 * output, until the input ends. A thread beside it ends the process when the work needs more memory or time than it may,
 * which also holds when the work hangs, or whoever wanted it is gone.
 */
const LOOK_EVERY_MS = 50;

/** When the work must have ended, in milliseconds of the machine's clock, and how much memory there may be, in bytes. */
const DEADLINE = 0;
const MEMORY = 1;

const nowMs = (): number => Number(process.hrtime.bigint() / 1_000_000n);

function watch(limits: Float64Array): void {
  setInterval(() => {
    const isOver = nowMs() > (limits[DEADLINE] as number) || process.memoryUsage.rss() > (limits[MEMORY] as number);
    if (isOver) process.kill(process.pid, 'SIGKILL');
  }, LOOK_EVERY_MS);
}

async function* requests(): AsyncGenerator<{ seconds: number; megabytes: number; bytes: Uint8Array }> {
  const head = new Uint8Array(REQUEST_BYTES);
  let bytes: Uint8Array | null = null;
  let held = 0;
  for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
    for (let at = 0; at < chunk.length; ) {
      const target: Uint8Array = bytes ?? head;
      const part = chunk.subarray(at, at + target.length - held);
      target.set(part, held);
      held += part.length;
      at += part.length;
      if (held < target.length) continue;
      held = 0;
      const [size = 0, seconds = 0, megabytes = 0] = new Float64Array(head.slice().buffer);
      if (bytes === null) {
        bytes = new Uint8Array(size);
      } else {
        const whole = bytes;
        bytes = null;
        yield { seconds, megabytes, bytes: whole };
      }
    }
  }
}

async function say(kind: Kind, payload: Uint8Array): Promise<void> {
  for (const part of framed(kind, payload)) {
    if (!process.stdout.write(part)) await new Promise<void>((resolve) => process.stdout.once('drain', resolve));
  }
}

const sayData = (kind: Kind, data: object): Promise<void> => say(kind, Buffer.from(JSON.stringify(data)));

/** The thread that watches needs none of it. */
const loadReaders = () => Promise.all([import('../readers/open-sound.js'), import('./piece-writer.js')]);

async function decode(bytes: Uint8Array): Promise<Done> {
  const [{ openSound }, { writePieces }] = await loadReaders();
  return writePieces(await openSound(bytes), {
    about: (about) => sayData('about', about),
    piece: (bytes) => say('piece', bytes),
  });
}

async function serve(): Promise<void> {
  // Standard output is for sound alone; packages may have something to say.
  globalThis.console = new Console(process.stderr, process.stderr);
  const limits = new Float64Array(new SharedArrayBuffer(2 * Float64Array.BYTES_PER_ELEMENT)).fill(
    Number.POSITIVE_INFINITY,
  );
  const thread = new Worker(new URL(import.meta.url), { workerData: limits });
  thread.unref();
  // While the first file is still on its way; what goes wrong is told with it.
  void loadReaders().catch(() => {});
  for await (const { bytes, seconds, megabytes } of requests()) {
    limits[MEMORY] = megabytes * 2 ** 20;
    limits[DEADLINE] = nowMs() + seconds * 1000;
    try {
      await sayData('done', await decode(bytes));
    } catch (error) {
      const refused: Refused = { fault: error instanceof InputError ? error.fault : null };
      await sayData('refused', refused);
    }
    limits[DEADLINE] = Number.POSITIVE_INFINITY;
  }
  process.exit();
}

if (isMainThread) await serve();
else watch(workerData as Float64Array);
