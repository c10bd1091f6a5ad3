import type { PitchName } from '../../../study/index.js';
import { barRuns } from '../../rules/bar-runs.js';
import { beatInFigures } from '../../rules/beats.js';
import type { StudyPlaces } from '../../shapes/study.js';
import { listed } from '../lists.js';
import { noteName } from '../names.js';

const ENDINGS: Readonly<Record<string, string>> = { '-2': '♭♭', '-1': '♭', '1': '♯', '2': '♯♯' };

/**
 * @param pitch letter and alteration
 * @param octave when it is to be said as well, 4 for the one that begins with the middle C
 * @returns name: `Fis`, `H`, `B`; with its octave `c′` for the middle C
 *
 * Source: common practice.
 */
export function pitchName({ step, alter }: PitchName, octave?: number): string {
  return noteName(step + (ENDINGS[String(Math.round(alter))] ?? ''), octave);
}

/** Where places are. */
export const STUDY_PLACES: StudyPlaces = {
  bars: (bar, toBar) => (bar === toBar ? `Takt ${bar}` : `Takt ${bar}–${toBar}`),
  barList: (bars) => {
    const { runs, leftOut } = barRuns(bars);
    const more = leftOut === 0 ? [] : [`${leftOut} weitere`];
    return `Takt ${listed([...runs, ...more])}`;
  },
  note: (bar, beat) => {
    const { text, after } = beatInFigures(beat);
    return `Takt ${bar}, ${after ? 'nach Schlag' : 'Schlag'} ${text}`;
  },
};
