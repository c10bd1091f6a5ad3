import { midiOfWritten } from '../pitch/pitch.js';
import type { ChosenVoice } from './choose-voice.js';
import { type PrintedBar, type PrintedNote, SAME_PLACE } from './types.js';

/**
 * One line of notes and rests: chords become their top note, everything written at any note of a chord counts for it.
 *
 * @param bar bar as printed
 * @param chosen voice and staff to read
 * @returns notes and rests of the bar in time order, grace notes before the note they lead to
 *
 * Source: MusicXML 4.0, `chord`; the top note: definition.
 */
export function lineOf(bar: PrintedBar, chosen: ChosenVoice): PrintedNote[] {
  const chords: PrintedNote[] = [];
  for (const note of bar.notes) {
    if (note.voice !== chosen.voice || note.staff !== chosen.staff) continue;
    const before = chords.at(-1);
    if (note.inChord && before !== undefined) chords[chords.length - 1] = joined(before, note);
    else chords.push(note);
  }
  chords.sort((a, b) => a.at - b.at || a.order - b.order);
  return withoutDoubles(chords);
}

/** Two notes of one voice at one place are a chord that was written without `chord`. */
function withoutDoubles(notes: readonly PrintedNote[]): PrintedNote[] {
  const line: PrintedNote[] = [];
  for (const note of notes) {
    const before = line.at(-1);
    const together = before !== undefined && !before.grace && !note.grace && note.at - before.at < SAME_PLACE;
    if (!together) line.push(note);
    else if (before.duration === 0 && before.pitch === null) line[line.length - 1] = note;
    else line[line.length - 1] = joined(before, note);
  }
  return line;
}

function joined(a: PrintedNote, b: PrintedNote): PrintedNote {
  const top = height(b) > height(a) ? b : a;
  const other = top === a ? b : a;
  return {
    ...top,
    slurs: [...a.slurs, ...b.slurs],
    tuplets: [...a.tuplets, ...b.tuplets],
    articulations: [...new Set([...a.articulations, ...b.articulations])],
    fermata: a.fermata || b.fermata,
    breathAfter: top.breathAfter ?? other.breathAfter,
    ornament: top.ornament ?? other.ornament,
    beamGoesOn: a.beamGoesOn || b.beamGoesOn,
  };
}

function height(note: PrintedNote): number {
  return note.pitch === null ? Number.NEGATIVE_INFINITY : midiOfWritten(note.pitch);
}
