import type { AlignedNote, Alignment } from '../align/index.js';
import { type Caution, codeAsData, criterionReason, type Language, type Reason } from '../base/index.js';
import type { Take } from '../decode/index.js';
import type { CriterionLine, Finding, Judgement } from '../judge/index.js';
import type { Measurements } from '../measure/index.js';
import type { Part, PartNote } from '../score/index.js';
import { cautionSaid, reasonSaid } from '../words/index.js';
import { courseOf, playingOf } from './playing-of.js';
import { rounded, roundedMaybe } from './rounding.js';
import { sectionScore } from './section/section-score.js';
import { type ResultFinding, type TakeResult, takeResultSchema } from './take-result-schema.js';
import { timingOf } from './timing-of.js';
import { toldIn } from './told-in.js';
import { type Told, toldReason, toldReasons } from './told-reason.js';

/** Everything a result document is assembled from. */
export interface TakeResultInput {
  readonly tool: { readonly name: string; readonly version: string };
  /** file name only */
  readonly file: string;
  /** of the file's bytes, hexadecimal */
  readonly sha256: string;
  readonly player: string | null;
  /** ISO 8601 day */
  readonly date: string | null;
  /** as a roster or the file name has it; nothing is written when it is left out */
  readonly instrument?: string | null;
  /** whether player and file are numbers that stand for names */
  readonly blind?: boolean;
  readonly take: Take;
  readonly score: { readonly file: string; readonly sha256: string };
  readonly part: Part;
  readonly alignment: Alignment;
  readonly measurements: Measurements;
  readonly judgement: Judgement;
  /** of the judgement's words, and for all that is told in sentences; English when it is left out */
  readonly language?: Language;
}

const OUTCOMES = { 'this-part': 'reviewed', other: 'not-this-score', nothing: 'too-poor' } as const;

const NOT_REVIEWED = {
  other: { code: 'other-part', facts: {} },
  nothing: { code: 'nothing-clear', facts: {} },
} as const satisfies Record<string, Reason>;

/** What was measured, every reason told in the language of the document. */
type ToldMeasurements = Told<Measurements>;

/**
 * Puts one take's result document together. A take that is not this part, or in which nothing could be heard, keeps the
 * facts of the file and of the recording; every quality of the playing then says that it was not measured.
 *
 * @param input the rooms' results; times in seconds, levels in dBFS, pitch in MIDI numbers and cents
 * @returns the document, numbers rounded (times to 0.1 ms, levels to 0.01 dB, pitch to 0.1 cent), never -0
 * @throws when a number is not finite or a field breaks the schema: an error of the program, not of the user
 *
 * Source: definition.
 */
export function toTakeResult(input: TakeResultInput): TakeResult {
  const { alignment, language = 'en' } = input;
  const measurements = toldReasons(language, input.measurements);
  const played =
    alignment.fit === 'this-part'
      ? playing(input, measurements, language)
      : notPlayed(language, NOT_REVIEWED[alignment.fit]);
  const cautions = eachOnce([...input.take.cautions, ...input.measurements.recording.cautions]);
  const document = {
    format: 'take-result',
    version: 1,
    tool: { name: input.tool.name, version: input.tool.version },
    take: takeOf(input),
    score: { ...sectionScore(input.score, input.part), barNumbers: barNumbersOf(input.part) },
    language,
    outcome: OUTCOMES[alignment.fit],
    fit: { share: rounded(alignment.share, 'share'), offsetSemitones: rounded(alignment.offsetSemitones, 'beats') },
    recording: {
      peakDbfs: rounded(measurements.recording.peakDbfs, 'decibels'),
      clippedShare: rounded(measurements.recording.clippedShare, 'clippedShare'),
      signalToNoiseDb: roundedMaybe(measurements.recording.signalToNoiseDb, 'decibels'),
      reverberationSeconds: roundedMaybe(measurements.recording.reverberationSeconds, 'decibels'),
      levelRiding: measurements.recording.levelRiding,
      cautions: cautions.map((caution) => cautionSaid(language, caution)),
      cautionCodes: cautions.map(codeAsData),
    },
    ...played,
  };
  return takeResultSchema.parse(toldIn(language, document));
}

/** What is known of the file is also known of the recording. */
function eachOnce(cautions: readonly Caution[]): Caution[] {
  return [...new Map(cautions.map((caution) => [JSON.stringify(caution), caution])).values()];
}

/** Bars as printed, each once, in printed order. */
function barNumbersOf(part: Part): string[] {
  return [...new Set(part.bars.toSorted((a, b) => a.barIndex - b.barIndex).map((bar) => bar.bar))];
}

function takeOf({ file, sha256, player, date, instrument, blind, take }: TakeResultInput): TakeResult['take'] {
  return {
    file,
    sha256,
    player,
    date,
    ...(instrument === undefined || instrument === null ? {} : { instrument }),
    ...(blind === true ? { blind } : {}),
    durationSeconds: rounded(take.samples.length / take.sampleRateHz, 'seconds'),
    sampleRateHz: take.sampleRateHz,
    channels: take.channels,
  };
}

/** The part of a document that speaks of the playing. */
type Playing = Omit<TakeResult, 'format' | 'version' | 'tool' | 'take' | 'score' | 'outcome' | 'fit' | 'recording'>;

function notPlayed(language: Language, reason: Reason): Playing {
  return {
    tuning: toldReason(language, reason),
    tempo: toldReason(language, reason),
    notes: [],
    added: [],
    restarts: [],
    skips: [],
    levels: [],
    contrasts: [],
    hairpins: [],
    fermatas: [],
    criteria: [],
    findings: [],
  };
}

function playing(
  { part, alignment, judgement }: TakeResultInput,
  measurements: ToldMeasurements,
  language: Language,
): Playing {
  return {
    tuning: tuningOf(measurements),
    tempo: tempoOf(measurements),
    notes: part.notes.map((note, i) => noteOf(note, alignment.notes[i], measurements.notes[i])),
    ...eventsOf(part, alignment),
    ...dynamicsOf(measurements),
    fermatas: measurements.fermatas.map((f) => ({
      index: f.index,
      bar: f.bar,
      pass: f.pass,
      writtenSeconds: roundedMaybe(f.writtenSeconds, 'seconds'),
      heldSeconds: roundedMaybe(f.heldSeconds, 'seconds'),
      ratio: roundedMaybe(f.ratio, 'ratio'),
    })),
    ...timingOf(part, measurements),
    ...playingOf(measurements),
    criteria: judgement.criteria.map((line) => criterionOf(line, language)),
    findings: judgement.findings.map((finding) => findingOf(finding, measurements)),
  };
}

/** A line has a reason where it has no figure to tell. */
function criterionOf({ reason, ...line }: CriterionLine, language: Language): TakeResult['criteria'][number] {
  if (reason === undefined) return line;
  const summary = line.summary === '' ? reasonSaid(language, criterionReason(reason)) : line.summary;
  return { ...line, summary, reason: codeAsData(reason) };
}

function tuningOf({ tuning }: ToldMeasurements): TakeResult['tuning'] {
  if ('notMeasured' in tuning) return tuning;
  return { centsFromA440: rounded(tuning.centsFromA440, 'cents'), a4Hz: rounded(tuning.a4Hz, 'hertz') };
}

function tempoOf({ tempo }: ToldMeasurements): TakeResult['tempo'] {
  if ('notMeasured' in tempo) return tempo;
  return {
    markedQuarterBpm: tempo.markedQuarterBpm === null ? null : rounded(tempo.markedQuarterBpm, 'tempo'),
    playedQuarterBpm: rounded(tempo.playedQuarterBpm, 'tempo'),
    bars: tempo.bars.map((bar) => ({
      bar: bar.bar,
      pass: bar.pass,
      startQuarters: rounded(bar.startQuarters, 'beats'),
      quarterBpm: rounded(bar.quarterBpm, 'tempo'),
    })),
  };
}

function noteOf(
  note: PartNote,
  aligned: AlignedNote | undefined,
  measured: ToldMeasurements['notes'][number] | undefined,
) {
  if (aligned === undefined || measured === undefined)
    throw new Error(`note ${note.index} was not aligned or measured`);
  const sounded = aligned.status !== 'left-out';
  return {
    index: note.index,
    bar: note.bar,
    pass: note.pass,
    beat: rounded(note.beat, 'beats'),
    grace: note.grace,
    writtenMidi: note.writtenMidi,
    soundingMidi: note.soundingMidi,
    status: aligned.status,
    ...(aligned.playedMidi === undefined ? {} : { playedMidi: aligned.playedMidi }),
    ...(aligned.onsetSeconds === undefined ? {} : { onset: rounded(aligned.onsetSeconds, 'seconds') }),
    ...(aligned.offsetSeconds === undefined ? {} : { offset: rounded(aligned.offsetSeconds, 'seconds') }),
    confidence: rounded(aligned.confidence, 'confidence'),
    ...(sounded
      ? {
          cents: roundedMaybe(measured.cents, 'cents'),
          centsFromOwnTuning: roundedMaybe(measured.centsFromOwnTuning, 'cents'),
          levelDb: roundedMaybe(measured.levelDb, 'decibels'),
        }
      : {}),
  };
}

function eventsOf(part: Part, alignment: Alignment): Pick<TakeResult, 'added' | 'restarts' | 'skips'> {
  const barOf = (index: number) => (part.notes[index] as PartNote).bar;
  return {
    added: alignment.added.map((note) => ({
      onset: rounded(note.onsetSeconds, 'seconds'),
      offset: rounded(note.offsetSeconds, 'seconds'),
      midi: note.midi,
      afterIndex: note.afterIndex,
    })),
    restarts: alignment.restarts.map((restart) => ({
      stoppedAtBar: barOf(restart.stoppedAtIndex),
      resumedAtBar: barOf(restart.resumedAtIndex),
      onset: rounded(restart.onsetSeconds, 'seconds'),
    })),
    skips: alignment.skips.map((skip) => ({
      fromBar: barOf(skip.fromIndex),
      toBar: barOf(skip.toIndex),
      fromIndex: skip.fromIndex,
      toIndex: skip.toIndex,
      onset: rounded(skip.onsetSeconds, 'seconds'),
    })),
  };
}

function dynamicsOf(measurements: ToldMeasurements): Pick<TakeResult, 'levels' | 'contrasts' | 'hairpins'> {
  return {
    levels: measurements.levels.map((level) => ({ ...level, levelDb: roundedMaybe(level.levelDb, 'decibels') })),
    contrasts: measurements.contrasts.map(({ intervalDb, ...contrast }) => ({
      ...contrast,
      differenceDb: roundedMaybe(contrast.differenceDb, 'decibels'),
      registerAdjustedDb: roundedMaybe(contrast.registerAdjustedDb, 'decibels'),
      ...(intervalDb === undefined ? {} : { intervalDb: intervalDb.map((db) => rounded(db, 'decibels')) }),
    })),
    hairpins: measurements.hairpins.map(({ errorDb, course, ...hairpin }) => ({
      ...hairpin,
      riseDb: roundedMaybe(hairpin.riseDb, 'decibels'),
      registerAdjustedRiseDb: roundedMaybe(hairpin.registerAdjustedRiseDb, 'decibels'),
      slopeDbPerBar: roundedMaybe(hairpin.slopeDbPerBar, 'slope'),
      slopeDbPerSecond: roundedMaybe(hairpin.slopeDbPerSecond, 'slope'),
      ...(errorDb === undefined ? {} : { errorDb: rounded(errorDb, 'decibels') }),
      ...(course === undefined ? {} : { course: courseOf(course) }),
    })),
  };
}

function findingOf({ beat, onset, measured, ...finding }: Finding, measurements: ToldMeasurements): ResultFinding {
  return {
    ...finding,
    ...(beat === undefined ? {} : { beat: rounded(beat, 'beats') }),
    ...(onset === undefined ? {} : { onset: rounded(onset, 'seconds') }),
    ...(measured === undefined
      ? {}
      : {
          measured: {
            ...measured,
            value: rounded(measured.value, 'measured'),
            ...(finding.kind === 'uneven-group' ? sharesOf(finding.index, measurements) : {}),
          },
        }),
  };
}

function sharesOf(
  index: number | undefined,
  { groups }: ToldMeasurements,
): { shares?: number[]; writtenShares?: number[] } {
  const group = groups.find((one) => one.index === index);
  if (group === undefined) return {};
  const all = (shares: readonly number[]) => shares.map((share) => rounded(share, 'share'));
  return { shares: all(group.shares), writtenShares: all(group.written) };
}
