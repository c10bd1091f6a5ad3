import type { Notehead } from '../../../engrave/index.js';
import { playedName } from '../../../judge/index.js';
import { ellipse, type Item, mapPath } from '../../../page/index.js';
import type { MarkPlace } from './mark-place.js';
import { NOTE_HEIGHT, PENCIL_WIDTH, pencilNote } from './pencil.js';

/** Half the height of a ring and its white beside the head, staff spaces. */
const UP = 1.2;
const BESIDE = 0.65;
const SLANT_DEGREES = -9;

/**
 * A ring around a note that was played at another pitch; above it in brackets what sounded, in written pitch.
 *
 * @param place one line of the excerpt
 * @returns what to draw
 *
 * Source: common practice (a teacher's pencil).
 */
export function ringMarks(place: MarkPlace): Item[] {
  const { finding, room, sheet } = place;
  const head = place.headOf(finding.index);
  if (head === null) return [];
  const ring = ringAround(head);
  room.take([ring]);
  const sounded = soundedName(place);
  if (sounded === null) return [ring];
  const note = pencilNote(sheet, sheet.words.marks.sounded(sounded), true);
  const left = head.x - note.width / 2;
  return [ring, ...note.at(left, room.above(left, left + note.width, NOTE_HEIGHT))];
}

/** A slightly slanted ring, as a hand draws it, around the head and its sign. */
function ringAround({ x, y, left, right, space }: Notehead): Item {
  const signed = left < 2 * x - right - 0.1;
  const [from, to] = [signed ? left : 2 * x - right, right];
  const [middle, across] = [(from + to) / 2, (to - from) / 2 + BESIDE * space];
  const [cos, sin] = [Math.cos, Math.sin].map((f) => f((SLANT_DEGREES * Math.PI) / 180)) as [number, number];
  const up = (signed ? 1.5 : UP) * space;
  const path = mapPath(ellipse(0, 0, across, up), [cos, sin, -sin, cos, middle, y]);
  return { kind: 'path', path, stroke: 'accent', width: PENCIL_WIDTH };
}

function soundedName({ sheet, finding, result, part }: MarkPlace): string | null {
  const heard = finding.index === undefined ? undefined : result.notes[finding.index];
  const note = finding.index === undefined ? undefined : part.notes[finding.index];
  if (heard?.playedMidi === undefined || note === undefined) return null;
  const away = heard.playedMidi - note.soundingMidi;
  const name = sheet.words.note(playedName(note.writtenMidi + away, note.written));
  return away !== 0 && away % 12 === 0 ? sheet.words.marks.octave(name, away > 0) : name;
}
