import { type Engrave, engraveExcerpt } from '../../src/engrave/engrave-excerpt.js';
import { type EngravedPart, engravePart } from '../../src/engrave/engrave-part.js';
import type { FindingKind } from '../../src/judge/index.js';
import { typesetterIn } from '../../src/report/typesetter-in.js';
import type { TakeResult } from '../../src/result/index.js';
import type { ResultFinding } from '../../src/result/schema/take-result-schema.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';

const typesetter = typesetterIn();

/** A score, and what engraves its bars. */
export interface Score {
  readonly part: Part;
  readonly engrave: Engrave;
}

/** Lays a score out and remembers its excerpts. */
export async function opened(bytes: Uint8Array): Promise<Score> {
  const laidOut = (await engravePart(engravingCopy(bytes))) as EngravedPart;
  return {
    part: readPart(bytes),
    engrave: remembering((from, to, width) => engraveExcerpt(laidOut, typesetter, from, to, width)),
  };
}

/** A result in which the part was played as written, with levels, hairpins and fermatas that can be set by a test. */
export function playedAsWritten(part: Part): TakeResult {
  const seconds = (quarters: number) => 1 + quarters * 0.6;
  return {
    format: 'take-result',
    version: 1,
    tool: { name: 'takesheet', version: '0.0.0' },
    take: {
      file: '2026-03-02_Ada-Lindqvist.wav',
      sha256: '00',
      player: 'Ada Lindqvist',
      date: '2026-03-02',
      durationSeconds: 60,
      sampleRateHz: 44100,
      channels: 1,
    },
    score: {
      file: 'etude.musicxml',
      sha256: '00',
      title: part.title,
      part: part.partName,
      transposeSemitones: part.transposeSemitones,
      bars: part.printedBars,
      notes: part.notes.length,
    },
    outcome: 'reviewed',
    fit: { share: 1, offsetSemitones: 0 },
    recording: { peakDbfs: -3, clippedShare: 0, signalToNoiseDb: 50, levelRiding: false, cautions: [] },
    tuning: { centsFromA440: 0, a4Hz: 440 },
    tempo: {
      markedQuarterBpm: 100,
      playedQuarterBpm: 100,
      bars: part.bars.map(({ bar, pass, startQuarters }) => ({ bar, pass, startQuarters, quarterBpm: 100 })),
    },
    notes: part.notes.map((note) => ({
      index: note.index,
      bar: note.bar,
      pass: note.pass,
      beat: note.beat,
      grace: note.grace,
      writtenMidi: note.writtenMidi,
      soundingMidi: note.soundingMidi,
      status: 'as-written' as const,
      playedMidi: note.soundingMidi,
      onset: seconds(note.onsetQuarters),
      offset: seconds(note.onsetQuarters + note.durationQuarters) - 0.02,
      confidence: 1,
    })),
    added: [],
    restarts: [],
    skips: [],
    levels: part.dynamics.map(({ mark, index, toIndex, bar, pass }) => ({
      mark,
      index,
      toIndex,
      bar,
      pass,
      levelDb: -20,
    })),
    contrasts: part.dynamics.slice(1).map(({ mark, index, bar, pass }, i) => ({
      from: part.dynamics[i]?.mark ?? '',
      to: mark,
      index,
      bar,
      pass,
      differenceDb: 1,
      registerAdjustedDb: 1,
    })),
    hairpins: part.hairpins.map(({ kind, index, toIndex, bar, toBar, pass }) => ({
      kind,
      index,
      toIndex,
      bar,
      toBar,
      pass,
      riseDb: 4,
      slopeDbPerBar: 2,
      slopeDbPerSecond: 1,
    })),
    fermatas: [],
    criteria: [],
    findings: [],
  };
}

/** A finding at a note, with what its kind needs to be drawn. */
export function findingAt(
  part: Part,
  kind: FindingKind,
  index: number,
  more: Partial<ResultFinding> = {},
): ResultFinding {
  const note = part.notes[index];
  if (note === undefined) throw new Error(`the part has no note ${index}`);
  return {
    kind,
    criterion: 'notes',
    weight: 'fix',
    bar: note.bar,
    pass: note.pass,
    beat: note.beat,
    index,
    text: 'Something was heard here.',
    practice: 'Play it slowly.',
    ...more,
  };
}

/** An engraver that remembers what it engraved. */
function remembering(engrave: Engrave): Engrave {
  const known = new Map<string, ReturnType<Engrave>>();
  return (from, to, width) => {
    const key = `${from} ${to} ${width}`;
    const found = known.get(key) ?? engrave(from, to, width);
    known.set(key, found);
    return found;
  };
}
