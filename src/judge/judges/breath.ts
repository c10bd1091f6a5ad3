import { isMeasured } from '../../base/index.js';
import type { BriefBreath } from '../../brief/index.js';
import type { BreathMeasure, TransitionMeasure } from '../../measure/index.js';
import { isSure } from '../observed/is-sure.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';
import { onsetDoubt } from '../observed/onset-doubt.js';

/** A note shorter than this share of its time was meant to be short: the silence after it is no breath. */
const HELD_SHARE = 0.45;

/**
 * Silences where no breath, rest or fermata is written, breaths that hold up the next note, and breaths that a teacher asks for
 * and that are not taken, or are no full ones. What the part alone marks is left to the player.
 *
 * @param input one take
 * @returns observations
 *
 * Source: standards breathGap, breathLate, hesitation, breathTaken, breathTongue, breathFull, breathSip.
 */
export function judgeBreath(input: JudgeInput): Observation[] {
  const { transitions, breaths } = input.measurements;
  return [...transitions.flatMap((t) => judgeSilence(input, t)), ...breaths.flatMap((b) => judgeAsked(input, b))];
}

/** A breath asked for: none at all where there is no more than the tongue leaves, a quick one in place of a full one. */
function judgeAsked(input: JudgeInput, breath: BreathMeasure): Observation[] {
  const { brief, standards, measurements } = input;
  const asked: BriefBreath | undefined = brief?.breaths.find(({ index }) => index === breath.index);
  const gap = breath.gapSeconds;
  if (brief?.ownBreaths !== true || asked === undefined || !isMeasured(gap)) return [];
  const { breathTaken, breathTongue, breathFull, breathSip, ringingLong } = standards;
  const { reverberationSeconds: rings } = measurements.recording;
  const sure =
    !(isMeasured(rings) && rings >= ringingLong.value) &&
    [breath.index, breath.index + 1].every((i) => isSure(input, i));
  const place = {
    criterion: 'breath',
    ...placeOf(input, input.part.notes[breath.index]!),
    facts: { seconds: gap },
  } as const;
  const measured = (least: number) =>
    ({ value: gap, unit: 's', expected: { code: 'at-least-as-long', facts: { value: least } } }) as const;
  if (gap < breathTaken.value) {
    const weight = sure && gap <= breathTongue.value ? 'fix' : 'watch';
    return [{ kind: 'breath-missed', weight, size: 0.9, measured: measured(breathTaken.value), ...place }];
  }
  if (asked.kind !== 'full' || gap >= breathFull.value) return [];
  const weight = sure && gap < breathSip.value ? 'fix' : 'watch';
  return [{ kind: 'breath-short', weight, size: 0.7, measured: measured(breathFull.value), ...place }];
}

function judgeSilence(input: JudgeInput, transition: TransitionMeasure): Observation[] {
  const { breathGap, breathLate, hesitation, slurDip } = input.standards;
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
  const sure = transition.dipDb > slurDip.value && [note, next].every((n) => isSure(input, n.index));
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
