import { isMeasured, median, quantile } from '../../base/index.js';
import type { TransitionMeasure } from '../../measure/index.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation } from '../observed/observation.js';
import { onsetDoubt } from '../observed/onset-doubt.js';
import { pitchDoubt } from '../observed/pitch-doubt.js';

const LEAST_OTHERS = 3;
/** Loud only at the beginning. Source: common practice. */
const DROPS: ReadonlySet<string> = new Set(['fp', 'sfp', 'sfzp', 'sfpp']);
/** A dotted note leaves about this share of its time silent. Source: as standard staccatoWatch. */
const SHORT_GAP_SHARE = 0.45;
/** This share of the other dots must be plainly short: else the room or the release of the instrument fills the gaps. */
const MOST_OTHERS = 0.8;

/**
 * Slurs that break, staccato notes that are held, accents that do not stand out.
 *
 * @param input one take
 * @returns observations
 *
 * Source: standards slurGapWatch, slurGapFix, staccatoWatch, staccatoFix, accentWatch. A gap as long as a breath inside a slur is the breath's.
 */
export function judgeArticulation(input: JudgeInput): Observation[] {
  const transitions = input.measurements.transitions.filter((t) => bothAsWritten(input, t));
  const staccatos = transitions.filter((t) => isPlainStaccato(input, t));
  return [
    ...judgeAccents(input),
    ...transitions.flatMap((t) => judgeSlur(input, t)),
    ...allHeld(input, staccatos),
    ...judgeStaccatos(input, staccatos),
  ];
}

/** An accent is only ever watched: much of it is colour, which the level does not show. */
function judgeAccents(input: JudgeInput): Observation[] {
  const { accentWatch, accentSpread } = input.standards;
  return input.measurements.accents.flatMap((a): Observation[] => {
    if (input.measurements.recording.levelRiding || input.alignment.notes[a.index]?.status !== 'as-written') return [];
    if (DROPS.has(a.mark) && a.fallDb !== undefined && a.fallDb < input.standards.fallLeast.value) {
      return [staysLoud(input, a.index, a.fallDb)];
    }
    if (a.overDb >= accentWatch.value || a.spreadDb > accentSpread.value) return [];
    const note = input.part.notes[a.index]!;
    const measured = { value: a.overDb, unit: 'dB', expected: { code: 'louder-than-neighbours', facts: {} } } as const;
    const place = { ...placeOf(input, note), measured, facts: { db: a.overDb } };
    return [{ kind: 'accent-weak', criterion: 'articulation', weight: 'watch', size: 0.5, ...place }];
  });
}

/** An fp whose second half does not come. */
function staysLoud(input: JudgeInput, index: number, fallDb: number): Observation {
  const expected = { code: 'softer-after-attack', facts: { db: input.standards.fallLeast.value } } as const;
  const measured = { value: fallDb, unit: 'dB', expected } as const;
  const facts = { db: fallDb, falls: true };
  const place = { ...placeOf(input, input.part.notes[index]!), measured, facts };
  return { kind: 'accent-weak', criterion: 'articulation', weight: 'watch', size: 0.5, ...place };
}

function bothAsWritten(input: JudgeInput, transition: TransitionMeasure): boolean {
  return [transition.index, transition.toIndex].every((i) => input.alignment.notes[i]?.status === 'as-written');
}

function judgeSlur(input: JudgeInput, transition: TransitionMeasure): Observation[] {
  const { slurGapWatch, slurGapFix, slurDip, breathGap, noteConfidence } = input.standards;
  const note = input.part.notes[transition.index]!;
  const next = input.part.notes[transition.toIndex]!;
  if (!note.slurredToNext || !next.slurredFromPrevious || note.soundingMidi === next.soundingMidi) return [];
  const gap = transition.gapSeconds;
  const surely = gap - pitchDoubt(input, transition.index, transition.toIndex);
  if (surely <= slurGapWatch.value || gap > breathGap.value) return [];
  const sure = [transition.index, transition.toIndex].every(
    (i) => input.alignment.notes[i]!.confidence >= noteConfidence.value,
  );
  const speaks = !isMuchSofter(input, transition);
  const measured = { value: gap, unit: 's', expected: { code: 'no-gap', facts: {} } } as const;
  const place = { ...placeOf(input, next), measured, facts: { milliseconds: 1000 * gap } };
  const weight =
    sure && speaks && surely - onsetDoubt(input) > slurGapFix.value && transition.dipDb > slurDip.value
      ? 'fix'
      : 'watch';
  return [{ kind: 'slur-broken', criterion: 'articulation', weight, size: 0.6 + gap, ...place }];
}

/** A note that hardly spoke leaves a gap of its own: nobody broke the slur before it. */
function isMuchSofter({ measurements, standards }: JudgeInput, { index, toIndex }: TransitionMeasure): boolean {
  const [from, to] = [measurements.notes[index]!.levelDb, measurements.notes[toIndex]!.levelDb];
  return isMeasured(from) && isMeasured(to) && to - from > standards.slurSpoken.value;
}

/** A dot that is neither under a slur nor before a rest, where the end of the note can be heard. */
function isPlainStaccato(input: JudgeInput, transition: TransitionMeasure): boolean {
  const note = input.part.notes[transition.index]!;
  const next = input.part.notes[transition.toIndex]!;
  const short = note.articulations.includes('staccato') || note.articulations.includes('staccatissimo');
  return short && !note.slurredToNext && !note.fermata && next.restBeforeQuarters === 0 && note.breathAfter === null;
}

/** In a room that rings, a note may seem held although it was let go: then the level falls as the room lets it. */
function mayBeRoom({ measurements, standards }: JudgeInput, transition: TransitionMeasure): boolean {
  const { reverberationSeconds } = measurements.recording;
  if (!isMeasured(reverberationSeconds) || reverberationSeconds >= standards.ringingLong.value) return true;
  if (reverberationSeconds < standards.ringing.value) return false;
  const expectedFallDb = (SHORT_GAP_SHARE * transition.betweenOnsetsSeconds * 60) / reverberationSeconds;
  return transition.dipDb >= standards.ringingFall.value * expectedFallDb;
}

/** When nearly every dot is held it is a habit, or the room: one thing to listen to, not many. */
function allHeld(input: JudgeInput, staccatos: readonly TransitionMeasure[]): Observation[] {
  const usual = median(staccatos.map((t) => t.soundedShare));
  if (staccatos.length <= LEAST_OTHERS || usual <= input.standards.staccatoWatch.value) return [];
  const note = input.part.notes[staccatos[0]!.index]!;
  const measured = { value: 100 * usual, unit: '%', expected: { code: 'about-half', facts: {} } } as const;
  const facts = { percent: 100 * usual, usual: null, all: true };
  const place = { ...placeOf(input, note), measured, facts };
  return [{ kind: 'staccato-long', criterion: 'articulation', weight: 'watch', size: usual, ...place }];
}

function judgeStaccatos(input: JudgeInput, staccatos: readonly TransitionMeasure[]): Observation[] {
  const { staccatoWatch, staccatoFix, staccatoSeconds } = input.standards;
  return staccatos.flatMap((t): Observation[] => {
    const share = t.soundedShare;
    if (share <= staccatoWatch.value || t.betweenOnsetsSeconds < staccatoSeconds.value) return [];
    const others = staccatos.filter((o) => o !== t).map((o) => o.soundedShare);
    const usual = others.length >= LEAST_OTHERS ? median(others) : null;
    const sure =
      share - onsetDoubt(input) / t.betweenOnsetsSeconds > staccatoFix.value &&
      others.length >= LEAST_OTHERS &&
      quantile(others, MOST_OTHERS) < staccatoWatch.value &&
      !mayBeRoom(input, t);
    const note = input.part.notes[t.index]!;
    const measured = { value: 100 * share, unit: '%', expected: { code: 'about-half', facts: {} } } as const;
    const facts = { percent: 100 * share, usual: usual === null ? null : 100 * usual, all: false };
    const place = { ...placeOf(input, note), measured, facts };
    return sure || usual === null || usual < staccatoWatch.value
      ? [
          {
            kind: 'staccato-long',
            criterion: 'articulation',
            weight: sure ? 'fix' : 'watch',
            size: 0.5 * share,
            ...place,
          },
        ]
      : [];
  });
}
