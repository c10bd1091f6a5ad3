import { isNoteLetter } from '../pitch/pitch.js';
import { childNamed, childNumber, childrenNamed, childText, type XmlElement } from '../source/xml-element.js';
import type { WrittenPitch } from '../types.js';
import { dotted, quartersOfType } from './note-values.js';
import { readNoteSigns } from './read-note-signs.js';
import { type PrintedNote, SAME_PLACE, type TimeModification } from './types.js';

/** Most notes on either side of a tuplet's ratio. */
const MOST_TUPLET_NOTES = 1000;

/** Where a note stands and how long a division is. */
export interface NotePlace {
  readonly id: string;
  readonly order: number;
  readonly at: number;
  readonly divisions: number;
}

/**
 * @param element `note`
 * @param place where it stands
 * @returns the note; cue, unpitched and hidden notes come back without pitch, notes that last no time as grace notes
 *
 * Source: MusicXML 4.0, `note`.
 */
export function readNote(element: XmlElement, place: NotePlace): PrintedNote {
  const typeQuarters = quartersOfType(childText(element, 'type'));
  const modification = readModification(element);
  const divisions = childNumber(element, 'duration');
  const written = dotted(typeQuarters ?? 0, childrenNamed(element, 'dot').length);
  const unprinted = modification === null ? written : (written * modification.normalNotes) / modification.actualNotes;
  const duration = Math.max(0, divisions === null ? unprinted : divisions / place.divisions);
  const grace = childNamed(element, 'grace') !== undefined || duration < SAME_PLACE;
  const ties = [
    ...childrenNamed(element, 'tie'),
    ...childrenNamed(childNamed(element, 'notations') ?? element, 'tied'),
  ];
  const signs = readNoteSigns(element);
  return {
    id: place.id,
    order: place.order,
    at: place.at,
    duration: grace ? 0 : duration,
    voice: childText(element, 'voice') || '1',
    staff: childText(element, 'staff') || '1',
    inChord: childNamed(element, 'chord') !== undefined,
    pitch: playedPitch(element),
    grace,
    tieStart: ties.some((tie) => tie.attributes.type === 'start'),
    tieStop: ties.some((tie) => tie.attributes.type === 'stop'),
    accidental: childText(element, 'accidental') || null,
    typeQuarters,
    modification,
    beamGoesOn: element.children.some((child) => child.name === 'beam' && isOpenPrimaryBeam(child)),
    slurs: signs.slurs,
    tuplets: signs.tuplets,
    articulations: signs.articulations,
    fermata: signs.fermata,
    breathAfter: signs.breathAfter,
    ornament: signs.ornament,
    dynamics: signs.dynamics,
  };
}

function isOpenPrimaryBeam(beam: XmlElement): boolean {
  return (beam.attributes.number ?? '1') === '1' && (beam.text === 'begin' || beam.text === 'continue');
}

function playedPitch(element: XmlElement): WrittenPitch | null {
  const pitch = childNamed(element, 'pitch');
  const hidden = element.attributes['print-object'] === 'no';
  if (pitch === undefined || hidden || childNamed(element, 'cue') !== undefined) return null;
  const step = childText(pitch, 'step');
  const octave = childNumber(pitch, 'octave');
  if (!isNoteLetter(step) || octave === null || octave < 0 || octave > 9) return null;
  const alter = childNumber(pitch, 'alter') ?? 0;
  return { step, alter: Math.max(-4, Math.min(4, alter)), octave: Math.trunc(octave) };
}

/** The whole ratio of a note, nested tuplets multiplied; null outside tuplets and for two-note tremolos. */
function readModification(element: XmlElement): TimeModification | null {
  const modification = childNamed(element, 'time-modification');
  if (modification === undefined) return null;
  const actualNotes = childNumber(modification, 'actual-notes') ?? 0;
  const normalNotes = childNumber(modification, 'normal-notes') ?? 0;
  const plausible = [actualNotes, normalNotes].every((count) => count >= 1 && count <= MOST_TUPLET_NOTES);
  if (!plausible || isTwoNoteTremolo(element)) return null;
  const type = quartersOfType(childText(modification, 'normal-type'));
  const normalQuarters = type === null ? null : dotted(type, childrenNamed(modification, 'normal-dot').length);
  return { actualNotes, normalNotes, normalQuarters };
}

function isTwoNoteTremolo(element: XmlElement): boolean {
  return childrenNamed(element, 'notations')
    .flatMap((notations) => childrenNamed(notations, 'ornaments'))
    .flatMap((ornaments) => childrenNamed(ornaments, 'tremolo'))
    .some((tremolo) => tremolo.attributes.type === 'start' || tremolo.attributes.type === 'stop');
}
