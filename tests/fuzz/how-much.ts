import fc from 'fast-check';

/** Every run of the tests tries the same inputs; another seed tries others. */
const SEED = 20260302;

const numberFrom = (name: string, otherwise: number): number => Number(process.env[name] ?? otherwise);

/** How many times more inputs than usual are tried: `FUZZ_TIMES=100`. */
const FUZZ_TIMES = numberFrom('FUZZ_TIMES', 1);

/** Anywhere from the beginning (0) to the end (1, not reached) of something; every place as likely as any other. */
export const anywhere: fc.Arbitrary<number> = fc.noBias(fc.nat(999_999)).map((n) => n / 1e6);

/**
 * Tries a reader on many inputs: always the same ones, unless `FUZZ_TIMES` asks for more or `FUZZ_SEED` for others.
 *
 * @param runs inputs tried in an ordinary run of the tests
 * @param inputs where they come from
 * @param read tries one; true when it could be read, false when it was refused, throws when neither
 * @returns share of the inputs that were read: near 0 or 1 little was tried
 */
export async function shareRead<T>(
  runs: number,
  inputs: fc.Arbitrary<T>,
  read: (input: T) => boolean | Promise<boolean>,
): Promise<number> {
  let tried = 0;
  let hits = 0;
  const property = fc.asyncProperty(inputs, async (input) => {
    const hit = await read(input);
    tried++;
    if (hit) hits++;
  });
  await fc.assert(property, { numRuns: Math.round(runs * FUZZ_TIMES), seed: numberFrom('FUZZ_SEED', SEED) });
  return hits / tried;
}
