import type { Features } from '../features/index.js';
import type { Part } from '../score/index.js';
import { alignPiece, type Heard } from './align-piece.js';
import { chooseRenditions } from './choose-renditions.js';
import type { CoarsePath } from './coarse/types.js';
import { estimateTuning } from './estimate-tuning.js';
import { findFittedPath, WIDEST_OFFSET } from './find-offset-semitones.js';
import { findSkips } from './find-skips.js';
import { findBoundaries } from './grid/find-boundaries.js';
import { buildPitchGrid, type PitchGrid } from './grid/pitch-grid.js';
import { createSegmentEvidence } from './grid/segment-evidence.js';
import type { AddedNote, AlignedNote, Alignment, Restart } from './types.js';

/** Less sound with a pitch than this is no playing. */
const LEAST_PLAYING_SECONDS = 1;
/**
 * Of the notes that the way goes over, at least so many are heard in a take of this part; and either most notes of the part
 * are, or the sound fits where they are. Among takes of real players held against their own parts and those of others the
 * first share was 0.85 and more, against 0.7 and less.
 */
const LEAST_HEARD_OF_REACHED = 0.6;
const LEAST_HEARD = 0.65;
const LEAST_FIT = 0.35;
/** Share of the part's notes that must be found for a take to be of this part. */
const LEAST_SHARE = 0.3;
/**
 * Who played only a little of the part is still of it: so many notes as written in one go, next to none other, and sound that
 * fits where it is. Of 195 takes by real players, cut after 8 and 15 seconds or whole, none was so taken to be of another
 * part, and 23 of 25 cut after 8 seconds were found to be of their own.
 */
const LEAST_RIGHT_OF_LITTLE = 10;
const LEAST_SHARE_OF_LITTLE = 0.9;
const LEAST_FIT_OF_LITTLE = 0.6;
/** Many offsets are tried, and some of them fit a little by chance: a transposed take must fit better. */
const LEAST_SHARE_ELSEWHERE = 0.55;
/** Of the notes that were heard, at least so many are as written in any playing of this part. */
const LEAST_RIGHT_OF_HEARD = 0.6;
/** A take this far off in tuning is out of tune, not transposed. */
const WIDEST_TUNING_CENTS = 80;

/**
 * Finds every note of the part in the recording.
 *
 * @param features what was heard
 * @param part what is written; has at least one note
 * @returns where each note is, what was added, begun again or jumped over, and whether it is this part at all
 *
 * Source: coarse path, segmental search and refinement name theirs.
 */
export function alignTake(features: Features, part: Part): Alignment {
  const pitches = part.notes.map((n) => n.soundingMidi);
  const lowestWritten = Math.min(...pitches);
  const lowest = lowestWritten - WIDEST_OFFSET;
  const highest = Math.max(...pitches) + WIDEST_OFFSET;
  let tuningCents = estimateTuning(features);
  let grid = buildPitchGrid(features, tuningCents, lowest, highest, lowestWritten);
  if (playingSeconds(grid) < LEAST_PLAYING_SECONDS) return nothingFound(part, 'nothing', tuningCents);
  let { path, offsetSemitones } = findFittedPath(grid, part);
  if (Math.abs(offsetSemitones) === 1 && Math.abs(100 * offsetSemitones + tuningCents) <= WIDEST_TUNING_CENTS) {
    tuningCents += 100 * offsetSemitones;
    offsetSemitones = 0;
    grid = buildPitchGrid(features, tuningCents, lowest, highest, lowestWritten);
  }
  if (!fits(path)) return nothingFound(part, 'other', tuningCents);
  const { pieces, restarts } = chooseRenditions(path.runs, part.notes.length);
  const evidence = createSegmentEvidence(grid);
  const heard: Heard = {
    features,
    grid,
    evidence,
    boundaries: findBoundaries(features, grid),
    tuningCents,
    offsetSemitones,
  };
  const notes: AlignedNote[] = part.notes.map((n) => unheard(n.index, n.grace));
  const added: AddedNote[] = [];
  for (const piece of pieces) {
    const found = alignPiece(heard, part, piece);
    for (const note of found.notes) notes[note.index] = note;
    added.push(...found.added);
  }
  const right = notes.filter((n) => n.status === 'as-written').length;
  const wrong = notes.filter((n) => n.status === 'other-pitch').length + added.length;
  const share = right / notes.length;
  const least = offsetSemitones % 12 === 0 ? LEAST_SHARE : LEAST_SHARE_ELSEWHERE;
  const enough = share >= least && right >= LEAST_RIGHT_OF_HEARD * (right + wrong);
  const little =
    offsetSemitones === 0 &&
    pieces.length === 1 &&
    restarts.length === 0 &&
    right >= LEAST_RIGHT_OF_LITTLE &&
    right >= LEAST_SHARE_OF_LITTLE * (right + wrong) &&
    Math.min(path.fit, path.heardOfReached) >= LEAST_FIT_OF_LITTLE;
  if (!enough && !little) return nothingFound(part, 'other', tuningCents);
  return {
    fit: 'this-part',
    share,
    notes,
    added,
    restarts: restarts.map((r) => exactly(r, notes)),
    skips: findSkips(part, notes),
    offsetSemitones,
    tuningCents,
  };
}

function fits({ fit, heard, heardOfReached }: CoarsePath): boolean {
  return heardOfReached >= LEAST_HEARD_OF_REACHED && (heard >= LEAST_HEARD || fit >= LEAST_FIT);
}

function playingSeconds(grid: PitchGrid): number {
  return grid.voicing.reduce((sum, v) => sum + v, 0) * grid.hopSeconds;
}

/** A grace note that was not heard is no fault: it may be too short to tell. */
function unheard(index: number, grace: boolean): AlignedNote {
  return grace ? { index, status: 'unclear', confidence: 0 } : { index, status: 'left-out', confidence: 0.5 };
}

function exactly(restart: Restart, notes: readonly AlignedNote[]): Restart {
  return { ...restart, onsetSeconds: notes[restart.resumedAtIndex]?.onsetSeconds ?? restart.onsetSeconds };
}

function nothingFound(part: Part, fit: 'other' | 'nothing', tuningCents: number): Alignment {
  const notes: AlignedNote[] = part.notes.map((n) => ({ index: n.index, status: 'unclear', confidence: 0 }));
  return { fit, share: 0, notes, added: [], restarts: [], skips: [], offsetSemitones: 0, tuningCents };
}
