import { AccidentalReader, type SignReading } from '../pitch/accidentals.js';
import { type KeyChange, type PrintedBar, type PrintedNote, SAME_PLACE } from './types.js';

/**
 * Reads the accidentals of one staff, all its voices together: a sign holds for whoever plays on that line.
 *
 * @param bars bars as printed
 * @param staff staff to read
 * @returns what the page says about each note, by note id
 *
 * Source: {@link AccidentalReader}.
 */
export function readSigns(bars: readonly PrintedBar[], staff: string): Map<string, SignReading> {
  const reader = new AccidentalReader();
  const readings = new Map<string, SignReading>();
  for (const bar of bars) {
    const keys = bar.keyChanges.filter((change) => change.staff === null || change.staff === staff);
    const notes = bar.notes.filter((note) => note.staff === staff).sort((a, b) => a.at - b.at);
    readBar(notes, keys, reader, readings);
    reader.barline();
  }
  return readings;
}

function readBar(
  notes: readonly PrintedNote[],
  keys: readonly KeyChange[],
  reader: AccidentalReader,
  readings: Map<string, SignReading>,
): void {
  let next = 0;
  for (const note of notes) {
    for (; keys[next] !== undefined && (keys[next] as KeyChange).at <= note.at + SAME_PLACE; next++) {
      reader.changeKey((keys[next] as KeyChange).key);
    }
    if (note.pitch === null) continue;
    const { id, pitch, accidental: printedSign, tieStop: tiedOver } = note;
    readings.set(id, reader.read({ pitch, printedSign, tiedOver }));
  }
  for (; keys[next] !== undefined; next++) reader.changeKey((keys[next] as KeyChange).key);
}
