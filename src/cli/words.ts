import { InputError } from '../base/index.js';
import type { Recognition, ReviewRemarks, TakeEnd, TakeFailure } from '../batch/index.js';
import type { DocumentEnding } from '../review/index.js';
import { failureSaid } from '../words/index.js';

const MOST_NAMES = 5;

/** What each of a take's files is, by how its name ends. */
export const DOCUMENT_WORDS: Readonly<Record<DocumentEnding, string>> = {
  pdf: 'the pages to practise from',
  json: 'everything measured and found, as data',
  webm: 'with --listen: the take, to be heard',
  'facts.json': 'with --listen: how loud it is',
};

/** What the commands say on standard error, apart from what is wrong with a request. */
export const WORDS = {
  failure: ({ file, fault }: TakeFailure): string => `${file}: ${failureSaid('en', fault)}`,
  /** what is wrong with the request, or with the program */
  thrown: (error: unknown): string => {
    if (error instanceof InputError) {
      const said = failureSaid('en', error.fault);
      return error.path === null ? said : `${error.path}: ${said}`;
    }
    const said = error instanceof Error ? error.message : String(error);
    return `a fault in the program, not in your files; please report it (${said})`;
  },
  /** what stands beside a take's count */
  took: (end: TakeEnd): string => {
    if ('failure' in end) return WORDS.failure(end.failure);
    return end.kept ? `${end.name}: ${end.row.take.outcome}, as before` : `${end.name}: ${end.row.take.outcome}`;
  },
  /** what stands after the bar of a terminal */
  bar: (done: number, total: number, left: string): string => `${done}/${total}  ${left}`.trimEnd(),
  timeLeft: (seconds: number): string => {
    if (!Number.isFinite(seconds)) return '';
    const minutes = Math.ceil(seconds / 60);
    if (seconds < 90) return `about ${Math.max(1, Math.round(seconds))} s left`;
    return minutes < 90 ? `about ${minutes} min left` : `about ${Math.round(minutes / 60)} h left`;
  },
  stopping: 'stopping; what is finished stays',
  stopped: (done: number, notReached: number): string =>
    `stopped: ${done} finished, ${notReached} to go; run the same command again to go on from here`,
  leftAlone: (files: readonly string[]): string =>
    `left alone and not counted, because they are no results of this run: ${some(files)}`,
  rosterLinesUnused: (lines: readonly number[]): string =>
    `the roster names takes that were not given: ${lines.length === 1 ? 'line' : 'lines'} ${some(lines.map(String))}`,
  blindApart: (folders: readonly string[]): string =>
    `not followed, because numbers stand for names and none comes on two days: ${some(folders)}`,
  recognised: ({ takes, unrecognised }: Recognition): string => {
    const rest = unrecognised.length;
    const known = `${takes - rest} of ${takes} ${takes === 1 ? 'recording' : 'recordings'} recognised`;
    if (rest === 0) return known;
    return `${known}; ${rest === 1 ? 'this one' : `these ${rest}`} not: ${some(unrecognised)}`;
  },
  sameRecordings: (takes: readonly string[]): string =>
    `the same recording, byte by byte, for different players: ${some(takes)}; ask who played it`,
  notEngraved: (scores: readonly string[]): string =>
    `pages show no bars of ${some(scores)}: the score could not be engraved, or not within its bounds of time and memory; everything else is as usual`,
  marksUnknown: (takes: readonly string[]): string =>
    `the panel has marks for takes that are not among the results: ${some(takes)}`,
  notFollowed: (files: readonly string[]): string =>
    `not followed, because name or result do not say who played and on which day: ${some(files)}; name recordings like 2026-03-02_Ada-Lindqvist.wav, or keep a roster, and review them again`,
} as const;

/**
 * @param remarks what the user should know beside the results
 * @returns a line for each thing there is to say
 */
export function remarksInWords({ leftAlone, rosterLinesUnused, same = [], notEngraved = [] }: ReviewRemarks): string[] {
  return [
    ...(rosterLinesUnused.length === 0 ? [] : [WORDS.rosterLinesUnused(rosterLinesUnused)]),
    ...same.map(WORDS.sameRecordings),
    ...(notEngraved.length === 0 ? [] : [WORDS.notEngraved(notEngraved)]),
    ...(leftAlone.length === 0 ? [] : [WORDS.leftAlone(leftAlone)]),
  ];
}

function some(names: readonly string[]): string {
  const more = names.length - MOST_NAMES;
  return more > 1 ? `${names.slice(0, MOST_NAMES).join(', ')} and ${more} more` : names.join(', ');
}
