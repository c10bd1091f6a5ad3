import { median } from '../../base/index.js';
import type { NoteContext } from '../context/context.js';
import type { AttackMeasure } from '../types.js';
import { accentOf } from './accents.js';
import { levelCourse } from './level-course.js';

/** The attack: so long from the onset that was found on. */
const ATTACK_SECONDS = 0.1;
/** It must stand out by so much from the softest moment before it, or it is what still sounds of the note before. */
const BEFORE_SECONDS = 0.09;
const STANDS_OUT_DB = 6;
/** What the note comes to: from so long after the onset on, without its end, for so long at most, and so long at least. */
const STEADY_FROM_SECONDS = 0.16;
const ENDING_SECONDS = 0.06;
const STEADY_TO_SECONDS = 0.6;
const LEAST_STEADY_SECONDS = 0.1;
/** A note that falls so much within it comes to no level: it is short, and the room goes on. */
const MOST_FALL_DB = 6;
const SHORT = ['staccato', 'staccatissimo', 'detached-legato'] as const;

/**
 * How far the attack of each tongued note is over the level the note comes to, where no accent is written.
 *
 * @param context the take with its notes measured
 * @returns one entry a tongued note without accent that lasts for about a third of a second or more, in order
 *
 * Source: RMS by definition, loudest frame over the median; the constants are working values.
 */
export function measureAttacks({ features, alignment, part }: NoteContext): AttackMeasure[] {
  return part.notes.flatMap((note): AttackMeasure[] => {
    const { onsetSeconds: onset, offsetSeconds: offset, status } = alignment.notes[note.index]!;
    if (onset === undefined || offset === undefined || status !== 'as-written') return [];
    if (note.grace || note.slurredFromPrevious || note.ornament !== null) return [];
    if (accentOf(part, note.index) !== undefined || SHORT.some((sign) => note.articulations.includes(sign))) return [];
    const [from, to] = [onset + STEADY_FROM_SECONDS, Math.min(offset - ENDING_SECONDS, onset + STEADY_TO_SECONDS)];
    if (to - from < LEAST_STEADY_SECONDS) return [];
    const begun = levelCourse(features, onset - BEFORE_SECONDS, onset + ATTACK_SECONDS).decibels;
    const softest = begun.indexOf(Math.min(...begun));
    const attackDb = Math.max(...begun.slice(softest));
    if (begun.length === 0 || attackDb - begun[softest]! < STANDS_OUT_DB) return [];
    const held = levelCourse(features, from, to).decibels;
    const half = Math.ceil(held.length / 2);
    if (median(held.slice(0, half)) - median(held.slice(-half)) > MOST_FALL_DB) return [];
    return [{ index: note.index, bar: note.bar, pass: note.pass, overDb: attackDb - median(held) }];
  });
}
