import { type PrintedBar, type PrintedNote, SAME_PLACE } from '../printed/types.js';

/** Content of the first `beam` of a note. */
export type BeamState = 'begin' | 'continue' | 'end';

/**
 * Beams for a bar that is written without any: notes shorter than a quarter that follow each other within one beat, in
 * common time plain eighths within half a bar, in compound time within a dotted quarter.
 *
 * @param bar bar as printed
 * @returns the beam of each note that has one, by note id
 *
 * Source: common practice; MusicXML 4.0, `beam`.
 */
export function beamsOfBar(bar: PrintedBar): Map<string, BeamState> {
  const beams = new Map<string, BeamState>();
  const voices = new Map<string, PrintedNote[]>();
  for (const note of bar.notes) {
    if (note.inChord || note.grace) continue;
    const voice = `${note.staff}/${note.voice}`;
    voices.set(voice, [...(voices.get(voice) ?? []), note]);
  }
  for (const notes of voices.values()) {
    for (const group of groupsOf(
      [...notes].sort((a, b) => a.at - b.at),
      bar,
    )) {
      group.forEach((note, i) => {
        beams.set(note.id, i === 0 ? 'begin' : i === group.length - 1 ? 'end' : 'continue');
      });
    }
  }
  return beams;
}

function groupsOf(notes: readonly PrintedNote[], bar: PrintedBar): PrintedNote[][] {
  const groups: PrintedNote[][] = [];
  let spanBefore = -1;
  let endBefore = -1;
  for (const note of notes) {
    const span = spanOf(note, notes, bar);
    const goesOn = span === spanBefore && Math.abs(note.at - endBefore) < SAME_PLACE;
    if (span >= 0 && goesOn) groups.at(-1)?.push(note);
    else if (span >= 0) groups.push([note]);
    spanBefore = span;
    endBefore = note.at + note.duration;
  }
  return groups.filter((group) => group.length > 1);
}

/** The stretch of the bar under one beam, counted from its start; −1 for what has no beam. */
function spanOf(note: PrintedNote, notes: readonly PrintedNote[], bar: PrintedBar): number {
  if (note.pitch === null || writtenQuarters(note) >= 1) return -1;
  const place = note.at + bar.missingQuarters;
  if (bar.beatType === 8 && bar.beats % 3 === 0) return Math.floor(place / 1.5 + SAME_PLACE);
  const half = Math.floor(place / 2 + SAME_PLACE);
  const inHalf = notes.filter((other) => Math.floor((other.at + bar.missingQuarters) / 2 + SAME_PLACE) === half);
  const plain = inHalf.every((other) => other.pitch !== null && writtenQuarters(other) === 0.5 && !other.modification);
  const wide = plain && bar.beats === 4 && bar.beatType === 4;
  return wide ? 1000 + half : Math.floor(place + SAME_PLACE);
}

/** Written length without dots in quarters, the sounding one where the file does not give it. */
function writtenQuarters(note: PrintedNote): number {
  return note.typeQuarters ?? note.duration;
}
