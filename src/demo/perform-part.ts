import type { Part, PartNote } from '../score/index.js';
import { type Context, faultAt, isLegatoInto, releaseOf } from './articulation.js';
import { dynamicPlan, MEZZO_FORTE_DBFS } from './dynamic-plan.js';
import { findNote } from './find-note.js';
import { planTiming, type TimedNote } from './plan-timing.js';
import { seededRandom } from './random.js';
import { soundFaultsAt } from './sound-faults.js';
import type { PlayedNote, TakePlan } from './types.js';
import { VOICES } from './voices.js';

const ADDED_SHARE = 0.4;
const ADDED_MOST_SECONDS = 0.25;
const ATTACK_SHARE = 0.6;

function pitchOf(context: Context, note: PartNote): number {
  const transposed = context.plan.transposeSemitones ?? 0;
  const misread = faultAt(context, 'misread', note);
  if (misread) {
    const found = note.misreadings.find((misreading) => misreading.kind === misread.misreading);
    if (!found) throw new Error(`note ${note.index} cannot be misread as ${misread.misreading}`);
    return found.soundingMidi + transposed;
  }
  return note.soundingMidi + (faultAt(context, 'wrong-note', note)?.semitones ?? 0) + transposed;
}

function centsOf({ part, plan, faults, random }: Context, note: PartNote): number {
  let cents = (plan.tuningCents ?? 0) + random.normal() * (plan.tuningScatterCents ?? 5);
  for (const fault of faults) {
    if (fault.kind === 'pitch-tendency' && fault.writtenMidi === note.writtenMidi) cents += fault.cents;
    if (fault.kind === 'out-of-tune' && findNote(part, fault.at).index === note.index) cents += fault.cents;
  }
  return cents;
}

function accentOf({ part, plan }: Context, note: PartNote): number {
  const accented =
    note.articulations.some((a) => a === 'accent' || a === 'strong-accent') ||
    part.dynamicEvents.some((event) => event.index === note.index);
  return accented ? (plan.accentDb ?? 3.5) : 0;
}

function thinnedBy({ part, faults }: Context, note: PartNote): number {
  let db = 0;
  for (const fault of faults) {
    if (fault.kind !== 'thin') continue;
    const [from, to] = [findNote(part, fault.from).index, findNote(part, fault.to).index];
    if (note.index >= from && note.index <= to) db += (fault.db * (note.index - from)) / (to - from);
  }
  return db;
}

function lostByTongue(context: Context, at: number): number {
  const fault = context.faults.find((one) => one.kind === 'soft-tongue');
  return fault?.kind === 'soft-tongue' && !isLegatoInto(context, at) ? fault.db : 0;
}

function playedNote(context: Context, at: number): PlayedNote {
  const { plan, timed, dynamicAt, random } = context;
  const now = timed[at] as TimedNote;
  const { note } = now;
  const legato = isLegatoInto(context, at + 1);
  const playedMidi = pitchOf(context, note);
  const accentDb = accentOf(context, note);
  const scatterDb = random.normal() * (plan.levelScatterDb ?? 0.5);
  const lostDb = thinnedBy(context, note) + lostByTongue(context, at);
  const ownDb = MEZZO_FORTE_DBFS + VOICES[plan.voice].registerDb(playedMidi) + scatterDb + accentDb - lostDb;
  const dynamicDb = dynamicAt(note.onsetQuarters);
  const sound = soundFaultsAt(context, note);
  const endDynamicDb = dynamicAt(note.onsetQuarters + Math.max(0, note.durationQuarters - 1e-3));
  return {
    index: note.index,
    afterIndex: timed[at - 1]?.note.index ?? -1,
    abandoned: now.abandoned,
    onsetSeconds: now.onsetSeconds,
    offsetSeconds: legato ? (timed[at + 1] as TimedNote).onsetSeconds : releaseOf(context, at),
    playedMidi,
    cents: centsOf(context, note),
    startDb: ownDb + dynamicDb + (plan.gainDb ?? 0),
    endDb: ownDb + endDynamicDb + (plan.gainDb ?? 0),
    dynamicDb,
    tongued: !isLegatoInto(context, at),
    legato,
    attackDb: accentDb * ATTACK_SHARE,
    ...(sound.length === 0 ? {} : { sound }),
  };
}

/** The note that slips in after `host`, and what is left of the host. */
function withAdded(host: PlayedNote, nextOnset: number, semitones: number): [PlayedNote, PlayedNote] {
  const seconds = Math.min(ADDED_MOST_SECONDS, (nextOnset - host.onsetSeconds) * ADDED_SHARE);
  const onsetSeconds = nextOnset - seconds;
  const shortened = { ...host, offsetSeconds: Math.min(host.offsetSeconds, onsetSeconds - 0.02), legato: false };
  const added: PlayedNote = {
    ...host,
    index: null,
    afterIndex: host.index ?? -1,
    onsetSeconds,
    offsetSeconds: nextOnset - 0.02,
    playedMidi: host.playedMidi + semitones,
    startDb: host.endDb,
    tongued: true,
    legato: false,
    attackDb: 0,
  };
  return [shortened, added];
}

/** Puts in the added notes; the note after one is tongued. */
function insertAdded({ part, faults }: Context, played: readonly PlayedNote[]): PlayedNote[] {
  const result: PlayedNote[] = [];
  played.forEach((note, i) => {
    const fault = faults.find((f) => f.kind === 'added-note' && findNote(part, f.after).index === note.index);
    const afterAdded = result.at(-1)?.index === null;
    const host = afterAdded ? { ...note, tongued: true } : note;
    const next = played[i + 1]?.onsetSeconds ?? note.offsetSeconds + 0.3;
    if (fault?.kind === 'added-note') result.push(...withAdded(host, next, fault.semitones));
    else result.push(host);
  });
  return result;
}

/**
 * Plays a part as a plan says: decides when each note begins and ends, at which pitch and how loud. Ornaments are played
 * as plain notes, grace notes before the beat.
 *
 * @param part any part with notes
 * @param plan how to play it, faults included
 * @returns every note as played, in time order
 * @throws Error when a fault names a place or a misreading the part does not have
 */
export function performPart(part: Part, plan: TakePlan): PlayedNote[] {
  const faults = plan.faults ?? [];
  const random = seededRandom(plan.seed);
  const timed = planTiming(part, plan, random);
  const hairpinShare = (number: number): number => {
    const fault = faults.findLast((f) => f.kind === 'hairpin' && (f.number === undefined || f.number === number));
    return fault?.kind === 'hairpin' ? fault.share : 1;
  };
  const dynamicAt = dynamicPlan(part, plan.contrast ?? 1, hairpinShare);
  const context: Context = { part, plan, faults, timed, dynamicAt, random };
  const played = timed.map((_, at) => playedNote(context, at));
  const heard = played.filter((_, at) => !faultAt(context, 'missed-note', (timed[at] as TimedNote).note));
  return insertAdded(context, heard);
}
