import { describe, expect, test } from 'vitest';
import { readPart } from '../../src/score/index.js';
import { inWords } from '../helpers/in-words.js';
import { remarksOf } from '../helpers/remarks-of.js';
import { attributes, note, scoreOf } from './score-of.js';

const QUARTERS = (name: string): string => note(name, 1).repeat(4);

describe('places and lengths', () => {
  // MusicXML 4.0, divisions: "indicates how many divisions per quarter note are used"; they may change at any bar.
  test('divisions may change, even within a bar', () => {
    const change = '<attributes><divisions>6</divisions></attributes>';
    const part = readPart(
      scoreOf([
        `${attributes(2)}${note('C4', 2)}${note('D4', 1)}${change}${note('E4', 3)}${note('F4', 12)}`,
        note('G4', 24),
      ]),
    );
    expect(part.notes.map((n) => [n.onsetQuarters, n.durationQuarters])).toEqual([
      [0, 1],
      [1, 0.5],
      [1.5, 0.5],
      [2, 2],
      [4, 4],
    ]);
  });

  // MusicXML 4.0, backup and forward: they move the place without a note; voice 2 is another line.
  test('backup leads to a second voice, which is not read unless asked for', () => {
    const second = `<backup><duration>4</duration></backup><forward><duration>2</duration></forward>${note('C4', 2, { voice: '2' })}`;
    const bars = [`${attributes(1)}${QUARTERS('G4')}${second}`];
    const first = readPart(scoreOf(bars));
    expect(first.notes.map((n) => n.writtenMidi)).toEqual([67, 67, 67, 67]);
    expect(remarksOf(first)).toContain('Voice 1 is read; 1 note is in other voices or on other staves.');
    const other = readPart(scoreOf(bars), { voice: '2' });
    expect(other.notes.map((n) => [n.writtenMidi, n.onsetQuarters, n.beat])).toEqual([[60, 2, 3]]);
  });

  // MusicXML 4.0, staff: numbered from top to bottom; the player of a wind part reads the first.
  test('notes on a second staff are another line', () => {
    const lower = `<backup><duration>4</duration></backup>${note('C3', 1, { voice: '5', staff: '2' }).repeat(4)}`;
    const part = readPart(scoreOf([`${attributes(1)}${note('E5', 4, { staff: '1' })}${lower}`]));
    expect(part.notes.map((n) => n.writtenMidi)).toEqual([76]);
  });

  // MusicXML 4.0, chord: "an additional chord tone with the preceding note"; the top note is read (definition).
  test('of a chord the top note is read, and what is written at any of its notes counts', () => {
    const chord =
      note('C5', 4, { notations: '<articulations><accent/></articulations>' }) +
      note('E5', 4, { chord: true }) +
      note('G4', 4, { chord: true });
    const part = readPart(scoreOf([attributes(1) + chord]));
    expect(part.notes).toHaveLength(1);
    expect(part.notes[0]).toMatchObject({
      writtenMidi: 76,
      durationQuarters: 4,
      articulations: ['accent'],
      printedId: 'n2',
    });
  });

  // MusicXML 4.0, grace: no duration; common practice: printed before the note it leads to.
  test('grace notes are kept, take no time and stand before their note', () => {
    const part = readPart(
      scoreOf([`${attributes(1)}${note('C4', 3)}${note('F4', 0, { grace: true })}${note('E4', 1)}`]),
    );
    expect(part.notes.map((n) => [n.writtenMidi, n.grace, n.onsetQuarters, n.durationQuarters])).toEqual([
      [60, false, 0, 3],
      [65, true, 3, 0],
      [64, false, 3, 1],
    ]);
  });

  // MusicXML 4.0: cue "indicates the presence of a cue note"; unpitched; print-object="no" is not on the page.
  test('cue, unpitched and hidden notes take their time but are not played', () => {
    const cue = note('C6', 1, { before: '<cue/>' });
    const unpitched =
      '<note><unpitched><display-step>E</display-step><display-octave>4</display-octave></unpitched><duration>1</duration><voice>1</voice></note>';
    const hidden = note('C6', 1, { attributes: 'print-object="no"' });
    const part = readPart(scoreOf([`${attributes(1)}${cue}${unpitched}${hidden}${note('A4', 1)}`]));
    expect(part.notes.map((n) => [n.writtenMidi, n.beat])).toEqual([[69, 4]]);
  });

  // Common practice: the silence before an entry runs from the end of the note before, across bars of rest.
  test('rest before a note, over bars of rest', () => {
    const rest = '<note><rest measure="yes"/><duration>4</duration><voice>1</voice></note>';
    const style = '<attributes><measure-style><multiple-rest>2</multiple-rest></measure-style></attributes>';
    const part = readPart(
      scoreOf([
        `${attributes(1)}${note('C4', 3)}${note('r', 1)}`,
        style + rest,
        rest,
        `${note('r', 1)}${note('D4', 3)}`,
      ]),
    );
    expect(part.notes.map((n) => n.restBeforeQuarters)).toEqual([0, 10]);
    expect(part.notes[1]).toMatchObject({ bar: '4', beat: 2, onsetQuarters: 13 });
    expect(part.printedBars).toBe(4);
  });
});

describe('beats and bars', () => {
  // Common practice: a pick-up bar is the end of a full bar.
  test('a pick-up bar ends on the last beat', () => {
    const part = readPart(
      scoreOf([
        `<measure number="0" implicit="yes">${attributes(2)}${note('G4', 1)}${note('A4', 1)}</measure>`,
        `<measure number="1">${note('C5', 8)}</measure>`,
      ]),
    );
    expect(part.notes.map((n) => [n.bar, n.beat, n.onsetQuarters])).toEqual([
      ['0', 4, 0],
      ['0', 4.5, 0.5],
      ['1', 1, 1],
    ]);
    expect(remarksOf(part).filter((r) => r.includes('too'))).toEqual([]);
  });

  test('a short first bar is a pick-up even when the file does not say so', () => {
    const part = readPart(scoreOf([`${attributes(2, 0, '3/4')}${note('G4', 2)}`, note('C5', 6)]));
    expect(part.notes.map((n) => n.beat)).toEqual([3, 1]);
  });

  // MusicXML 4.0, beat-type: the denominator is the unit.
  test('beats are counted in the unit of the denominator', () => {
    const compound = readPart(scoreOf([attributes(2, 0, '6/8') + note('C4', 1).repeat(6)]));
    expect(compound.notes.map((n) => n.beat)).toEqual([1, 2, 3, 4, 5, 6]);
    const alla = readPart(scoreOf([attributes(1, 0, '2/2') + QUARTERS('C4')]));
    expect(alla.notes.map((n) => n.beat)).toEqual([1, 1.5, 2, 2.5]);
  });

  // MusicXML 4.0, time: beats may be a sum ("3+2"), and pairs of beats and beat-type may follow each other.
  test('composite and changing time signatures', () => {
    const sum =
      '<attributes><divisions>2</divisions><time><beats>3+2</beats><beat-type>8</beat-type></time></attributes>';
    const pair =
      '<attributes><time><beats>1</beats><beat-type>4</beat-type><beats>3</beats><beat-type>8</beat-type></time></attributes>';
    const part = readPart(scoreOf([sum + note('C4', 1).repeat(5), pair + note('C4', 1).repeat(5)]));
    expect(part.bars.map((b) => [b.beats, b.beatType, b.lengthQuarters])).toEqual([
      [5, 8, 2.5],
      [5, 8, 2.5],
    ]);
    expect(remarksOf(part).filter((r) => r.includes('too'))).toEqual([]);
  });

  test('a bar without anything in it lasts as long as its time signature says', () => {
    const part = readPart(scoreOf([attributes(1, 0, '3/4') + note('C4', 3), '', note('D4', 3)]));
    expect(part.notes.map((n) => n.onsetQuarters)).toEqual([0, 6]);
  });

  test('bars that do not add up are remarked on, their notes keep the time they are written with', () => {
    const part = readPart(
      scoreOf([
        attributes(1) + QUARTERS('C4'),
        note('C4', 1).repeat(5),
        note('C4', 1).repeat(3),
        QUARTERS('D4'),
        QUARTERS('D4'),
      ]),
    );
    expect(remarksOf(part)).toEqual([
      'Bar 2 is too long: it holds 5 quarters, its time signature asks for 4 quarters.',
      'Bar 3 is too short: it holds 3 quarters, its time signature asks for 4 quarters.',
      'No tempo is marked at the start; 100 quarters a minute are assumed.',
    ]);
    expect(part.bars.map((b) => b.startQuarters)).toEqual([0, 4, 9, 12, 16]);
  });

  // MusicXML 4.0, measure-repeat: a sign that stands for the bars before it.
  test('a bar that only repeats the bar before in a sign is a rest, with a remark', () => {
    const sign = (type: string): string =>
      `<attributes><measure-style><measure-repeat type="${type}">1</measure-repeat></measure-style></attributes>`;
    const part = readPart(scoreOf([attributes(1) + QUARTERS('C4'), sign('start'), sign('stop') + QUARTERS('D4')]));
    expect(part.notes.map((n) => n.bar).join('')).toBe('11113333');
    expect(remarksOf(part)).toContain(
      'Bar 2: the sign that repeats the bar before is not read out; the bar counts as a rest.',
    );
  });

  // MusicXML 4.0, measure text: the number shown instead of `number`.
  test('the number on the page is the one that is printed', () => {
    const part = readPart(
      scoreOf([
        attributes(1) + QUARTERS('C4'),
        `<measure number="X1" implicit="yes" text="1a">${QUARTERS('C4')}</measure>`,
      ]),
    );
    expect(part.bars.map((b) => b.bar)).toEqual(['1', '1a']);
  });
});

describe('ties', () => {
  // MusicXML 4.0, tie: "indicates that a tie begins or ends with this note", the sound.
  test('tied notes are one note, over barlines too', () => {
    const part = readPart(
      scoreOf([
        `${attributes(1)}${note('C4', 2)}${note('G4', 2, { tie: ['start'] })}`,
        note('G4', 4, { tie: ['stop', 'start'] }),
        `${note('G4', 1, { tie: ['stop'] })}${note('G4', 3)}`,
      ]),
    );
    expect(part.notes.map((n) => [n.bar, n.onsetQuarters, n.durationQuarters, n.printedId])).toEqual([
      ['1', 0, 2, 'n1'],
      ['1', 2, 7, 'n2'],
      ['3', 9, 3, 'n5'],
    ]);
  });

  test('a tie written only as a curve (tied) ties as well', () => {
    const part = readPart(
      scoreOf([
        `${attributes(1)}${note('C4', 2, { notations: '<tied type="start"/>' })}${note('C4', 2, { notations: '<tied type="stop"/>' })}`,
      ]),
    );
    expect(part.notes.map((n) => n.durationQuarters)).toEqual([4]);
  });

  // Common practice: the tie is printed again into each ending.
  test('a tie into the first and into the second ending', () => {
    const first = '<barline location="left"><ending number="1" type="start"/></barline>';
    const firstEnd =
      '<barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline>';
    const second = '<barline location="left"><ending number="2" type="start"/></barline>';
    const secondEnd = '<barline location="right"><ending number="2" type="stop"/></barline>';
    const part = readPart(
      scoreOf([
        `${attributes(1)}${note('C4', 2)}${note('E4', 2, { tie: ['start'] })}`,
        `${first}${note('E4', 2, { tie: ['stop'] })}${note('D4', 2)}${firstEnd}`,
        `${second}${note('E4', 4, { tie: ['stop'] })}${secondEnd}`,
      ]),
    );
    expect(part.notes.map((n) => [n.bar, n.pass, n.writtenMidi, n.durationQuarters])).toEqual([
      ['1', 1, 60, 2],
      ['1', 1, 64, 4],
      ['2', 1, 62, 2],
      ['1', 2, 60, 2],
      ['1', 2, 64, 6],
    ]);
  });

  test('a tie that is printed at the second ending only', () => {
    const first = '<barline location="left"><ending number="1" type="start"/></barline>';
    const firstEnd =
      '<barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline>';
    const second = '<barline location="left"><ending number="2" type="start"/></barline>';
    const part = readPart(
      scoreOf([
        attributes(1) + note('E4', 4),
        first + note('D4', 4) + firstEnd,
        second + note('E4', 4, { tie: ['stop'] }),
      ]),
    );
    expect(part.notes.map((n) => n.durationQuarters)).toEqual([4, 4, 8]);
  });

  test('an end of a tie with nothing to tie to is a new note', () => {
    const part = readPart(scoreOf([`${attributes(1)}${note('C4', 2)}${note('D4', 2, { tie: ['stop'] })}`]));
    expect(part.notes).toHaveLength(2);
  });
});

describe('tuplets', () => {
  const eighth = { tuplet: [3, 2] as const, type: 'eighth' };
  const places = (xml: string): unknown[] =>
    readPart(scoreOf([xml])).notes.map((n) =>
      n.tuplet === null ? null : [n.tuplet.group, n.tuplet.place, n.tuplet.actualNotes, n.tuplet.normalNotes],
    );

  // MusicXML 4.0, tuplet: start and stop of the bracket.
  test('brackets make groups', () => {
    const start = { ...eighth, notations: '<tuplet type="start"/>' };
    const stop = { ...eighth, notations: '<tuplet type="stop"/>' };
    const triplet = note('C4', 2, start) + note('D4', 2, eighth) + note('E4', 2, stop);
    expect(places(attributes(6) + triplet + triplet + note('C4', 12))).toEqual([
      [0, 0, 3, 2],
      [0, 1, 3, 2],
      [0, 2, 3, 2],
      [1, 0, 3, 2],
      [1, 1, 3, 2],
      [1, 2, 3, 2],
      null,
    ]);
  });

  // MusicXML 4.0, time-modification: 3 in the time of 2 eighths fill a quarter.
  test('without brackets a run is cut where it fills the normal notes', () => {
    const quarter = { ...eighth, type: 'quarter' };
    const xml =
      attributes(6) +
      note('C4', 2, eighth).repeat(3) +
      note('C4', 4, quarter) +
      note('D4', 2, eighth) +
      note('C4', 2, eighth) +
      note('r', 2, eighth) +
      note('D4', 2, eighth) +
      note('E4', 6);
    expect(places(xml)).toEqual([
      [0, 0, 3, 2],
      [0, 1, 3, 2],
      [0, 2, 3, 2],
      [1, 0, 3, 2],
      [1, 1, 3, 2],
      [2, 0, 3, 2],
      [2, 2, 3, 2],
      null,
    ]);
  });

  test('a beam keeps an unbracketed group together', () => {
    const beamed = (duration: number, type: string, beam: string): string =>
      note('C4', duration, { tuplet: [3, 2], type, beam });
    const xml =
      attributes(12) +
      beamed(4, 'eighth', 'begin') +
      beamed(2, '16th', 'continue') +
      beamed(2, '16th', 'continue') +
      beamed(4, 'eighth', 'end') +
      note('C4', 36);
    expect(places(xml)).toEqual([[0, 0, 3, 2], [0, 1, 3, 2], [0, 2, 3, 2], [0, 3, 3, 2], null]);
  });

  // MusicXML 4.0, tuplet: nested tuplets have their own number; time-modification shows the whole ratio.
  test('nested tuplets: notes belong to the inner bracket', () => {
    const outer = { tuplet: [3, 2] as const, type: 'quarter' };
    const inner = { tuplet: [9, 4] as const, type: 'eighth' };
    const open = '<tuplet type="start" number="1"/>';
    const innerOpen = '<tuplet type="start" number="2"/>';
    const xml =
      attributes(9) +
      note('C4', 6, { ...outer, notations: open }) +
      note('D4', 2, { ...inner, notations: innerOpen }) +
      note('E4', 2, inner) +
      note('F4', 2, { ...inner, notations: '<tuplet type="stop" number="2"/>' }) +
      note('G4', 6, { ...outer, notations: '<tuplet type="stop" number="1"/>' }) +
      note('C4', 18);
    expect(places(xml)).toEqual([[0, 0, 3, 2], [1, 0, 3, 2], [1, 1, 3, 2], [1, 2, 3, 2], [0, 4, 3, 2], null]);
  });

  test('a group has another number in each pass', () => {
    const xml = `${attributes(6, 0, '1/4')}${note('C4', 2, eighth).repeat(3)}<barline location="right"><repeat direction="backward"/></barline>`;
    expect(places(xml).map((p) => (p as number[])[0])).toEqual([0, 0, 0, 1, 1, 1]);
  });

  // MusicXML 4.0, tremolo: two-note tremolos carry a 2:1 modification that is no tuplet.
  test('a two-note tremolo is no tuplet', () => {
    const tremolo = (type: string): string =>
      note('C4', 2, {
        tuplet: [2, 1],
        type: 'half',
        notations: `<ornaments><tremolo type="${type}">3</tremolo></ornaments>`,
      });
    expect(places(attributes(2) + tremolo('start') + tremolo('stop') + note('C4', 4))).toEqual([null, null, null]);
  });
});

describe('voice and part', () => {
  test('asking for a voice that is not there says which are', () => {
    expect(inWords(() => readPart(scoreOf([attributes(1) + QUARTERS('C4')]), { voice: '3' }))).toThrow(
      expect.objectContaining({ code: 'bad-option', message: 'the part has no notes in voice "3"; it has voices: 1' }),
    );
  });
});
