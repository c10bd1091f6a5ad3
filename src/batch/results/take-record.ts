import { join } from 'node:path';
import { z } from 'zod';
import { sha256 } from '../../base/index.js';
import { codeSchema, toJson } from '../../result/index.js';
import { readWhole } from '../disk/read-whole.js';
import { writeWhole } from '../disk/write-whole.js';
import { refuseUnbounded } from '../history/refuse-unbounded.js';

/** The folder, below that for results, that holds a record a take. */
export const RECORDS = 'records';
/** A record is a few kilobytes. */
const LARGEST_RECORD_BYTES = 2 ** 22;

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const orNull = z.string().nullable();

const recordSchema = z.object({
  format: z.literal('take-record'),
  /** 1 had other fields for what was written; failures are the same in both */
  version: z.union([z.literal(1), z.literal(2)]),
  name: z.string(),
  /** what the roster says of the take beside who played, by head; results do not depend on it */
  roster: z.record(z.string(), z.string()).optional(),
  end: z.union([
    z.object({
      /** of all that the result depends on, but for the take itself */
      dependsOn: hash,
      takeSha256: hash,
      /** those that were written, and what they were made for beside that */
      documents: z.array(z.object({ ending: z.string(), sha256: hash, madeFor: z.string() })),
    }),
    z.object({
      failure: z.union([
        z.object({ file: z.string(), code: z.string(), fault: codeSchema }),
        /** as earlier programs wrote it: what is wrong is a sentence in English */
        z.object({ file: z.string(), code: z.string(), message: z.string() }),
      ]),
      who: z.object({ player: orNull, date: orNull, instrument: orNull }),
    }),
  ]),
});

/**
 * How one take ended, beside its result: what the result was made from, and what its files hold; or why there is none. It
 * is written last, so a take with a record was finished.
 */
export type TakeRecord = z.infer<typeof recordSchema>;

/** The end of a take that was reviewed. */
export type ReviewedEnd = Extract<TakeRecord['end'], { documents: unknown }>;

/**
 * @param outFolder the folder for results
 * @param name the take's name
 * @returns where its record is: a take may be called what a file may not, so its file is named by a hash
 *
 * Source: SHA-256, FIPS 180-4.
 */
export function recordPath(outFolder: string, name: string): string {
  return join(outFolder, RECORDS, `${sha256(new TextEncoder().encode(name)).slice(0, 32)}.json`);
}

/**
 * @param outFolder the folder for results
 * @param name the take's name
 * @param end how it ended
 * @param roster what a roster says of it in further columns, undefined without any
 * @param readers who may read it; where names must not be known its owner alone, for the hash of a recording tells whose it is
 */
export function writeRecord(
  outFolder: string,
  name: string,
  end: TakeRecord['end'],
  roster: TakeRecord['roster'] | undefined,
  readers: 'all' | 'owner',
): void {
  const record: TakeRecord = {
    format: 'take-record',
    version: 2,
    name,
    ...(roster === undefined ? {} : { roster }),
    end,
  };
  writeWhole(recordPath(outFolder, name), toJson(record), readers);
}

/**
 * @param path a record's file
 * @returns the record, null when there is none or it is not one; a take that a program of version 1 has reviewed counts as
 *   one without a record, since its result would have to be made anew in any case
 */
export function readRecord(path: string): TakeRecord | null {
  try {
    const document: unknown = JSON.parse(new TextDecoder().decode(readWhole(path, LARGEST_RECORD_BYTES)));
    refuseUnbounded(document);
    return recordSchema.parse(document);
  } catch {
    return null;
  }
}
