import type { PitchName, RangeEnd } from '../../../study/index.js';
import { barRuns } from '../../rules/bar-runs.js';
import { beatInFigures } from '../../rules/beats.js';
import { signOf } from '../../rules/sign-of.js';
import type { StudyPlaces } from '../../shapes/study.js';
import { listed } from '../lists.js';

/**
 * @param pitch letter and alteration
 * @returns name with its sign, a natural included: `F♯`, `B♮`
 *
 * Source: common practice.
 */
export function signedName({ step, alter }: PitchName): string {
  return step + signOf(alter);
}

/**
 * @param pitch as written, the middle C in octave 4
 * @returns `B♭5`; a letter alone is a natural here
 *
 * Source: common practice (scientific pitch notation).
 */
export function signedNameWithOctave({ step, alter, octave }: RangeEnd['pitch']): string {
  return `${step}${alter === 0 ? '' : signOf(alter)}${octave}`;
}

/** Where places are. */
export const STUDY_PLACES: StudyPlaces = {
  bars: (bar, toBar) => (bar === toBar ? `Bar ${bar}` : `Bars ${bar}–${toBar}`),
  barList: (bars) => {
    const { runs, leftOut } = barRuns(bars);
    const more = leftOut === 0 ? [] : [`${leftOut} more`];
    return `${bars.length === 1 ? 'Bar' : 'Bars'} ${listed([...runs, ...more])}`;
  },
  note: (bar, beat) => {
    const { text, after } = beatInFigures(beat);
    return `Bar ${bar}, beat ${text}${after ? ' and a bit' : ''}`;
  },
};
