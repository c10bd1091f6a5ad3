/**
 * Files in, files out: finds the takes, reviews each one (in workers when there are several), writes results whole or not
 * at all, and says how every take ended. The only room that touches the disk.
 *
 * Conventions: paths given are relative to the working folder of the process; names in results never hold a path of the
 * machine. Order is code point order of the take names. No clock and no chance enters a result: the same input gives the
 * same bytes, whatever the number of jobs.
 */

export { tryToWrite } from './disk/try-to-write.js';
export { writeWhole } from './disk/write-whole.js';
export { exitCode } from './exit-code.js';
export { type HandoutRequest, type HandoutSummary, runHandout } from './run-handout.js';
export { type ProgressRequest, type ProgressSummary, runProgress } from './run-progress.js';
export { type ReviewHooks, runReview } from './run-review.js';
export { type FolderRequest, runSection } from './run-section.js';
export { runStudy, type StudyRequest, type StudySummary } from './run-study.js';
export { runStanding, type StandingRequest, type StandingSummary } from './standing/run-standing.js';
export type {
  Recognition,
  ReviewProgress,
  ReviewRemarks,
  ReviewRequest,
  ReviewSummary,
  Shard,
  TakeEnd,
  TakeFailure,
} from './types.js';
