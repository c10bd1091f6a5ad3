import type { DynamicMark, Hairpin, Part, PartNote } from '../../src/score/index.js';

/** What a test says of a note; the rest is plain. */
export type NoteSketch = Partial<PartNote> & {
  readonly midi: number;
  readonly quarters: number;
  readonly rest?: number;
};

/** A part in 4/4 at 60 quarters a minute, built by hand: one quarter is one second. */
export function smallPart(sketches: readonly NoteSketch[], marks: Partial<Part> = {}): Part {
  const notes: PartNote[] = [];
  let at = 0;
  sketches.forEach(({ midi, quarters, rest = 0, ...more }, index) => {
    at += rest;
    notes.push({
      index,
      bar: String(Math.floor(at / 4) + 1),
      barIndex: Math.floor(at / 4),
      pass: 1,
      beat: (at % 4) + 1,
      onsetQuarters: at,
      durationQuarters: quarters,
      written: { step: 'C', alter: 0, octave: 4 },
      writtenMidi: midi,
      soundingMidi: midi,
      grace: false,
      printedAccidental: null,
      misreadings: [],
      articulations: [],
      slurredFromPrevious: false,
      slurredToNext: false,
      fermata: false,
      breathAfter: null,
      tuplet: null,
      ornament: null,
      restBeforeQuarters: rest,
      printedId: `n${index}`,
      ...more,
    });
    at += quarters;
  });
  const bars = Array.from({ length: Math.ceil(at / 4) }, (_, i) => ({
    bar: String(i + 1),
    barIndex: i,
    pass: 1,
    startQuarters: 4 * i,
    lengthQuarters: 4,
    beats: 4,
    beatType: 4,
  }));
  return {
    title: 'Small',
    partName: 'Clarinet',
    transposeSemitones: 0,
    printedBars: bars.length,
    bars,
    notes,
    dynamics: [],
    dynamicEvents: [],
    hairpins: [],
    tempos: [{ atQuarters: 0, quarterBpm: 60, printed: true }],
    tempoBends: [],
    remarks: [],
    ...marks,
  };
}

export function dynamic(mark: string, atQuarters: number, index: number, toIndex: number): DynamicMark {
  return { mark, bar: String(Math.floor(atQuarters / 4) + 1), pass: 1, atQuarters, index, toIndex };
}

export function crescendo(startQuarters: number, endQuarters: number, index: number, toIndex: number): Hairpin {
  const bar = String(Math.floor(startQuarters / 4) + 1);
  const toBar = String(Math.floor(endQuarters / 4) + 1);
  return { kind: 'crescendo', from: 'wedge', bar, toBar, pass: 1, startQuarters, endQuarters, index, toIndex };
}
