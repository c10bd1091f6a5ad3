import type { EntryMeasure, GroupMeasure } from '../../measure/index.js';
import { leaningAt } from '../leanings.js';
import { isSure } from '../observed/is-sure.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';
import { onsetDoubt } from '../observed/onset-doubt.js';
import { pitchDoubt } from '../observed/pitch-doubt.js';

/** A note that seems to have less of its time than this was more likely misheard than rushed. */
const LEAST_BELIEVED = 0.4;
/** To be worth a listen a group need only be beyond this share of the doubt. */
const WATCH_DOUBT = 0.6;

/**
 * Entries after rests, and groups of equal notes.
 *
 * @param input one take
 * @returns observations
 *
 * Source: standards entryWatch, entryFix, groupWatch, groupFix.
 */
export function judgeRhythm(input: JudgeInput): Observation[] {
  return [
    ...input.measurements.entries.flatMap((e) => judgeEntry(input, e)),
    ...input.measurements.groups.flatMap((g) => judgeGroup(input, g)),
  ];
}

function judgeEntry(input: JudgeInput, entry: EntryMeasure): Observation[] {
  const { entryWatch, entryFix, entryLeast, entryLeastFix, entryMost, entryEarly } = input.standards;
  const beats = entry.lateSeconds / entry.secondsAQuarter;
  const note = input.part.notes[entry.index]!;
  const measured = { value: entry.lateSeconds, unit: 's', expected: { code: 'on-the-beat', facts: {} } } as const;
  const facts = { milliseconds: Math.abs(1000 * entry.lateSeconds), restQuarters: entry.restQuarters };
  const place = {
    criterion: 'rhythm',
    size: 0.6 + 2 * Math.abs(beats),
    ...placeOf(input, note),
    measured,
    facts,
  } as const;
  if (entry.lateSeconds < 0) {
    const early = -beats > entryEarly.value && -entry.lateSeconds > 2 * entryLeast.value;
    return early && isSure(input, entry.index) ? [{ kind: 'early-entry', weight: 'watch', ...place }] : [];
  }
  if (beats <= entryWatch.value || entry.lateSeconds <= entryLeast.value) return [];
  const atLeast = entry.lateSeconds - onsetDoubt(input);
  const late = atLeast / entry.secondsAQuarter > entryFix.value && beats <= entryMost.value;
  const plain = late && atLeast > entryLeastFix.value;
  const sure = plain && isSure(input, entry.index) && isSure(input, entry.index - 1);
  return [{ kind: 'late-entry', weight: sure ? 'fix' : 'watch', ...place }];
}

function judgeGroup(input: JudgeInput, group: GroupMeasure): Observation[] {
  const { groupWatch, groupFix, onsetError } = input.standards;
  const away = group.shares.map((share, k) => share - group.written[k]!);
  const which = away.findIndex((a) => Math.abs(a) === Math.max(...away.map(Math.abs)));
  const off = Math.abs(away[which]!);
  const error = onsetError.value + pitchDoubt(input, group.index, group.toIndex + 1);
  const perhaps = off - (WATCH_DOUBT * error) / group.seconds;
  const doubt = (Math.SQRT2 * (error + onsetDoubt(input))) / group.seconds;
  if (perhaps <= groupWatch.value) return [];
  const indexes = Array.from({ length: group.toIndex - group.index + 1 }, (_, k) => group.index + k);
  const believable = group.shares.every((share, k) => share > LEAST_BELIEVED * group.written[k]!);
  const repeats = [...indexes, group.toIndex + 1].some((i) => i > group.index && isRepeated(input, i));
  // beside notes that were not made out the edges of a group are not sure either, nor is its inside where more was played
  const clear =
    [group.index - 1, group.toIndex + 1].every(
      (i) => (input.alignment.notes[i]?.status ?? 'as-written') === 'as-written',
    ) && !input.alignment.added.some((a) => a.afterIndex >= group.index && a.afterIndex <= group.toIndex);
  const heard = clear && indexes.every((i) => isSure(input, i));
  const sure = believable && !repeats && off - doubt > groupFix.value && heard;
  const note = input.part.notes[group.index]!;
  const measured = {
    value: 100 * group.shares[which]!,
    unit: '%',
    expected: { code: 'percent', facts: { percent: 100 * group.written[which]! } },
  } as const;
  const cause = leaningAt(input, group, which);
  const facts = {
    notes: group.shares.length,
    tuplet: group.tuplet,
    which,
    share: group.shares[which]!,
    written: group.written[which]!,
    ...(cause === undefined ? {} : { cause }),
  };
  const place = { ...placeOf(input, note), toIndex: group.toIndex, measured, facts };
  return [{ kind: 'uneven-group', criterion: 'rhythm', weight: sure ? 'fix' : 'watch', size: 0.5 + 4 * off, ...place }];
}

/** The onset of a note at the pitch of the one before it is the least sure of all. */
function isRepeated({ part }: JudgeInput, index: number): boolean {
  return part.notes[index]?.soundingMidi === part.notes[index - 1]?.soundingMidi;
}
