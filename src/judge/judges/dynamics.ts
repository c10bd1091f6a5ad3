import { isMeasured } from '../../base/index.js';
import type { ContrastMeasure, HairpinMeasure } from '../../measure/index.js';
import { STANDARDS } from '../../standards/index.js';
import type { Expected } from '../expected.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { MeasuredValue, Observation } from '../observed/observation.js';
import { askedFor } from '../standards-for.js';

/** Marks from soft to loud. Source: common practice. */
const ORDER = ['pppppp', 'ppppp', 'pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff', 'fffff', 'ffffff'];
const NORMAL_95 = 1.96;

/**
 * Contrasts between neighbouring marks, crescendos and diminuendos. Nothing is said when the recorder moved its level.
 *
 * @param input one take
 * @returns observations; a `fix` only when raw and register-adjusted levels agree and the error leaves no doubt
 *
 * Source: standards contrastLeast and hairpinLeast.
 */
export function judgeDynamics(input: JudgeInput): Observation[] {
  if (input.measurements.recording.levelRiding) return [];
  return [
    ...input.measurements.contrasts.flatMap((c) => judgeContrast(input, c)),
    ...input.measurements.hairpins.flatMap((h) => judgeHairpin(input, h)),
  ];
}

/** A change of level in the direction that is written, dB; below 0 it went the other way. */
export interface DirectedChange {
  readonly direction: 1 | -1;
  readonly raw: number;
  /** with what the instrument does by itself in that register taken out */
  readonly adjusted: number;
}

/**
 * @param change from one mark to the next, or along a hairpin
 * @returns its size in the direction that is written; null when it was not measured, or the marks ask for no change
 */
export function changeOf(change: ContrastMeasure | HairpinMeasure): DirectedChange | null {
  const [db, adjustedDb] =
    'from' in change
      ? [change.differenceDb, change.registerAdjustedDb]
      : [change.riseDb, change.registerAdjustedRiseDb];
  const direction = directionOf(change);
  if (direction === 0 || !isMeasured(db)) return null;
  const raw = direction * db;
  return { direction, raw, adjusted: isMeasured(adjustedDb) ? direction * adjustedDb : raw };
}

function directionOf(change: ContrastMeasure | HairpinMeasure): 1 | -1 | 0 {
  if (!('from' in change)) return change.kind === 'crescendo' ? 1 : -1;
  const steps = ORDER.indexOf(change.to) - ORDER.indexOf(change.from);
  return steps === 0 ? 0 : steps > 0 ? 1 : -1;
}

/** What is expected of a change in the direction that is written. */
function atLeast(direction: 1 | -1, value: number): Expected {
  return { code: direction > 0 ? 'at-least' : 'at-least-down', facts: { value } };
}

function judgeContrast(input: JudgeInput, contrast: ContrastMeasure): Observation[] {
  const change = changeOf(contrast);
  if (change === null) return [];
  const { direction, raw, adjusted } = change;
  const least = input.standards.contrastLeast.value;
  if (Math.min(raw, adjusted) >= least - input.standards.contrastMargin.value) return [];
  const both = Math.max(raw, adjusted);
  const halfWidth = contrast.intervalDb === undefined ? 0 : (contrast.intervalDb[1] - contrast.intervalDb[0]) / 2;
  const weight = both < least && (raw + adjusted) / 2 + halfWidth / 2 < least ? 'fix' : 'watch';
  const note = input.part.notes[contrast.index]!;
  const measured = {
    value: direction * raw,
    unit: 'dB',
    expected: atLeast(direction, least),
  } as const;
  const place = {
    criterion: 'dynamics',
    weight,
    size: 1 + (least - raw) / 4,
    ...placeOf(input, note),
    measured,
  } as const;
  const marks = { from: contrast.from, to: contrast.to };
  if (raw < -input.standards.contrastReversed.value && adjusted < least)
    return [{ kind: 'reversed-contrast', ...place, facts: { ...marks, db: raw } }];
  const byRegister = raw >= least;
  const asked = askedFor(input.standards.contrastLeast, STANDARDS.contrastLeast);
  return [
    {
      kind: 'weak-contrast',
      ...place,
      facts: { ...marks, db: byRegister ? adjusted : raw, least, byRegister, ...asked },
    },
  ];
}

function judgeHairpin(input: JudgeInput, hairpin: HairpinMeasure): Observation[] {
  const change = changeOf(hairpin);
  if (change === null) return [];
  const { direction, raw, adjusted } = change;
  const least = input.standards.hairpinLeast.value;
  if (Math.min(raw, adjusted) >= least - input.standards.contrastMargin.value) return judgeCourse(input, hairpin, raw);
  const rise = Math.max(raw, adjusted);
  const error = Number.isFinite(hairpin.errorDb) ? hairpin.errorDb! : least;
  const weight = rise < least && rise + NORMAL_95 * error < least + 1 ? 'fix' : 'watch';
  const note = input.part.notes[hairpin.index]!;
  const measured = {
    value: direction * raw,
    unit: 'dB',
    expected: atLeast(direction, least),
  } as const;
  const place = {
    criterion: 'dynamics',
    weight,
    size: Math.max(0.3, 1 + (least - rise) / 4),
    ...placeOf(input, note),
    toBar: hairpin.toBar,
    toIndex: hairpin.toIndex,
    measured,
  } as const;
  const { kind } = hairpin;
  if (raw < -input.standards.contrastReversed.value && adjusted < least)
    return [{ kind: 'reversed-hairpin', ...place, facts: { kind, db: raw } }];
  const byRegister = raw >= least;
  const asked = askedFor(input.standards.hairpinLeast, STANDARDS.hairpinLeast);
  return [
    { kind: 'weak-hairpin', ...place, facts: { kind, db: byRegister ? adjusted : raw, least, byRegister, ...asked } },
  ];
}

/** A change that is large enough may still be over too soon, or turn back: worth a listen. */
function judgeCourse(input: JudgeInput, hairpin: HairpinMeasure, db: number): Observation[] {
  const { course, kind, index, toIndex, toBar } = hairpin;
  const { courseEarly, courseTurned, hairpinLeast } = input.standards;
  if (course === undefined || hairpin.bar === toBar) return [];
  const turned = course.turnedBackDb >= courseTurned.value;
  if (!turned && course.halfwayShare < courseEarly.value) return [];
  const measured: MeasuredValue = turned
    ? { value: 100 * course.peakAt, unit: '%', expected: { code: 'at-end', facts: {} } }
    : { value: 100 * course.halfwayShare, unit: '%', expected: { code: 'about-half', facts: {} } };
  const place = { ...placeOf(input, input.part.notes[index]!), toBar, toIndex, measured };
  const facts = {
    kind,
    db,
    least: hairpinLeast.value,
    byRegister: false,
    course: turned ? 'turned-back' : 'early',
  } as const;
  return [{ kind: 'weak-hairpin', criterion: 'dynamics', weight: 'watch', size: 0.4, ...place, facts }];
}
