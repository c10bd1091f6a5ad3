/**
 * What every room may use: the error a user can fix, the mark for "not measured", pitch units, order statistics.
 *
 * Conventions of the whole house: times are seconds from the first sample of the file; levels are dB relative to full
 * scale (RMS of the mono mix); pitch is MIDI note numbers or cents, sharp positive; score time is quarter notes from the
 * first performed bar.
 */
export { besselI0 } from './bessel.js';
export { byCodePoint } from './by-code-point.js';
export { CAUTIONS, type Caution } from './cautions.js';
export {
  type Coded,
  type CodeTable,
  codeAsData,
  type FactShape,
  type FactsOf,
  isCoded,
  type LooseCode,
  type Sayings,
} from './coded.js';
export {
  FAILURES,
  type Failure,
  type FailureTable,
  type Fault,
  type FaultArguments,
  type FaultCode,
  type FaultFacts,
  type InputErrorCode,
  kindOf,
} from './faults.js';
export { groupBy } from './group-by.js';
export { type FittedLine, fitHuberLine } from './huber-line.js';
export { InputError } from './input-error.js';
export { agreedLanguage, DEFAULT_LANGUAGE, LANGUAGES, type Language } from './language.js';
export {
  isMeasured,
  type MaybeNumber,
  type MaybeNumberTold,
  type NotMeasured,
  type NotMeasuredTold,
  notMeasured,
} from './not-measured.js';
export { A4_HZ, A4_MIDI, hzToMidi, midiToHz } from './pitch.js';
export { printable } from './printable.js';
export { criterionReason, REASONS, type Reason, type ReasonArguments } from './reasons.js';
export type { FileFormat } from './recording-faults.js';
export { sha256 } from './sha256.js';
export { median, medianError, medianInterval, quantile, robustSpread } from './statistics.js';
export { studentQuantile } from './student-quantile.js';
