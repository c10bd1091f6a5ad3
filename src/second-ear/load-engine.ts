import type { Engine } from 'essentia.js';

let engine: Promise<Engine> | null = null;

/**
 * @returns the engine, loaded once, when it is first asked for (0.3 s, 30 MB)
 */
export function loadEngine(): Promise<Engine> {
  engine ??= loadQuietly().then(({ Essentia, EssentiaWASM }) => new Essentia(EssentiaWASM));
  return engine;
}

/** The engine wants to be told of every fault of the process it is in, and would end it; that is not its business. */
async function loadQuietly(): Promise<typeof import('essentia.js').default> {
  const events = ['uncaughtException', 'unhandledRejection'] as const;
  const before = events.map((event) => process.listeners(event as 'uncaughtException'));
  const { default: door } = await import('essentia.js');
  for (const [i, event] of events.entries()) {
    for (const listener of process.listeners(event as 'uncaughtException')) {
      if (!before[i]?.includes(listener)) process.removeListener(event, listener);
    }
  }
  return door;
}
