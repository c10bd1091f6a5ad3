import type { Measurements } from '../measure/index.js';
import type { Part, PartNote } from '../score/index.js';
import type { TakeDraft } from './schema/take-result-schema.js';
import type { Told } from './told-reason.js';

/** The fields of the result document that hold timing. */
type Timing = { readonly [K in 'groups' | 'unevenness' | 'entries' | 'transitions']: NonNullable<TakeDraft[K]> };

type Transition = Timing['transitions'][number];

/**
 * What is kept of a take's timing beyond the notes themselves: how groups share their time, when notes after rests come,
 * and how notes go over into the next where the part asks for something.
 *
 * @param part the part as performed
 * @param measurements the take's measurements; seconds
 * @returns fields of the result document
 */
export function timingOf(part: Part, measurements: Told<Measurements>): Timing {
  return {
    groups: measurements.groups,
    unevenness: measurements.unevenness,
    entries: measurements.entries,
    transitions: measurements.transitions.flatMap(({ index, toIndex, gapSeconds, soundedShare }): Transition[] => {
      const asked = askedAfter(part.notes[index], part.notes[toIndex]);
      return asked === null ? [] : [{ index, toIndex, asked, gapSeconds, soundedShare }];
    }),
  };
}

/** A dotted note before a rest, or under a fermata, does not show by its length that it is short. */
function askedAfter(note: PartNote | undefined, next: PartNote | undefined): Transition['asked'] | null {
  if (note === undefined || next === undefined) return null;
  if (note.breathAfter !== null) return 'breath';
  if (note.slurredToNext) return 'slur';
  const dotted = note.articulations.includes('staccato') || note.articulations.includes('staccatissimo');
  return dotted && !note.fermata && next.restBeforeQuarters === 0 ? 'staccato' : null;
}
