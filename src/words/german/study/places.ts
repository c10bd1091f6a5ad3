import { noteNameIn } from '../../../judge/index.js';
import type { PitchName } from '../../../study/index.js';
import { beatInFigures } from '../../place.js';
import { barRuns } from '../../study/bar-runs.js';
import type { StudyPlaces } from '../../study/study-words.js';

const ENDINGS: Readonly<Record<string, string>> = { '-2': '♭♭', '-1': '♭', '1': '♯', '2': '♯♯' };

/**
 * @param pitch letter and alteration
 * @param octave when it is to be said as well, 4 for the one that begins with the middle C
 * @returns name: `Fis`, `H`, `B`; with its octave `c′` for the middle C
 *
 * Source: common practice.
 */
export function germanPitch({ step, alter }: PitchName, octave?: number): string {
  return noteNameIn('de', step + (ENDINGS[String(Math.round(alter))] ?? ''), octave);
}

/**
 * @param words one or more
 * @returns `1`, `1 und 2`, `1, 2 und 3`
 *
 * Source: definition.
 */
export function germanList(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} und ${last}`;
}

/** Where places are, in German. */
export const GERMAN_PLACES: StudyPlaces = {
  bars: (bar, toBar) => (bar === toBar ? `Takt ${bar}` : `Takt ${bar}–${toBar}`),
  barList: (bars) => {
    const { runs, leftOut } = barRuns(bars);
    const more = leftOut === 0 ? [] : [`${leftOut} weitere`];
    return `Takt ${germanList([...runs, ...more])}`;
  },
  note: (bar, beat) => {
    const { text, after } = beatInFigures(beat);
    return `Takt ${bar}, ${after ? 'nach Schlag' : 'Schlag'} ${text}`;
  },
};
