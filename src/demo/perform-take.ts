import type { Part } from '../score/index.js';
import { addRoom } from './add-room.js';
import { performPart } from './perform-part.js';
import { renderNotes } from './render-notes.js';
import type { PerformedTake, TakePlan } from './types.js';

/**
 * Plays a part and records it: the synthesised counterpart of a player with a microphone.
 *
 * @param part any part with notes
 * @param plan how to play and record it
 * @returns samples at the plan's rate, and every note as it was really played
 * @throws Error when a fault names a place or a misreading the part does not have
 */
export function performTake(part: Part, plan: TakePlan): PerformedTake {
  const truth = performPart(part, plan);
  const end = truth.reduce((latest, note) => Math.max(latest, note.offsetSeconds), 0);
  const samples = renderNotes(truth, plan, end + (plan.tailSeconds ?? 0.9));
  addRoom(samples, plan);
  return { samples, sampleRateHz: plan.sampleRateHz ?? 44100, truth };
}
