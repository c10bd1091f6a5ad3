import type { AlignedNote, Alignment } from '../align/index.js';
import { type Caution, codeAsData, DEFAULT_LANGUAGE, type Language, type Reason } from '../base/index.js';
import type { Take } from '../decode/index.js';
import type { Judgement } from '../judge/index.js';
import type { Measurements } from '../measure/index.js';
import type { Part, PartNote } from '../score/index.js';
import { cautionSaid } from '../words/index.js';
import { type TakeDraft, type TakeResult, takeResultSchema } from './schema/take-result-schema.js';
import { sectionScore } from './section/section-score.js';
import { timingOf } from './timing-of.js';
import { toldJudgement } from './told-judgement.js';
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
 * @returns the document, numbers rounded as its schema says (times to 0.1 ms, levels to 0.01 dB, pitch to 0.1 cent), never -0
 * @throws when a number is not finite or a field breaks the schema: an error of the program, not of the user
 */
export function toTakeResult(input: TakeResultInput): TakeResult {
  const { alignment, language = DEFAULT_LANGUAGE } = input;
  const measurements = toldReasons(language, input.measurements);
  const played =
    alignment.fit === 'this-part'
      ? playing(input, measurements, language)
      : notPlayed(language, NOT_REVIEWED[alignment.fit]);
  const cautions = eachOnce([...input.take.cautions, ...input.measurements.recording.cautions]);
  const document: TakeDraft = {
    format: 'take-result',
    version: 1,
    tool: { name: input.tool.name, version: input.tool.version },
    take: takeOf(input),
    score: { ...sectionScore(input.score, input.part), barNumbers: barNumbersOf(input.part) },
    language,
    outcome: OUTCOMES[alignment.fit],
    fit: { share: alignment.share, offsetSemitones: alignment.offsetSemitones },
    recording: {
      ...measurements.recording,
      cautions: cautions.map((caution) => cautionSaid(language, caution)),
      cautionCodes: cautions.map(codeAsData),
    },
    ...played,
  };
  return takeResultSchema.parse(document);
}

/** What is known of the file is also known of the recording. */
function eachOnce(cautions: readonly Caution[]): Caution[] {
  return [...new Map(cautions.map((caution) => [JSON.stringify(caution), caution])).values()];
}

/** Bars as printed, each once, in printed order. */
function barNumbersOf(part: Part): string[] {
  return [...new Set(part.bars.toSorted((a, b) => a.barIndex - b.barIndex).map((bar) => bar.bar))];
}

function takeOf({ file, sha256, player, date, instrument, blind, take }: TakeResultInput): TakeDraft['take'] {
  return {
    file,
    // whoever has the recording could tell by its hash whose result this is
    sha256: blind === true ? '' : sha256,
    player,
    date,
    ...(instrument === undefined || instrument === null ? {} : { instrument }),
    ...(blind === true ? { blind } : {}),
    durationSeconds: take.samples.length / take.sampleRateHz,
    sampleRateHz: take.sampleRateHz,
    channels: take.channels,
    ...(take.origin === undefined ? {} : { coding: take.origin }),
  };
}

/** The part of a document that speaks of the playing. */
type Playing = Omit<TakeDraft, 'format' | 'version' | 'tool' | 'take' | 'score' | 'outcome' | 'fit' | 'recording'>;

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
  const { criteria, findings } = toldJudgement(judgement, language);
  const { tuning, tempo, levels, contrasts, hairpins, fermatas } = measurements;
  const {
    articulations,
    breaths,
    accents,
    intonation,
    markOrder,
    heldNotes,
    steadiness,
    cracks,
    starts,
    slurredAir,
    tonguedAir,
    attacks,
    noteShapes,
    releases,
    risingLines,
  } = measurements;
  return {
    ...(judgement.played === undefined ? {} : { played: judgement.played }),
    tuning,
    tempo,
    notes: part.notes.map((note, i) => noteOf(note, alignment.notes[i], measurements.notes[i])),
    ...eventsOf(part, alignment),
    levels,
    contrasts,
    hairpins,
    fermatas,
    ...timingOf(part, measurements),
    articulations,
    breaths,
    accents,
    intonation,
    markOrder,
    heldNotes,
    steadiness,
    cracks,
    starts,
    slurredAir,
    tonguedAir,
    attacks,
    noteShapes,
    releases,
    risingLines,
    breathNoise: measurements.breathNoise,
    ...(measurements.toneColour === undefined ? {} : { toneColour: measurements.toneColour }),
    criteria,
    findings: findings.map((finding) => findingOf(finding, measurements)),
  };
}

function noteOf(
  note: PartNote,
  aligned: AlignedNote | undefined,
  measured: ToldMeasurements['notes'][number] | undefined,
) {
  if (aligned === undefined || measured === undefined)
    throw new Error(`note ${note.index} was not aligned or measured`);
  const { status, playedMidi, onsetSeconds, offsetSeconds, confidence } = aligned;
  const { cents, centsFromOwnTuning, secondEarCents, levelDb } = measured;
  const sounded = status !== 'left-out';
  return {
    index: note.index,
    bar: note.bar,
    pass: note.pass,
    beat: note.beat,
    grace: note.grace,
    writtenMidi: note.writtenMidi,
    soundingMidi: note.soundingMidi,
    status,
    ...(playedMidi === undefined ? {} : { playedMidi }),
    ...(onsetSeconds === undefined ? {} : { onset: onsetSeconds }),
    ...(offsetSeconds === undefined ? {} : { offset: offsetSeconds }),
    confidence,
    ...(sounded ? { cents, centsFromOwnTuning } : {}),
    ...(secondEarCents === undefined ? {} : { secondEarCents }),
    ...(sounded ? { levelDb } : {}),
  };
}

function eventsOf(part: Part, alignment: Alignment): Pick<Playing, 'added' | 'restarts' | 'skips'> {
  const barOf = (index: number) => (part.notes[index] as PartNote).bar;
  return {
    added: alignment.added.map(({ onsetSeconds, offsetSeconds, midi, afterIndex }) => ({
      onset: onsetSeconds,
      offset: offsetSeconds,
      midi,
      afterIndex,
    })),
    restarts: alignment.restarts.map((restart) => ({
      stoppedAtBar: barOf(restart.stoppedAtIndex),
      resumedAtBar: barOf(restart.resumedAtIndex),
      onset: restart.onsetSeconds,
    })),
    skips: alignment.skips.map((skip) => ({
      fromBar: barOf(skip.fromIndex),
      toBar: barOf(skip.toIndex),
      fromIndex: skip.fromIndex,
      toIndex: skip.toIndex,
      onset: skip.onsetSeconds,
    })),
  };
}

/** An uneven group shows how its notes shared the time. */
function findingOf(finding: Playing['findings'][number], { groups }: ToldMeasurements): Playing['findings'][number] {
  const { kind, index, measured } = finding;
  const group = kind === 'uneven-group' ? groups.find((one) => one.index === index) : undefined;
  if (measured === undefined || group === undefined) return finding;
  return { ...finding, measured: { ...measured, shares: group.shares, writtenShares: group.written } };
}
