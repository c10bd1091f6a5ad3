import { isMeasured, median } from '../../base/index.js';
import { isBeyond } from '../beyond.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import { noteName } from '../observed/note-name.js';
import type { Observation } from '../observed/observation.js';
import { type Stray, strayOf } from '../observed/stray-of.js';

/** So often the same note must stray the same way to be a tendency. */
const LEAST_TIMES = 3;

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
  if (!isMeasured(tuning) || !isBeyond(Math.abs(tuning.centsFromA440), input.standards.tuningWatch.value, 0)) return [];
  const first = input.part.notes[0]!;
  const measured = {
    value: tuning.centsFromA440,
    unit: 'cents',
    expected: { code: 'within', facts: { value: input.standards.tuningWatch.value } },
  } as const;
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

/** Notes that stray; the same note straying the same way several times is one tendency, told once. */
function singleNotes(input: JudgeInput): Observation[] {
  const strays = input.measurements.notes.flatMap((m) => strayOf(input, m) ?? []);
  const tendencies = new Map<string, Stray[]>();
  for (const stray of strays) {
    const key = `${stray.note.writtenMidi} ${Math.sign(stray.cents)}`;
    tendencies.set(key, [...(tendencies.get(key) ?? []), stray]);
  }
  return [...tendencies.values()].flatMap((alike) =>
    alike.length < LEAST_TIMES ? alike.map((stray) => tell(input, stray, [stray])) : [tell(input, worst(alike), alike)],
  );
}

function worst(alike: readonly Stray[]): Stray {
  const sure = alike.filter((s) => s.weight === 'fix');
  return (sure.length > 0 ? sure : alike).reduce((a, b) => (Math.abs(b.cents) > Math.abs(a.cents) ? b : a));
}

function tell(input: JudgeInput, stray: Stray, alike: readonly Stray[]): Observation {
  const cents = median(alike.map((s) => s.cents));
  const expected = { code: 'within', facts: { value: input.standards.noteWatch.value } } as const;
  const measured = { value: cents, unit: 'cents', expected } as const;
  const doubt = stray.secondCents === undefined ? {} : { secondCents: stray.secondCents };
  const facts = { written: noteName(stray.note.written), cents, times: alike.length, ...doubt };
  return {
    kind: 'note-out-of-tune',
    criterion: 'intonation',
    weight: stray.weight,
    size: Math.abs(cents) / 40 + alike.length / 20,
    ...placeOf(input, stray.note),
    measured,
    facts,
  };
}
