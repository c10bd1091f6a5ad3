import { ETUDE } from './etude.js';
import { type DirectionWord, etudeWords, type NoteWord } from './etude-words.js';

const DIVISIONS = 6;
const TYPES = { w: 'whole', h: 'half', q: 'quarter', e: 'eighth' } as const;
const LENGTHS = { w: 24, h: 12, q: 6, e: 3 } as const;
const ACCIDENTALS = new Map([
  [-1, 'flat'],
  [0, 'natural'],
  [1, 'sharp'],
]);
const FLATS_IN_ORDER = 'BEADGCF';

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}

/** Length in divisions. */
function lengthOf(note: NoteWord): number {
  const plain = LENGTHS[note.value] * (note.dotted ? 1.5 : 1);
  return note.triplet === null ? plain : (plain * 2) / 3;
}

/** Remembers which sign is in force on each line and space of the bar. */
class AccidentalsOfBar {
  private readonly inForce = new Map<string, number>();

  /** The sign to print at this pitch, null when key and bar already say it. Source: the accidental rule, trade. */
  signFor(pitch: NonNullable<NoteWord['pitch']>, tiedOver: boolean): string | null {
    const place = `${pitch.step}${pitch.octave}`;
    const inKey = FLATS_IN_ORDER.slice(0, -ETUDE.keyFifths).includes(pitch.step) ? -1 : 0;
    const expected = this.inForce.get(place) ?? inKey;
    if (tiedOver || expected === pitch.alter) return null;
    this.inForce.set(place, pitch.alter);
    return ACCIDENTALS.get(pitch.alter) as string;
  }
}

/** `begin`, `continue` or `end` for each note that is beamed: eighths that follow each other within half a bar. */
function beamsOf(notes: readonly NoteWord[]): (string | null)[] {
  const starts = notes.map((_, i) => notes.slice(0, i).reduce((sum, note) => sum + lengthOf(note), 0));
  const groupOf = (i: number): string | null => {
    const note = notes[i];
    if (!note?.pitch || note.value !== 'e') return null;
    const unit = note.triplet === null ? 12 : 6;
    return `${note.triplet !== null} ${Math.floor((starts[i] as number) / unit)}`;
  };
  return notes.map((_, i) => {
    const group = groupOf(i);
    if (group === null) return null;
    const before = groupOf(i - 1) === group;
    const after = groupOf(i + 1) === group;
    return before ? (after ? 'continue' : 'end') : after ? 'begin' : null;
  });
}

function pitchXml(note: NoteWord): string {
  if (!note.pitch) return '<rest/>';
  const { step, alter, octave } = note.pitch;
  return `<pitch><step>${step}</step>${alter === 0 ? '' : `<alter>${alter}</alter>`}<octave>${octave}</octave></pitch>`;
}

function notationsXml(note: NoteWord, tiedOver: boolean): string {
  const has = (mark: string): boolean => note.marks.includes(mark);
  const articulations = [
    has('>') ? '<accent/>' : '',
    has('.') ? '<staccato/>' : '',
    has(',') ? '<breath-mark>comma</breath-mark>' : '',
  ].join('');
  const content = [
    tiedOver ? '<tied type="stop"/>' : '',
    has('~') ? '<tied type="start"/>' : '',
    has(')') ? '<slur number="1" type="stop"/>' : '',
    has('(') ? '<slur number="1" type="start"/>' : '',
    note.triplet === 0 ? '<tuplet number="1" type="start" bracket="no"/>' : '',
    note.triplet === 2 ? '<tuplet number="1" type="stop"/>' : '',
    articulations === '' ? '' : `<articulations>${articulations}</articulations>`,
    has('^') ? '<fermata type="upright"/>' : '',
  ].join('');
  return content === '' ? '' : `<notations>${content}</notations>`;
}

interface NotePlace {
  readonly tiedOver: boolean;
  readonly sign: string | null;
  readonly beam: string | null;
}

function noteXml(note: NoteWord, { tiedOver, sign, beam }: NotePlace): string {
  const tie = `${tiedOver ? '<tie type="stop"/>' : ''}${note.marks.includes('~') ? '<tie type="start"/>' : ''}`;
  const ratio = '<time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>';
  return [
    `<note>${pitchXml(note)}<duration>${lengthOf(note)}</duration>${tie}<voice>1</voice>`,
    `<type>${TYPES[note.value]}</type>${note.dotted ? '<dot/>' : ''}`,
    sign === null ? '' : `<accidental>${sign}</accidental>`,
    note.triplet === null ? '' : ratio,
    beam === null ? '' : `<beam number="1">${beam}</beam>`,
    `${notationsXml(note, tiedOver)}</note>`,
  ].join('');
}

function directionXml({ direction }: DirectionWord): string {
  const at = (placement: string, type: string, sound = ''): string =>
    `<direction placement="${placement}"><direction-type>${type}</direction-type>${sound}</direction>`;
  if (direction === '_') return '';
  if (direction === '<') return at('below', '<wedge type="crescendo" number="1"/>');
  if (direction === '|') return at('below', '<wedge type="stop" number="1"/>');
  if (direction.startsWith('"')) return at('below', `<words font-style="italic">${direction.slice(1, -1)}</words>`);
  if (direction.startsWith('{')) return at('above', `<rehearsal>${direction.slice(1, -1)}</rehearsal>`);
  return at('below', `<dynamics><${direction}/></dynamics>`);
}

function openingXml(): string {
  const { keyFifths, transpose, quarterBpm, tempoWords } = ETUDE;
  const metronome = `<metronome><beat-unit>quarter</beat-unit><per-minute>${quarterBpm}</per-minute></metronome>`;
  return [
    `<attributes><divisions>${DIVISIONS}</divisions><key><fifths>${keyFifths}</fifths></key>`,
    '<time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef>',
    `<transpose><diatonic>${transpose.diatonic}</diatonic><chromatic>${transpose.chromatic}</chromatic></transpose>`,
    `</attributes><direction placement="above"><direction-type><words font-weight="bold">${tempoWords}</words>`,
    `</direction-type><direction-type>${metronome}</direction-type><sound tempo="${quarterBpm}"/></direction>`,
  ].join('');
}

function barLineXml(words: readonly (NoteWord | DirectionWord)[], last: boolean): string {
  const double = words.some((word) => 'direction' in word && word.direction === '_');
  const style = last ? 'light-heavy' : double ? 'light-light' : null;
  return style === null ? '' : `<barline location="right"><bar-style>${style}</bar-style></barline>`;
}

/** One bar; `tiedIn` says whether its first note is tied from the bar before. */
function barXml(words: readonly (NoteWord | DirectionWord)[], number: number, tiedIn: boolean): string {
  const accidentals = new AccidentalsOfBar();
  const notes = words.filter((word): word is NoteWord => !('direction' in word));
  const beams = beamsOf(notes);
  const content = words.map((word) => {
    if ('direction' in word) return directionXml(word);
    const at = notes.indexOf(word);
    const tiedOver = at === 0 ? tiedIn : (notes[at - 1] as NoteWord).marks.includes('~');
    const sign = word.pitch ? accidentals.signFor(word.pitch, tiedOver) : null;
    return noteXml(word, { tiedOver, sign, beam: beams[at] ?? null });
  });
  const opening = number === 1 ? openingXml() : '';
  const lines = [opening, ...content, barLineXml(words, number === ETUDE.bars.length)].filter((line) => line !== '');
  return [`<measure number="${number}">`, ...lines, '</measure>'].join('\n');
}

/**
 * @returns the demo's étude as a MusicXML 4.0 document, UTF-8
 *
 * Source: W3C, MusicXML 4.0, for the elements and their order.
 */
export function readDemoScore(): Uint8Array {
  const bars = ETUDE.bars.map((bar) => etudeWords(bar));
  const endsTied = bars.map((words) =>
    words.some((word, i) => i === words.length - 1 && 'marks' in word && word.marks.includes('~')),
  );
  const measures = bars.map((words, i) => barXml(words, i + 1, endsTied[i - 1] ?? false));
  const document = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">',
    `<score-partwise version="4.0"><work><work-title>${escapeXml(ETUDE.title)}</work-title></work>`,
    `<identification><creator type="composer">${escapeXml(ETUDE.composer)}</creator></identification>`,
    `<part-list><score-part id="P1"><part-name>${escapeXml(ETUDE.partName)}</part-name></score-part></part-list>`,
    '<part id="P1">',
    ...measures,
    '</part></score-partwise>',
    '',
  ];
  return new TextEncoder().encode(document.join('\n'));
}
