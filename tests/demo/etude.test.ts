import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { demoSection, performPart, readDemoScore } from '../../src/demo/index.js';
import { readPart } from '../../src/score/index.js';

interface XmlNote {
  pitch?: { step: string; alter?: number; octave: number };
  rest?: string;
  duration: number;
  type: string;
  dot?: string;
  accidental?: string;
  'time-modification'?: { 'actual-notes': number; 'normal-notes': number };
  beam?: { '#text': string };
  tie?: { '@type': string }[];
  notations?: { slur?: { '@type': string }[]; tuplet?: { '@type': string }[] };
}

const text = new TextDecoder().decode(readDemoScore());
const lists = ['measure', 'note', 'tie', 'slur', 'tuplet'];
const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  isArray: (name) => lists.includes(name),
});
const bars: { '@number': string; note: XmlNote[]; attributes?: Record<string, unknown> }[] =
  parser.parse(text)['score-partwise'].part.measure;
const notes = bars.flatMap((bar) => bar.note);
const sum = (values: number[]): number => values.reduce((total, value) => total + value, 0);

describe('the étude as MusicXML', () => {
  it('is well-formed, and the same every time', () => {
    expect(XMLValidator.validate(text)).toBe(true);
    expect(readDemoScore()).toEqual(readDemoScore());
  });

  // Source: MusicXML 4.0, duration in divisions of a quarter; 4/4 holds four quarters.
  it('fills every bar exactly', () => {
    const divisions = Number(bars[0]!.attributes!.divisions);
    for (const bar of bars)
      expect([bar['@number'], sum(bar.note.map((note) => note.duration))]).toEqual([bar['@number'], 4 * divisions]);
  });

  // Source: MusicXML 4.0: type, dot and time-modification give the written value, duration the sounding one.
  it('has durations that agree with the written values', () => {
    const quarters: Record<string, number> = { whole: 4, half: 2, quarter: 1, eighth: 0.5 };
    for (const note of notes) {
      const ratio = note['time-modification'];
      const written = quarters[note.type]! * (note.dot === undefined ? 1 : 1.5);
      expect(note.duration).toBe((6 * written * (ratio?.['normal-notes'] ?? 1)) / (ratio?.['actual-notes'] ?? 1));
    }
  });

  it('opens and closes every slur, tie, tuplet and beam', () => {
    const check = (kinds: string[], begin: string, end: string): void => {
      let open = 0;
      for (const kind of kinds) {
        open += kind === begin ? 1 : kind === end ? -1 : 0;
        expect(open === 0 || open === 1).toBe(true);
      }
      expect(open).toBe(0);
      expect(kinds.length).toBeGreaterThan(1);
    };
    check(
      notes.flatMap((note) => note.notations?.slur?.map((slur) => slur['@type']) ?? []),
      'start',
      'stop',
    );
    check(
      notes.flatMap((note) => note.notations?.tuplet?.map((tuplet) => tuplet['@type']) ?? []),
      'start',
      'stop',
    );
    check(
      notes.flatMap((note) => note.tie?.map((tie) => tie['@type']) ?? []),
      'start',
      'stop',
    );
    check(
      notes.flatMap((note) => note.beam?.['#text'] ?? []),
      'begin',
      'end',
    );
  });

  // Source: the accidental rule of the trade, applied by hand to the printed étude: two flats, B♮ and its repetition in
  // bar 4, B♭ again in bar 5 without a sign, F♯4 and then F5 in bar 11, two E♮ in bar 13, C♯ in bar 18 and C in 19.
  it('prints exactly the signs a copyist would', () => {
    const signs = bars.flatMap((bar) =>
      bar.note
        .filter((note) => note.accidental !== undefined)
        .map((note) => `${bar['@number']}: ${note.pitch!.step}${note.pitch!.octave} ${note.accidental}`),
    );
    expect(signs).toEqual(['4: B4 natural', '11: F4 sharp', '13: E5 natural', '18: C5 sharp']);
  });

  it('uses only what a school clarinet plays', () => {
    // Source: written range of the clarinet E3 to C7 (handbooks); school parts seldom go above C6 (common practice)
    for (const { pitch } of notes) {
      if (!pitch) continue;
      expect(pitch.octave * 7 + 'CDEFGAB'.indexOf(pitch.step)).toBeGreaterThanOrEqual(3 * 7 + 2);
      expect(pitch.octave * 7 + 'CDEFGAB'.indexOf(pitch.step)).toBeLessThanOrEqual(6 * 7);
    }
  });
});

describe('the étude as a part', () => {
  const part = readPart(readDemoScore());

  it('is read without remarks, for clarinet in B♭', () => {
    expect(part.remarks).toEqual([]);
    expect(part).toMatchObject({ transposeSemitones: -2, printedBars: 20, partName: 'Clarinet in B♭' });
    expect(part.title).toBe('Étude: The Ferry at Low Tide');
  });

  it('holds everything the reports speak of', () => {
    const traps = new Set(part.notes.flatMap((note) => note.misreadings.map((misreading) => misreading.kind)));
    expect([...traps].sort()).toEqual([
      'accidental-forgotten',
      'carried-past-barline',
      'dropped-within-bar',
      'key-signature-forgotten',
      'wrong-octave-applied',
    ]);
    expect(part.dynamics.map((mark) => mark.mark).join(' ')).toBe('p f p f p f p f p');
    expect(part.hairpins.map((hairpin) => [hairpin.kind, hairpin.from, hairpin.bar, hairpin.toBar])).toEqual([
      ['crescendo', 'wedge', '6', '7'],
      ['diminuendo', 'words', '14', '14'],
    ]);
    expect(part.notes.filter((note) => note.fermata).map((note) => note.bar)).toEqual(['15', '20']);
    expect(part.notes.filter((note) => note.breathAfter !== null).map((note) => note.bar)).toEqual([
      '2',
      '5',
      '12',
      '15',
      '18',
    ]);
    expect(part.notes.filter((note) => note.restBeforeQuarters > 0).map((note) => note.bar)).toEqual(['9', '10', '13']);
    expect(part.notes.filter((note) => note.tuplet?.place === 0)).toHaveLength(5);
    // the E♭ of bar 17 goes on for an eighth of bar 18
    expect(part.notes.find((note) => note.durationQuarters > 3)).toMatchObject({ bar: '17', durationQuarters: 3.5 });
  });

  it('lasts about a minute', () => {
    const seconds = performPart(part, { seed: 1, voice: 'clarinet' }).at(-1)!.offsetSeconds;
    expect(seconds).toBeGreaterThan(45);
    expect(seconds).toBeLessThan(62);
  });
});

describe('the section', () => {
  const part = readPart(readDemoScore());
  const section = demoSection();

  it('has fourteen takes of five players on three days a week apart', () => {
    expect(section).toHaveLength(14);
    expect(new Set(section.map((take) => take.fileName)).size).toBe(14);
    const days = [...new Set(section.map((take) => take.date))].sort();
    expect(days.map((day) => (Date.parse(day) - Date.parse(days[0]!)) / 86_400_000)).toEqual([0, 7, 14]);
    const weeks = section
      .map((take) => take.player)
      .reduce<Record<string, number>>((all, player) => {
        all[player] = (all[player] ?? 0) + 1;
        return all;
      }, {});
    expect(Object.values(weeks).sort()).toEqual([2, 3, 3, 3, 3]);
  });

  it('carries day and player in each file name', () => {
    for (const { fileName, date, player } of section) expect(fileName).toBe(`${date}_${player.replace(' ', '-')}.wav`);
  });

  it('has faults that all belong to the étude, and fewer of them in the last week', () => {
    const wrong = (day: string): number =>
      sum(
        section
          .filter((take) => take.date === day)
          .map(({ plan }) => {
            const played = performPart(part, plan).filter((note) => !note.abandoned);
            const asWritten = played.filter((note) => part.notes[note.index ?? -1]?.soundingMidi === note.playedMidi);
            return part.notes.length - asWritten.length + played.filter((note) => note.index === null).length;
          }),
      );
    expect(wrong('2026-03-02')).toBeGreaterThan(wrong('2026-03-09'));
    expect(wrong('2026-03-09')).toBeGreaterThan(wrong('2026-03-16'));
  });
});
