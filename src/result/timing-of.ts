import type { Measurements } from '../measure/index.js';
import type { Part, PartNote } from '../score/index.js';
import { rounded } from './rounding.js';
import type { TakeResult } from './take-result-schema.js';
import type { Told } from './told-reason.js';

/** The fields of the result document that hold timing. */
type Timing = { readonly [K in 'groups' | 'entries' | 'transitions']: NonNullable<TakeResult[K]> };

type Transition = Timing['transitions'][number];

/**
 * What is kept of a take's timing beyond the notes themselves: how groups share their time, when notes after rests come,
 * and how notes go over into the next where the part asks for something.
 *
 * @param part the part as performed
 * @param measurements the take's measurements; seconds
 * @returns fields of the result document
 *
 * Source: definition.
 */
export function timingOf(part: Part, measurements: Told<Measurements>): Timing {
  return {
    groups: measurements.groups.map(({ index, toIndex, bar, pass, shares, written }) => ({
      ...{ index, toIndex, bar, pass },
      shares: shares.map((share) => rounded(share, 'share')),
      written: written.map((share) => rounded(share, 'share')),
    })),
    entries: measurements.entries.map(({ index, bar, pass, lateSeconds, secondsAQuarter }) => ({
      ...{ index, bar, pass },
      lateSeconds: rounded(lateSeconds, 'seconds'),
      secondsAQuarter: rounded(secondsAQuarter, 'seconds'),
    })),
    transitions: measurements.transitions.flatMap(({ index, toIndex, gapSeconds, soundedShare }): Transition[] => {
      const asked = askedAfter(part.notes[index], part.notes[toIndex]);
      if (asked === null) return [];
      const measured = { gapSeconds: rounded(gapSeconds, 'seconds'), soundedShare: rounded(soundedShare, 'share') };
      return [{ index, toIndex, asked, ...measured }];
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
