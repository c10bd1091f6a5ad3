import { basename, extname } from 'node:path';
import { byCodePoint, InputError } from '../../base/index.js';
import type { Etude, Who } from '../../review/index.js';
import { namingFile } from '../disk/naming-file.js';
import { readWhole } from '../disk/read-whole.js';
import type { FoundTake, PlannedTake, ReviewRequest, TakeFailure } from '../types.js';
import { type Found, findTakes } from './find-takes.js';
import { matchEtude } from './match-etude.js';
import { matchRoster } from './match-roster.js';
import { namePattern } from './name-pattern.js';
import { playerAndDate } from './player-and-date.js';
import type { DateOrder } from './read-dates.js';
import { type RosterLine, readRoster } from './read-roster.js';
import { nameTakes } from './take-names.js';

const LARGEST_ROSTER_BYTES = 2 ** 24;

/** What is to be reviewed, and what cannot be. */
export interface Plan {
  /** in code point order of the names */
  readonly takes: readonly PlannedTake[];
  /** what looked like a take and is none, in the same order */
  readonly lost: readonly RefusedTake[];
  readonly rosterLinesUnused: readonly number[];
  /** files whose player nobody says; null where neither a roster nor a pattern was given */
  readonly unrecognised: readonly string[] | null;
}

/** What looked like a take and cannot be reviewed. */
export interface RefusedTake extends FoundTake {
  readonly name: string;
  readonly failure: TakeFailure;
  readonly who: Who;
  readonly roster?: PlannedTake['roster'];
}

/**
 * Finds the takes and all that can be known of them before they are read: names, players, days, and which étude is meant.
 * What the roster says comes before what a file name says.
 *
 * @param request takes, roster and pattern
 * @param etudes what takes are reviewed against
 * @returns the plan, names still in clear
 * @throws InputError when there is nothing to review, or the roster or the pattern cannot be understood
 */
export function planTakes(request: ReviewRequest, etudes: readonly Etude[]): Plan {
  const found = foundIn(request);
  const named = nameTakes(found.takes).sort((a, b) => byCodePoint(a.name, b.name));
  const lost = found.failures.map(({ path, failure }) => ({ path, file: failure.file, failure }));
  const roster =
    request.rosterPath === undefined ? NO_ROSTER : rosterFor(request.rosterPath, [...named, ...lost], request.dates);
  const facts = factsReader(request.namePattern);
  const takes = named.map((take) => {
    const line = roster.byPath.get(take.path);
    const said = facts(take.file);
    const meant = meantBy({ rosterPath: request.rosterPath, line, part: said?.part ?? null, etudes });
    return { ...take, shownAs: basename(take.path), who: whoOf(line, said), ...furtherIn(line), etudes: meant };
  });
  const lostTakes = lost.map((one) => ({
    ...one,
    name: one.file,
    who: whoOf(roster.byPath.get(one.path), facts(one.file)),
    ...furtherIn(roster.byPath.get(one.path)),
  }));
  const isAsked = request.rosterPath !== undefined || request.namePattern !== undefined;
  const unknown = [...takes, ...lostTakes].filter(({ who }) => who.player === null).map(({ file }) => file);
  return { takes, lost: lostTakes, rosterLinesUnused: roster.unused, unrecognised: isAsked ? unknown : null };
}

const NO_ROSTER = { byPath: new Map<string, RosterLine>(), unused: [] };

function furtherIn(line: RosterLine | undefined): Pick<PlannedTake, 'roster'> {
  return line === undefined || Object.keys(line.further).length === 0 ? {} : { roster: line.further };
}

type Facts = Who & { readonly part: string | null };

function foundIn({ inputs, blind }: ReviewRequest): Found {
  const found = findTakes(inputs);
  if (found.takes.length > 0 || found.failures.some(({ failure }) => failure.code !== 'no-such-file')) return found;
  const shown = blind === true ? [] : inputs;
  throw new InputError(found.failures[0] === undefined ? 'no-recording-found' : 'no-such-takes', { inputs: shown });
}

function rosterFor(path: string, takes: readonly FoundTake[], order?: DateOrder): ReturnType<typeof matchRoster> {
  return namingFile(path, () => matchRoster(readRoster(readWhole(path, LARGEST_ROSTER_BYTES), order), takes));
}

/** Reads a file's name by the pattern, or by the usual ones when there is none; null when it does not follow the pattern. */
function factsReader(pattern: string | undefined): (file: string) => Facts | null {
  const stem = (file: string): string => basename(file, extname(file));
  if (pattern !== undefined) {
    const read = namePattern(pattern);
    return (file) => read(stem(file));
  }
  return (file) => ({ ...playerAndDate(stem(file)), instrument: null, part: null });
}

function whoOf(line: RosterLine | undefined, said: Facts | null): Who {
  return {
    player: line?.player || (said?.player ?? null),
    date: line?.date || (said?.date ?? null),
    instrument: line?.instrument || (said?.instrument ?? null),
  };
}

/** Which études a take may be of; what a file name says is only a hint, what the roster says must be right. */
function meantBy({
  rosterPath,
  line,
  part,
  etudes,
}: {
  readonly rosterPath: string | undefined;
  readonly line: RosterLine | undefined;
  readonly part: string | null;
  readonly etudes: readonly Etude[];
}): number[] {
  const all = etudes.map((_, i) => i);
  if (etudes.length === 1) return all;
  if (line !== undefined && line.part !== '') {
    const found = matchEtude(line.part, etudes);
    if (found.length > 0) return found;
    const scores = etudes.map(({ score }) => score.file);
    throw new InputError('roster-no-such-part', { line: line.line, scores }).about(rosterPath ?? '');
  }
  const hinted = part === null ? [] : matchEtude(part, etudes);
  return hinted.length > 0 ? hinted : all;
}
