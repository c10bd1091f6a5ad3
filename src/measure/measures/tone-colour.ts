import { fitHuberLine, isMeasured, type NotMeasured, notMeasured } from '../../base/index.js';
import type { ColourOfNote, Measurements, ToneColourMeasure } from '../types.js';
import { whyHidden } from './why-hidden.js';

/** Fewer notes say nothing of how a player usually sounds. */
const LEAST_NOTES = 8;
/** The notes must reach over so many decibels for brightness to be set against loudness. */
const LEAST_REACH_DB = 6;

/** Harmonics of a long note, as another engine hears them. */
type Heard = Pick<ColourOfNote, 'centroidHarmonics' | 'oddOverEvenDb' | 'tristimulus'>;

/**
 * How bright long notes are, and how that goes with loudness: high notes are less bright by nature, so pitch is allowed for. A
 * description, never a fault.
 *
 * @param measurements of the take
 * @param midiOf sounding pitch of a note, by its index
 * @param heard colours by the index of their note
 * @returns each note and the slope with its standard error; or why there is none
 *
 * Source: partial regression (Frisch & Waugh 1933) with lines by Huber 1981.
 */
export function measureToneColour(
  { recording, notes, heldNotes }: Pick<Measurements, 'recording' | 'notes' | 'heldNotes'>,
  midiOf: (index: number) => number,
  heard: ReadonlyMap<number, Heard>,
): ToneColourMeasure | NotMeasured {
  const hidden = whyHidden(recording);
  if (hidden !== null) return hidden;
  const coloured = heldNotes.flatMap(({ index, bar, pass }): ColourOfNote[] => {
    const [colour, levelDb] = [heard.get(index), notes[index]!.levelDb];
    return colour === undefined || !isMeasured(levelDb) ? [] : [{ index, bar, pass, levelDb, ...colour }];
  });
  if (coloured.length < LEAST_NOTES) return notMeasured('too-few-held-notes');
  return { notes: coloured, withLoudness: slopeOf(coloured, midiOf) };
}

function slopeOf(notes: readonly ColourOfNote[], midiOf: (index: number) => number): ToneColourMeasure['withLoudness'] {
  const midis = notes.map(({ index }) => midiOf(index));
  const beside = (values: readonly number[]): number[] => {
    const { slope, intercept } = fitHuberLine(midis, values);
    return values.map((value, i) => value - intercept - slope * midis[i]!);
  };
  const levels = beside(notes.map(({ levelDb }) => levelDb));
  const reachDb = Math.max(...levels) - Math.min(...levels);
  if (reachDb < LEAST_REACH_DB) return notMeasured('loud-and-soft-alike');
  const { slope, slopeError } = fitHuberLine(levels, beside(notes.map((note) => note.centroidHarmonics)));
  return { harmonicsPerDb: slope, errorHarmonicsPerDb: slopeError, reachDb, count: notes.length };
}
