import type { Language } from '../../base/index.js';
import { sha256 } from '../../base/index.js';
import type { SectionSheetInput } from '../../report/index.js';
import type { SectionRow } from '../../result/index.js';
import type { DocumentWishes, Engraving, Etude, MadeDocument, Tool } from '../../review/index.js';
import { LONGEST_TAKE_BYTES, readWhole } from '../disk/read-whole.js';
import { failureOf } from '../failures/failure-of.js';
import { secondsFor } from '../pool/limits.js';
import type { FixedLimits, PlannedTake, TakeFailure } from '../types.js';

/** What all takes of a run share; it is sent to each worker once. */
export interface SharedWork extends DocumentWishes {
  readonly tool: Tool;
  readonly etudes: readonly Etude[];
  readonly language: Language;
  readonly limits: FixedLimits;
}

/** One take for a worker. */
export interface TakeWork {
  readonly take: PlannedTake;
  /** content for which the result that is there still holds; null when there is none */
  readonly keptSha256: string | null;
}

/** The section's sheet for a worker that has drawn takes: it has at hand what that needs. */
export interface SheetWork {
  readonly sheet: SectionSheetInput;
}

/** A worker's answer. Workers only read: what comes of it is written by the process that started them. */
export type WorkerAnswer = TakeAnswer | { readonly how: 'drawn'; readonly sheets: readonly Uint8Array[] };

/** An answer about a take. */
export type TakeAnswer =
  | { readonly how: 'as-before' }
  | {
      readonly how: 'reviewed';
      readonly sha256: string;
      readonly documents: readonly MadeDocument[];
      readonly row: SectionRow;
    }
  | { readonly how: 'failed'; readonly failure: TakeFailure };

/**
 * Reads one take and reviews it, unless it is what it was. Never throws: whatever goes wrong is the take's own end.
 *
 * @param work which take
 * @param shared what all takes share
 * @param onSeconds told how many seconds the work may take, as soon as the take's length is known
 * @param engrave asked for an étude laid out when pages need it; without it that is done here
 * @returns the result, or the failure
 */
export async function reviewInWorker(
  { take, keptSha256 }: TakeWork,
  shared: SharedWork,
  onSeconds: (seconds: number) => void,
  engrave?: Engraving,
): Promise<TakeAnswer> {
  try {
    const { prepareFor, refuseOverAnHour } = await import('../../decode/index.js');
    const whole = readWhole(take.path, LONGEST_TAKE_BYTES, refuseOverAnHour, usedAgain);
    // What has no result yet is listened to: while it is hashed, what decodes it can start.
    if (keptSha256 === null) prepareFor(whole);
    const { hash, bytes } = hashedOnce(whole);
    if (hash === keptSha256) return { how: 'as-before' };
    // Loaded only when something is to be listened to.
    const { reviewTake, wishesIn } = await import('../../review/index.js');
    const { sectionRow } = await import('../../result/index.js');
    const [etude, ...others] = take.etudes.map((place) => shared.etudes[place] as Etude);
    if (etude === undefined) throw new Error('no étude is meant');
    const { tool, language, limits } = shared;
    const { name, who, shownAs: file, blind = false } = take;
    const known = { bytes, sha256: hash, name, file, who, blind, tool, language };
    const engraving = engrave === undefined ? {} : { engrave };
    const { result, documents } = await reviewTake(
      { ...etude, others, ...known, ...wishesIn(shared), ...engraving },
      (seconds) => onSeconds(secondsFor(seconds, take.etudes.length, limits)),
    );
    return { how: 'reviewed', sha256: hash, documents, row: sectionRow(take.name, result) };
  } catch (error) {
    return { how: 'failed', failure: failureOf(take.file, error) };
  }
}

/** Larger files are rare, and their memory is wanted for other things once they are read. */
const MOST_USED_AGAIN_BYTES = 2 ** 24;
let kept = new Uint8Array(0);

/** Memory for a file, the same for one take after the other: new memory each time would have to be looked through often. */
function usedAgain(length: number): Uint8Array {
  if (length > MOST_USED_AGAIN_BYTES) return Buffer.allocUnsafeSlow(length);
  if (kept.length < length) kept = Buffer.allocUnsafeSlow(length);
  return kept.subarray(0, length);
}

/** A file's hash, and its bytes for whoever asks first: then nothing here holds them any more. */
function hashedOnce(whole: Uint8Array): { readonly hash: string; readonly bytes: () => Uint8Array } {
  let held: Uint8Array | null = whole;
  const give = (): Uint8Array => {
    const given = held;
    held = null;
    if (given === null) throw new Error('these bytes were given away already');
    return given;
  };
  return { hash: sha256(held), bytes: give };
}
