import { expect, it } from 'vitest';
import { STANDARDS } from '../../src/standards/index.js';

/**
 * Every standard once more, typed by hand: value, unit, and a word that its source must hold. A standard that moves, or whose
 * source is told otherwise, has to be moved here, too, and looked at a second time.
 *
 * Source: each standard names its own; this is a copy on purpose. What a value does to a finding is tried in absolute numbers
 * in `tests/judge/both-sides.test.ts`.
 */
const WRITTEN_DOWN: readonly (readonly [name: string, value: number, unit: string, source: string])[] = [
  ['noteConfidence', 0.55, 'share', 'working value'],
  ['slipConfidence', 0.8, 'share', 'working value: on real players'],
  ['addedLongest', 1, 's', 'working value'],
  ['slipWidest', 12, 'semitones', 'working value'],
  ['addedSeconds', 0.08, 's', 'working value'],
  ['echoSofter', 5, 'dB', 'working value'],
  ['emptyShare', 0.45, 'share', 'working value'],
  ['emptyRepeated', 0.8, 'share', 'working value'],
  ['emptyFall', 10, 'dB', 'working value'],
  ['closedUp', 0.3, 'share', 'working value'],
  ['contrastLeast', 3, 'dB', 'piano tones (Slade et al. 2022)'],
  ['contrastMargin', 0.5, 'dB', 'piano tones (Slade et al. 2022)'],
  ['contrastReversed', 1, 'dB', 'piano tones (Slade et al. 2022)'],
  ['hairpinLeast', 3, 'dB', 'contrastLeast'],
  ['courseEarly', 0.9, 'share', 'working value'],
  ['courseTurned', 3, 'dB', 'hairpinLeast'],
  ['fallLeast', 2, 'dB', 'piano tones (Slade et al. 2022)'],
  ['fermataLeast', 1.25, 'times', 'from memory'],
  ['fermataMost', 3, 'times', 'from memory'],
  ['fermataMargin', 0.08, 'share', 'measuring error'],
  ['tuningWatch', 15, 'cents', 'Larrouy-Maestri 2018'],
  ['noteWatch', 25, 'cents', 'Larrouy-Maestri 2018'],
  ['noteFix', 35, 'cents', 'measuring error'],
  ['noteSeconds', 0.2, 's', 'working value'],
  ['tempoWatch', 0.1, 'share', 'Drake & Botte 1993'],
  ['tempoSteady', 0.03, 'share', 'Drake & Botte 1993'],
  ['onsetError', 0.015, 's', 'measuring error'],
  ['entryLeast', 0.045, 's', 'Friberg & Sundberg 1995'],
  ['entryLeastFix', 0.08, 's', 'entryLeast'],
  ['entryWatch', 0.085, 'quarters', 'common practice'],
  ['entryFix', 0.11, 'quarters', 'common practice'],
  ['entryMost', 0.75, 'quarters', 'working value'],
  ['entryEarly', 0.15, 'quarters', 'common practice'],
  ['groupWatch', 0.065, 'share of the group', 'common practice'],
  ['groupFix', 0.085, 'share of the group', 'working value'],
  ['leanLeast', 0.1, 'share of the note', 'Friberg & Sundberg 1995'],
  ['slurGapWatch', 0.028, 's', 'working value'],
  ['slurDip', 15, 'dB', 'working value'],
  ['slurSpoken', 12, 'dB', 'working value'],
  ['slurGapFix', 0.065, 's', 'common practice'],
  ['staccatoWatch', 0.72, 'share', 'Bresin & Battel 2000, piano'],
  ['staccatoFix', 0.82, 'share', 'staccatoWatch'],
  ['staccatoSeconds', 0.15, 's', 'working value'],
  ['ringing', 0.25, 's', 'working value'],
  ['ringingLong', 0.8, 's', 'working value'],
  ['ringingFall', 0.4, 'share', 'working value'],
  ['accentWatch', 0.5, 'dB', 'working value'],
  ['accentDetached', 0.6, 'share', 'working value'],
  ['accentHeld', 0.75, 'share', 'working value'],
  ['accentSpread', 4, 'dB', 'working value'],
  ['breathTaken', 0.12, 's', 'from memory'],
  ['breathGap', 0.22, 's', 'from memory'],
  ['breathTongue', 0.04, 's', 'common practice'],
  ['breathFull', 0.3, 's', 'from memory'],
  ['breathSip', 0.2, 's', 'breathFull'],
  ['breathLate', 0.35, 's', 'common practice'],
  ['hesitation', 0.8, 's', 'common practice'],
  ['drift', 0.07, 'share', 'Drake & Botte 1993'],
  ['wobbleWatch', 12, 'cents', 'Hill & Summers 2007'],
  ['wobbleOver', 2.5, 'times', 'working value'],
  ['wobbleSeconds', 0.55, 's', 'working value'],
  ['wobbleVibrato', 0.2, 'share', 'working value'],
  ['sagCents', 15, 'cents', 'Hill & Summers 2007'],
  ['sagDb', 2, 'dB', 'fallLeast'],
  ['crackSeconds', 0.04, 's', 'working value'],
  ['crackLongest', 0.15, 's', 'working value'],
  ['speakSeconds', 0.08, 's', 'working value'],
  ['speakOver', 2.5, 'times', 'wobbleOver'],
  ['hitDb', 5, 'dB', 'working value'],
  ['hitOver', 4, 'dB', 'working value'],
  ['tongueSag', 2, 'dB', 'working value'],
  ['tongueSofter', 1, 'dB', 'piano tones (Slade et al. 2022)'],
  ['wetRoom', 0.7, 's', 'working value'],
  ['inTune', 10, 'cents', 'Hill & Summers 2007'],
];

it('are all written down here', () => {
  expect(WRITTEN_DOWN.map(([name]) => name)).toEqual(Object.keys(STANDARDS));
});

it.each(WRITTEN_DOWN)('%s is %d %s', (name, value, unit, source) => {
  const standard = STANDARDS[name as keyof typeof STANDARDS];
  expect(standard).toEqual({ value, unit, source: expect.stringContaining(source) });
});
