import type { AlignedNote, Alignment } from '../../src/align/index.js';
import { type Caution, notMeasured } from '../../src/base/index.js';
import type { Take } from '../../src/decode/index.js';
import type { Finding, Judgement, Unit } from '../../src/judge/index.js';
import type { Measurements } from '../../src/measure/index.js';
import type { Loudness } from '../../src/report/index.js';
import { type ResultFinding, type TakeResult, takeResultSchema } from '../../src/result/schema/take-result-schema.js';
import { type TakeResultInput, toTakeResult } from '../../src/result/to-take-result.js';
import type { DynamicMark, Hairpin, Part, PartNote, PerformedBar } from '../../src/score/index.js';

import { FACTS_AS_THEY_COME_UP } from './facts.js';

/** What a sample is to be like; everything has a default. */
export interface SampleOptions {
  readonly bars?: number;
  readonly title?: string;
  readonly player?: string | null;
  readonly file?: string;
  /** in the words a player reads */
  readonly findings?: readonly ResultFinding[];
  readonly fit?: Alignment['fit'];
  readonly cautions?: readonly Caution[];
}

/** A review's inputs, written by hand: an invented étude in 4/4 for clarinet, played at 92 where 96 is marked. */
export interface Sample extends TakeResultInput {
  readonly loudness: Loudness;
  /** the judgement in words written by hand, which no room says */
  readonly handWords: Pick<TakeResult, 'findings' | 'criteria'>;
}

const QUARTERS_A_BAR = 4;
const SECONDS_A_QUARTER = 60 / 92;
const LEAD_IN_SECONDS = 1.2;
const PLAN = ['p', 'mf', 'f', 'mp'] as const;
const PLAYED_DB: Record<string, number> = { p: -33.4, mf: -27.1, f: -20.2, mp: -29.6 };
const TUNE = [60, 62, 64, 65, 67, 65, 64, 62, 67, 69, 70, 72, 70, 69, 67, 64] as const;
const STEPS = ['C', 'C', 'D', 'D', 'E', 'F', 'F', 'G', 'G', 'A', 'A', 'B'] as const;

/** A bar is quarters or eighths in turn; the mark changes every four bars, a hairpin leads into every other mark. */
export function samplePart(bars = 24, title = 'Étude in B♭, “The Mill Race”'): Part {
  const performed = Array.from(
    { length: bars },
    (_, i): PerformedBar => ({
      bar: String(i + 1),
      barIndex: i,
      pass: 1,
      startQuarters: i * QUARTERS_A_BAR,
      lengthQuarters: QUARTERS_A_BAR,
      beats: 4,
      beatType: 4,
    }),
  );
  const notes = performed
    .flatMap((bar) => notesOf(bar))
    .map((note, index) => ({ ...note, index, printedId: `n${index}` }));
  const fermata = notes.length - 1;
  const marked = notes.map((note, i): PartNote => ({ ...note, fermata: i === fermata }));
  return {
    title,
    partName: 'Clarinet in B♭',
    transposeSemitones: -2,
    printedBars: bars,
    bars: performed,
    notes: marked,
    dynamics: dynamicsOf(marked, bars),
    dynamicEvents: bars > 10 ? [{ mark: 'sfz', index: firstIn(marked, 10) }] : [],
    hairpins: hairpinsOf(marked, bars),
    tempos: [{ atQuarters: 0, quarterBpm: 96, printed: true }],
    tempoBends: [],
    remarks: [],
  };
}

function notesOf(bar: PerformedBar): PartNote[] {
  const count = bar.barIndex % 2 === 0 ? 4 : 8;
  const length = QUARTERS_A_BAR / count;
  return Array.from({ length: count }, (_, i): PartNote => {
    const writtenMidi = TUNE[(bar.barIndex * 3 + i) % TUNE.length] as number;
    return {
      index: 0,
      bar: bar.bar,
      barIndex: bar.barIndex,
      pass: bar.pass,
      beat: 1 + i * length,
      onsetQuarters: bar.startQuarters + i * length,
      durationQuarters: length,
      written: { step: STEPS[writtenMidi % 12] as PartNote['written']['step'], alter: 0, octave: 4 },
      writtenMidi,
      soundingMidi: writtenMidi - 2,
      grace: false,
      printedAccidental: null,
      misreadings: [],
      articulations: [],
      slurredFromPrevious: i > 0,
      slurredToNext: i < count - 1,
      fermata: false,
      breathAfter: i === count - 1 && bar.barIndex % 4 === 3 ? 'breath' : null,
      tuplet: null,
      ornament: null,
      restBeforeQuarters: 0,
      printedId: '',
    };
  });
}

const firstIn = (notes: readonly PartNote[], barIndex: number) => notes.findIndex((note) => note.barIndex === barIndex);

const lastIn = (notes: readonly PartNote[], barIndex: number) =>
  notes.findLastIndex((note) => note.barIndex <= barIndex);

function dynamicsOf(notes: readonly PartNote[], bars: number): DynamicMark[] {
  return Array.from({ length: Math.ceil(bars / 4) }, (_, i) => {
    const hairpin = i % 2 === 0 && 4 * i + 4 < bars;
    return {
      mark: PLAN[i % PLAN.length] as string,
      bar: String(4 * i + 1),
      pass: 1,
      atQuarters: 4 * i * QUARTERS_A_BAR,
      index: firstIn(notes, 4 * i),
      toIndex: lastIn(notes, Math.min(bars - 1, 4 * i + (hairpin ? 2 : 3))),
    };
  });
}

function hairpinsOf(notes: readonly PartNote[], bars: number): Hairpin[] {
  return Array.from({ length: Math.floor((bars - 1) / 8) }, (_, i) => {
    const barIndex = 8 * i + 3;
    return {
      kind: i % 2 === 0 ? 'crescendo' : 'diminuendo',
      from: i % 3 === 1 ? 'words' : 'wedge',
      bar: String(barIndex + 1),
      toBar: String(barIndex + 1),
      pass: 1,
      startQuarters: barIndex * QUARTERS_A_BAR,
      endQuarters: (barIndex + 1) * QUARTERS_A_BAR,
      index: firstIn(notes, barIndex),
      toIndex: lastIn(notes, barIndex),
    } as const;
  });
}

/** Seconds at which score time was played; the tempo sways by a few per cent. */
function secondsAt(quarters: number): number {
  return LEAD_IN_SECONDS + SECONDS_A_QUARTER * (quarters + 0.25 * Math.sin(quarters / 7));
}

function levelOf(part: Part, note: PartNote): number {
  const mark = part.dynamics.findLast((one) => one.index <= note.index)?.mark ?? 'mf';
  const hairpin = part.hairpins.find((one) => one.index <= note.index && note.index <= one.toIndex);
  const rise = hairpin === undefined ? 0 : (note.beat - 1) * (hairpin.kind === 'crescendo' ? 1.4 : -1.1);
  return (PLAYED_DB[mark] as number) + rise + 0.8 * Math.sin(note.index * 2.3);
}

function alignedNote(note: PartNote): AlignedNote {
  const onsetSeconds = secondsAt(note.onsetQuarters);
  const end = secondsAt(note.onsetQuarters + note.durationQuarters * (note.fermata ? 2.2 : 1));
  const offsetSeconds = end - (note.slurredToNext ? 0.01 : 0.12);
  if (note.index === 41) return { index: note.index, status: 'left-out', confidence: 0.9 };
  const wrong = note.index === 17;
  return {
    index: note.index,
    status: wrong ? 'other-pitch' : 'as-written',
    playedMidi: note.soundingMidi + (wrong ? 1 : 0),
    onsetSeconds,
    offsetSeconds,
    confidence: 0.97,
  };
}

function measurementsOf(part: Part, cautions: readonly Caution[]): Measurements {
  return {
    recording: {
      peakDbfs: -4.312,
      clippedShare: 0,
      signalToNoiseDb: 46.28,
      reverberationSeconds: 0.42,
      levelRiding: false,
      breaksOff: false,
      onsetSpreadSeconds: 0,
      endsInSound: false,
      cautions,
    },
    tuning: { centsFromA440: 4.26, a4Hz: 441.084 },
    tempo: {
      markedQuarterBpm: 96,
      playedQuarterBpm: 92.14,
      bars: part.bars.slice(0, -1).map((bar) => {
        const seconds = secondsAt(bar.startQuarters + bar.lengthQuarters) - secondsAt(bar.startQuarters);
        return {
          bar: bar.bar,
          pass: bar.pass,
          startQuarters: bar.startQuarters,
          quarterBpm: (60 * bar.lengthQuarters) / seconds,
        };
      }),
    },
    notes: part.notes.map((note) => ({
      index: note.index,
      cents: 4.3 + 6 * Math.sin(note.index),
      centsFromOwnTuning: -0.00001,
      levelDb: note.index === 41 ? notMeasured('note-not-heard') : levelOf(part, note),
    })),
    levels: part.dynamics.map(({ mark, index, toIndex, bar, pass }) => ({
      ...{ mark, index, toIndex, bar, pass },
      levelDb: index === 0 || toIndex > index ? (PLAYED_DB[mark] as number) : notMeasured('too-few-under-this-mark'),
    })),
    contrasts: part.dynamics.slice(1).map(({ mark, index, bar, pass }, i) => {
      const from = (part.dynamics[i] as DynamicMark).mark;
      const differenceDb = (PLAYED_DB[mark] as number) - (PLAYED_DB[from] as number);
      const intervalDb = [differenceDb - 1.1, differenceDb + 1.1] as const;
      return { from, to: mark, index, bar, pass, differenceDb, registerAdjustedDb: differenceDb + 0.4, intervalDb };
    }),
    hairpins: part.hairpins.map(({ kind, index, toIndex, bar, toBar, pass }) => {
      const riseDb = kind === 'crescendo' ? 4.6 : notMeasured('too-few-in-hairpin');
      const rise = { riseDb, registerAdjustedRiseDb: riseDb, slopeDbPerBar: riseDb, slopeDbPerSecond: riseDb };
      return { kind, index, toIndex, bar, toBar, pass, ...rise };
    }),
    fermatas: part.notes
      .filter((note) => note.fermata)
      .map(({ index, bar, pass }) => ({ index, bar, pass, writtenSeconds: 0.652, heldSeconds: 1.435, ratio: 2.2 })),
    transitions: [],
    toneColour: {
      notes: [
        {
          index: 7,
          bar: '2',
          pass: 1,
          levelDb: -22.14,
          centroidHarmonics: 2.418,
          oddOverEvenDb: 9.31,
          tristimulus: [0.5112, 0.3621, 0.1267],
        },
      ],
      withLoudness: { harmonicsPerDb: 0.0412, errorHarmonicsPerDb: 0.0083, reachDb: 14.2, count: 12 },
    },
    breathNoise: {
      harmonicsToNoiseDb: 31.42,
      intervalDb: [29.87, 32.97],
      count: 6,
      notes: [{ index: 7, bar: '2', pass: 1, harmonicsToNoiseDb: 30.9, noiseDb: -55.21 }],
    },
    unevenness: {
      groups: 12,
      causes: [
        {
          cause: 'leap',
          count: 14,
          others: 22,
          noteSeconds: 0.217,
          differenceShare: 0.1812,
          intervalShare: [0.1201, 0.2423],
          jointIntervalShare: [0.09, 0.2724],
          beside: [
            {
              cause: 'first',
              together: -0.12,
              difference: {
                differenceShare: 0.1795,
                intervalShare: [0.1182, 0.2408],
                jointIntervalShare: [0.0881, 0.2709],
              },
            },
          ],
        },
      ],
    },
    groups: [],
    entries: [],
    accents: [],
    articulations: [],
    breaths: [],
    emptyPlaces: [],
    rests: [],
    addedPlaces: [],
    echoes: [],
    intonation: { noteNames: [], registers: [], withLoudness: notMeasured('loud-and-soft-alike') },
    markOrder: { marks: [], reversed: [] },
    heldNotes: [],
    cracks: [],
    starts: [],
    tonguedAir: [],
    attacks: [],
    noteShapes: [],
    releases: [],
    risingLines: [],
    slurredAir: { dipDb: 0.4, intervalDb: [0.2, 0.6], count: 30 },
    steadiness: { wobbleCents: 1.4, intervalCents: [1.1, 1.7], count: 9, vibratoCount: 0 },
  };
}

/** Findings in the words a player reads; the first is the most useful. */
export const SAMPLE_FINDINGS: readonly ResultFinding[] = [
  {
    kind: 'accidental',
    criterion: 'notes',
    weight: 'fix',
    misreading: 'carried-past-barline',
    bar: '3',
    pass: 1,
    beat: 2,
    index: 17,
    onset: 10.1,
    text: 'The last note of the bar came out as F♯ where F♮ is written. The sharp from bar 2 had ended at the barline.',
    practice: 'Play bars 2 and 3 slowly, say the name of each F aloud, then play it four times right in a row.',
  },
  {
    kind: 'weak-contrast',
    criterion: 'dynamics',
    weight: 'fix',
    bar: '13',
    pass: 1,
    beat: 1,
    index: 72,
    onset: 33,
    measured: { value: 0.8, unit: 'dB', expected: 'at least 3 dB' },
    text: 'The change from mf to f in bar 13 could hardly be heard.',
    practice:
      'Play one long note at f and one at mf with the same air speed you use in the hall, then carry both into the bar.',
  },
  {
    kind: 'late-entry',
    criterion: 'rhythm',
    weight: 'fix',
    bar: '9',
    pass: 1,
    beat: 2.5,
    index: 50,
    onset: 25,
    measured: { value: 0.18, unit: 's', expected: 'within 0.05 s' },
    text: 'The entry after the rest came late, by about a quarter of a beat.',
    practice: 'Count the rest in eighths, aloud, and breathe in on the last of them.',
  },
  {
    kind: 'note-out-of-tune',
    criterion: 'intonation',
    weight: 'watch',
    bar: '6',
    pass: 1,
    beat: 3,
    index: 30,
    measured: { value: 19, unit: 'cents', expected: 'within 10 cents' },
    text: 'The throat A leans sharp of your own tuning each time it comes.',
    practice: 'Hold it against a drone and find the fingering that settles it.',
  },
  {
    kind: 'weak-hairpin',
    criterion: 'dynamics',
    weight: 'watch',
    bar: '4',
    toBar: '5',
    pass: 1,
    index: 20,
    measured: { value: 1.6, unit: 'dB', expected: 'at least 3 dB' },
    text: 'The crescendo into bar 5 begins late: nearly all of the rise is in the last beat.',
    practice: 'Number the beats 1 to 4 and play each a step louder.',
  },
  {
    kind: 'off-tempo',
    criterion: 'tempo',
    weight: 'watch',
    bar: '1',
    pass: 1,
    measured: { value: 92.1, unit: 'quarter beats a minute', expected: '96' },
    text: 'The take is a little slower than marked, and steady.',
    practice: 'Raise the metronome by two each day.',
  },
  {
    kind: 'went-well',
    criterion: 'articulation',
    weight: 'well',
    bar: '5',
    toBar: '8',
    pass: 1,
    index: 24,
    text: 'Every slur in bars 5 to 8 is carried through without a break.',
    practice: '',
  },
  {
    kind: 'went-well',
    criterion: 'notes',
    weight: 'well',
    bar: '1',
    pass: 1,
    text: '142 of 144 notes are as written, the accidentals in bars 14 and 18 among them.',
    practice: '',
  },
];

function handWordsOf(findings: readonly ResultFinding[]): Sample['handWords'] {
  const summaries = {
    notes: '142 of 144 notes as written; 1 other pitch, 1 left out',
    rhythm: 'one late entry; the parts of the beat are equal within 6 %',
    tempo: '92 quarter beats a minute where 96 is marked, steady within 2 %',
    dynamics: '4 levels in the right order; 1 step of 5 too small to hear',
    articulation: '48 of 48 slurs unbroken',
    breath: 'breaths at the marks, none elsewhere',
    intonation: 'half of the notes within 6 cents of your own tuning, which is 4 cents sharp of A = 440 Hz',
    continuity: 'played through without a stop',
    sound: '9 of 9 long notes held steadily',
  } as const;
  const count = (criterion: string, weight: string) =>
    findings.filter((finding) => finding.criterion === criterion && finding.weight === weight).length;
  const criteria = (Object.keys(summaries) as (keyof typeof summaries)[]).map((criterion) => ({
    criterion,
    judged: true,
    fix: count(criterion, 'fix'),
    watch: count(criterion, 'watch'),
    summary: summaries[criterion],
    of: 20,
    met: 18,
  }));
  return { findings: [...findings], criteria };
}

/** The same judgement as codes and facts. */
function judgementOf({ findings, criteria }: Sample['handWords']): Judgement {
  const codes = { alsoInBars: [], perhapsInBars: [] } as const;
  return {
    findings: findings.map(({ text: _, practice: __, misreading: ___, measured, ...place }) => {
      const value = measured === undefined ? {} : { measured: { value: measured.value, unit: measured.unit as Unit } };
      return { ...place, ...value, ...codes, facts: FACTS_AS_THEY_COME_UP[place.kind][0] } as Finding;
    }),
    criteria: criteria.map(({ criterion, fix, watch }) => {
      const sayings = [{ code: 'played-through', facts: {} }] as const;
      return { criterion, judged: true, fix, watch, sayings, of: 20, met: 18, notPlayed: 0 };
    }),
  };
}

/** A sample's result, its judgement in the words written by hand. */
export function resultOf(sample: TakeResultInput & Pick<Sample, 'handWords'>): TakeResult {
  const result = toTakeResult(sample);
  return result.outcome === 'reviewed' ? takeResultSchema.parse({ ...result, ...sample.handWords }) : result;
}

/** Level frames of 10 ms: the notes' levels with a soft start and end, room noise between them. */
function loudnessOf(part: Part, notes: readonly AlignedNote[], seconds: number): Loudness {
  const hopSeconds = 0.01;
  const levelDb = new Float32Array(Math.round(seconds / hopSeconds)).fill(-72);
  for (const { index, onsetSeconds, offsetSeconds } of notes) {
    if (onsetSeconds === undefined || offsetSeconds === undefined) continue;
    const level = levelOf(part, part.notes[index] as PartNote);
    for (let f = Math.ceil(onsetSeconds / hopSeconds); f * hopSeconds < offsetSeconds; f++) {
      const edge = Math.min(f * hopSeconds - onsetSeconds, offsetSeconds - f * hopSeconds);
      levelDb[f] = level - 6 * Math.exp(-edge / 0.015) + 0.4 * Math.sin(f / 3);
    }
  }
  return { hopSeconds, levelDb };
}

/** A whole sample: part, alignment, measurements, judgement and loudness of one take. */
export function sampleReview(options: SampleOptions = {}): Sample {
  const part = samplePart(options.bars, options.title);
  const handWords = handWordsOf(options.findings ?? SAMPLE_FINDINGS);
  const aligned = part.notes.map(alignedNote);
  const sampleRateHz = 44100;
  const seconds = secondsAt((part.bars.length + 2) * QUARTERS_A_BAR);
  const take: Take = {
    samples: new Float32Array(Math.round(seconds * sampleRateHz)),
    sampleRateHz,
    channels: 2,
    cautions: [],
  };
  return {
    tool: { name: 'takesheet', version: '0.1.0' },
    file: options.file ?? '2026-03-02_Ada-Lindqvist.wav',
    sha256: '9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08',
    player: options.player === undefined ? 'Ada Lindqvist' : options.player,
    date: '2026-03-02',
    take,
    score: { file: 'mill-race.musicxml', sha256: '60303ae22b998861bce3b28f33eec1be758a213c86c93c076dbe9f558c11c752' },
    part,
    alignment: {
      fit: options.fit ?? 'this-part',
      share: options.fit === undefined || options.fit === 'this-part' ? 0.986 : 0.118,
      notes: aligned,
      added: [{ onsetSeconds: 20.00004, offsetSeconds: 20.1, midi: 63, afterIndex: 40 }],
      restarts: [],
      skips: [],
      offsetSemitones: 0,
      tuningCents: 4.26,
    },
    measurements: measurementsOf(part, options.cautions ?? []),
    judgement: judgementOf(handWords),
    handWords,
    loudness: loudnessOf(part, aligned, seconds),
  };
}
