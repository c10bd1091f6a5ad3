import type { TransitionMeasure } from '../../measure/index.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';
import { onsetDoubt } from '../observed/onset-doubt.js';

/** A note shorter than this share of its time was meant to be short: the silence after it is no breath. */
const HELD_SHARE = 0.45;

/**
 * Silences where no breath, rest or fermata is written, and breaths that hold up the next note.
 *
 * @param input one take
 * @returns observations
 *
 * Source: standards breathGap, breathLate, hesitation.
 */
export function judgeBreath(input: JudgeInput): Observation[] {
  return input.measurements.transitions.flatMap((t) => judgeSilence(input, t));
}

function judgeSilence(input: JudgeInput, transition: TransitionMeasure): Observation[] {
  const { breathGap, breathLate, hesitation } = input.standards;
  const note = input.part.notes[transition.index]!;
  const next = input.part.notes[transition.toIndex]!;
  if (next.restBeforeQuarters > 0 || note.fermata || next.heldRestBefore === true) return [];
  const excess = transition.betweenOnsetsSeconds - (transition.expectedSeconds ?? transition.betweenOnsetsSeconds);
  const gap = transition.gapSeconds;
  const place = placeOf(input, note);
  if (excess > hesitation.value && gap > hesitation.value / 2) {
    const measured = { value: excess, unit: 's', expected: { code: 'no-wait', facts: {} } } as const;
    return [
      {
        kind: 'hesitation',
        criterion: 'continuity',
        weight: 'watch',
        size: excess,
        ...place,
        measured,
        facts: { seconds: excess },
      },
    ];
  }
  if (note.breathAfter !== null) {
    if (excess <= breathLate.value) return [];
    const measured = { value: excess, unit: 's', expected: { code: 'next-note-on-beat', facts: {} } } as const;
    return [
      {
        kind: 'breath-late',
        criterion: 'breath',
        weight: 'watch',
        size: excess,
        ...place,
        measured,
        facts: { seconds: excess },
      },
    ];
  }
  const inSlur = note.slurredToNext && next.slurredFromPrevious;
  if (gap <= breathGap.value || !isBreath(input, transition, inSlur)) return [];
  const plain = gap - onsetDoubt(input) > breathGap.value;
  const sure = [note, next].every((n) => {
    const aligned = input.alignment.notes[n.index]!;
    return aligned.status === 'as-written' && aligned.confidence >= input.standards.noteConfidence.value;
  });
  const measured = { value: gap, unit: 's', expected: { code: 'no-breath', facts: {} } } as const;
  const facts = { seconds: gap, inSlur };
  return [
    {
      kind: 'breath-unmarked',
      criterion: 'breath',
      weight: plain && sure ? 'fix' : 'watch',
      size: 0.7 + gap,
      ...place,
      measured,
      facts,
    },
  ];
}

/** Inside a slur any long silence; elsewhere one that cuts a note short that is not marked short, or delays the next. */
function isBreath(input: JudgeInput, transition: TransitionMeasure, inSlur: boolean): boolean {
  if (inSlur) return true;
  const note = input.part.notes[transition.index]!;
  const short = note.articulations.some((a) => a === 'staccato' || a === 'staccatissimo' || a === 'detached-legato');
  const delays =
    transition.expectedSeconds !== undefined &&
    transition.betweenOnsetsSeconds - transition.expectedSeconds > input.standards.breathGap.value / 2;
  return delays || (!short && transition.soundedShare < 1 - HELD_SHARE);
}
