import {
  fitHuberLine,
  groupBy,
  isMeasured,
  type MaybeNumber,
  median,
  medianInterval,
  notMeasured,
} from '../../base/index.js';
import type { PartNote } from '../../score/index.js';
import type { NoteContext } from '../context/context.js';
import type { IntonationMeasure, LoudPitchMeasure, PitchTendency, RegisterName } from '../types.js';

/** A shorter note has no tuning to speak of. */
const LEAST_SECONDS = 0.12;
const LEAST_NOTES = 4;
/** A mark's notes must reach over this many decibels for pitch to be set against loudness. */
const LEAST_REACH_DB = 6;
const LEAST_LOUD_NOTES = 24;
const ALTERS: Readonly<Record<string, string>> = { '-2': '𝄫', '-1': '♭', '0': '', '1': '♯', '2': '𝄪' };

interface HeldNote {
  readonly note: PartNote;
  readonly cents: number;
  readonly levelDb: MaybeNumber;
}

/**
 * Where the player's pitch leans: by written note name, by register, and with loudness, all against the player's own
 * tuning.
 *
 * @param context the take with its notes measured
 * @returns cents, sharp positive, with counts and 95 % intervals
 *
 * Source: medians by definition; error of a median Kenney & Keeping 1962; line Huber 1981.
 */
export function measureIntonation(context: NoteContext): IntonationMeasure {
  const held = heldNotes(context);
  const byName = groupBy(held, ({ note }) => `${note.written.step}${ALTERS[note.written.alter] ?? ''}`);
  const noteNames = [...byName]
    .sort(([, a], [, b]) => (a[0]!.note.writtenMidi % 12) - (b[0]!.note.writtenMidi % 12))
    .flatMap(([name, notes]) => tendency(notes).map((t) => ({ name, ...t })));
  return { noteNames, registers: registersOf(context, held), withLoudness: withLoudness(held) };
}

function heldNotes(context: NoteContext): HeldNote[] {
  return context.notes.flatMap(({ index, centsFromOwnTuning, levelDb }): HeldNote[] => {
    const note = context.part.notes[index]!;
    const { status, onsetSeconds, offsetSeconds } = context.alignment.notes[index]!;
    if (status !== 'as-written' || note.grace || !isMeasured(centsFromOwnTuning)) return [];
    if (offsetSeconds! - onsetSeconds! < LEAST_SECONDS) return [];
    return [{ note, cents: centsFromOwnTuning, levelDb }];
  });
}

function tendency(notes: readonly HeldNote[]): PitchTendency[] {
  if (notes.length < LEAST_NOTES) return [];
  const cents = notes.map((n) => n.cents);
  return [{ cents: median(cents), count: cents.length, intervalCents: medianInterval(cents) }];
}

/** The range of the part in three thirds. */
function registersOf(context: NoteContext, held: readonly HeldNote[]): IntonationMeasure['registers'] {
  const midis = context.part.notes.map((n) => n.writtenMidi);
  const lowest = Math.min(...midis);
  const reach = Math.max(...midis) - lowest + 1;
  const names: readonly RegisterName[] = ['low', 'middle', 'high'];
  return names.flatMap((register, third) => {
    const fromMidi = lowest + Math.ceil((reach * third) / 3);
    const toMidi = lowest + Math.ceil((reach * (third + 1)) / 3) - 1;
    const here = held.filter(({ note }) => note.writtenMidi >= fromMidi && note.writtenMidi <= toMidi);
    return tendency(here).map((t) => ({ register, fromMidi, toMidi, ...t }));
  });
}

/** Cents for each decibel louder, each pitch compared with itself only, so that no register is taken for loudness. */
function withLoudness(held: readonly HeldNote[]): LoudPitchMeasure {
  const db: number[] = [];
  const cents: number[] = [];
  for (const [, alike] of groupBy(held, ({ note }) => note.writtenMidi)) {
    const heard = alike.flatMap((n) => (isMeasured(n.levelDb) ? [{ db: n.levelDb, cents: n.cents }] : []));
    if (heard.length < 2) continue;
    const level = median(heard.map((n) => n.db));
    const pitch = median(heard.map((n) => n.cents));
    for (const n of heard) {
      db.push(n.db - level);
      cents.push(n.cents - pitch);
    }
  }
  if (db.length < LEAST_LOUD_NOTES) return notMeasured('too-few-loud-and-soft');
  const reachDb = Math.max(...db) - Math.min(...db);
  if (reachDb < LEAST_REACH_DB) return notMeasured('loud-and-soft-alike');
  const { slope, slopeError } = fitHuberLine(db, cents);
  return { centsPerDb: slope, errorCentsPerDb: slopeError, reachDb, count: db.length };
}
