import { isMeasured } from '../../base/index.js';
import type { JudgeInput } from '../judge-input.js';
import { placeOf } from '../judge-input.js';
import { noteName } from '../note-name.js';
import type { Observation } from '../observation.js';

/**
 * The tuning of the take as a whole, and held notes that stand out from the player's own tuning.
 *
 * @param input one take
 * @returns observations; notes of one written pitch that stray alike are one observation
 *
 * Source: standards tuningWatch, noteWatch, noteFix.
 */
export function judgeIntonation(input: JudgeInput): Observation[] {
  return [...wholeTake(input), ...singleNotes(input)];
}

function wholeTake(input: JudgeInput): Observation[] {
  const { tuning } = input.measurements;
  if (!isMeasured(tuning) || Math.abs(tuning.centsFromA440) <= input.standards.tuningWatch.value) return [];
  const first = input.part.notes[0]!;
  const measured = {
    value: tuning.centsFromA440,
    unit: 'cents',
    expected: `within ${input.standards.tuningWatch.value}`,
  };
  return [
    {
      kind: 'tuning-off',
      criterion: 'intonation',
      weight: 'watch',
      size: Math.abs(tuning.centsFromA440) / 40,
      bar: first.bar,
      pass: first.pass,
      measured,
      facts: { cents: tuning.centsFromA440 },
    },
  ];
}

function singleNotes(input: JudgeInput): Observation[] {
  const { noteWatch, noteFix, noteSeconds } = input.standards;
  return input.measurements.notes.flatMap((m): Observation[] => {
    const aligned = input.alignment.notes[m.index]!;
    const cents = m.centsFromOwnTuning;
    if (aligned.status !== 'as-written' || !isMeasured(cents) || Math.abs(cents) <= noteWatch.value) return [];
    const seconds = aligned.offsetSeconds! - aligned.onsetSeconds!;
    const held = seconds >= noteSeconds.value;
    if (!held && Math.abs(cents) <= noteFix.value) return [];
    const note = input.part.notes[m.index]!;
    const weight = held && Math.abs(cents) > noteFix.value ? 'fix' : 'watch';
    const measured = { value: cents, unit: 'cents', expected: `within ${noteWatch.value}` };
    const facts = { written: noteName(note.written), cents, times: 1 };
    return [
      {
        kind: 'note-out-of-tune',
        criterion: 'intonation',
        weight,
        size: Math.abs(cents) / 40,
        ...placeOf(input, note),
        measured,
        facts,
      },
    ];
  });
}
