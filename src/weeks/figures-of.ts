import {
  isMeasured,
  type Language,
  type MaybeNumber,
  median,
  notMeasured,
  quantile,
  robustSpread,
} from '../base/index.js';
import type { TakeResult } from '../result/index.js';
import { type MeasureId, STANDARDS } from '../standards/index.js';
import { type NoFigureWords, noFigureIn, reasonIn, summaryRetold } from '../words/index.js';
import { loudnessRank } from './loudness-rank.js';
import { MEASURES } from './measures.js';

/** Where a fermata's length usually lies: about twice what is written. Source: reference texts. */
const USUAL_FERMATA = 2;
const LEAST_HELD_NOTES = 10;
const LEAST_TEMPO_BARS = 4;
const MOST_OF_THE_NOTES = 0.9;

/**
 * The numbers of one take that are followed over weeks.
 *
 * @param result a take that was reviewed
 * @param language in which reasons are told
 * @returns one number a measure, in its unit, or the reason why there is none; what was not judged is never a number
 *
 * Source: definition; `contrast` and `hairpins` are medians, positive in the direction that is asked for; `fermatas` is the
 * one farthest from twice; `own-tuning` is within what nine of ten held notes lie.
 */
export function figuresOf(result: TakeResult, language: Language): Record<MeasureId, MaybeNumber> {
  const words = noFigureIn(language);
  const from = result.language ?? 'en';
  const why = (summary: string) => summaryRetold(language, from, summary) ?? words.told;
  const figures = Object.entries(FIGURES).map(([id, figure]) => {
    const criterion = MEASURES.find((measure) => measure.id === id)?.criterion;
    const line = result.criteria.find((one) => one.criterion === criterion);
    return [id, line?.judged === false ? notMeasured(why(line.summary)) : figure(result, words, language)];
  });
  return Object.fromEntries(figures) as Record<MeasureId, MaybeNumber>;
}

type Figure = (result: TakeResult, words: NoFigureWords, language: Language) => MaybeNumber;

const FIGURES: Readonly<Record<MeasureId, Figure>> = {
  'as-written': ({ notes }, words) => {
    const counted = notes.filter((note) => !note.grace);
    return share(words, counted.length, counted.filter((note) => note.status === 'as-written').length, words.notes);
  },
  evenness: ({ groups }, words) => {
    if (groups === undefined) return notMeasured(words.notKept);
    const off = groups.map((g) => Math.max(...g.shares.map((part, k) => Math.abs(part - (g.written[k] ?? part)))));
    return off.length === 0 ? notMeasured(words.groups) : 100 * mean(off);
  },
  entries: ({ entries }, words) => {
    if (entries === undefined) return notMeasured(words.notKept);
    const off = entries.map((entry) => 1000 * Math.abs(entry.lateSeconds));
    return off.length === 0 ? notMeasured(words.entries) : mean(off);
  },
  fermatas: ({ fermatas }, words) => {
    const ratios = fermatas.map((fermata) => fermata.ratio).filter(isMeasured<number>);
    const away = (ratio: number) => Math.abs(Math.log(ratio / USUAL_FERMATA));
    return ratios.toSorted((a, b) => away(b) - away(a))[0] ?? notMeasured(words.fermatas);
  },
  tempo: ({ tempo, language: from = 'en' }, words, language) => {
    if ('notMeasured' in tempo) return notMeasured(reasonIn(language, from, tempo.notMeasured));
    if (tempo.markedQuarterBpm === null) return notMeasured(words.noTempoMark);
    return (100 * tempo.playedQuarterBpm) / tempo.markedQuarterBpm;
  },
  steadiness: ({ tempo, language: from = 'en' }, words, language) => {
    if ('notMeasured' in tempo) return notMeasured(reasonIn(language, from, tempo.notMeasured));
    const bars = tempo.bars.map((bar) => bar.quarterBpm);
    return bars.length < LEAST_TEMPO_BARS ? notMeasured(words.bars) : (100 * robustSpread(bars)) / median(bars);
  },
  contrast: ({ contrasts }, words) => {
    const asked = contrasts.flatMap((contrast) => {
      const steps = loudnessRank(contrast.to) - loudnessRank(contrast.from);
      const { registerAdjustedDb: adjusted, differenceDb } = contrast;
      const db = isMeasured<number>(adjusted) ? adjusted : differenceDb;
      return isMeasured<number>(db) && steps !== 0 && !Number.isNaN(steps) ? [db * Math.sign(steps)] : [];
    });
    return asked.length === 0 ? notMeasured(words.contrasts) : median(asked);
  },
  hairpins: ({ hairpins }, words) => {
    if (hairpins.some((hairpin) => hairpin.registerAdjustedRiseDb === undefined)) return notMeasured(words.notKept);
    const asked = hairpins.flatMap(({ kind, registerAdjustedRiseDb: adjusted, riseDb }) => {
      const db = adjusted !== undefined && isMeasured<number>(adjusted) ? adjusted : riseDb;
      return isMeasured<number>(db) ? [kind === 'crescendo' ? db : -db] : [];
    });
    return asked.length === 0 ? notMeasured(words.hairpins) : median(asked);
  },
  slurs: (result, words) => {
    const pairs = transitions(result, 'slur');
    const joined = pairs?.filter((pair) => pair.gapSeconds <= STANDARDS.slurGapWatch.value);
    return share(words, pairs?.length, joined?.length ?? 0, words.slurs);
  },
  staccato: (result, words) => {
    const pairs = transitions(result, 'staccato');
    if (pairs === undefined) return notMeasured(words.notKept);
    return pairs.length === 0 ? notMeasured(words.staccato) : 100 * median(pairs.map((pair) => pair.soundedShare));
  },
  breaths: (result, words) => {
    const marks = transitions(result, 'breath');
    const taken = marks?.filter((mark) => mark.gapSeconds > STANDARDS.breathTaken.value);
    return share(words, marks?.length, taken?.length ?? 0, words.breaths);
  },
  'own-tuning': ({ notes }, words) => {
    const cents = notes.flatMap(({ onset, offset, status, centsFromOwnTuning: own }) => {
      const held = onset !== undefined && offset !== undefined && offset - onset >= STANDARDS.noteSeconds.value;
      return held && status === 'as-written' && own !== undefined && isMeasured<number>(own) ? [Math.abs(own)] : [];
    });
    return cents.length < LEAST_HELD_NOTES ? notMeasured(words.heldNotes) : quantile(cents, MOST_OF_THE_NOTES);
  },
  tuning: ({ tuning, language: from = 'en' }, _words, language) =>
    'notMeasured' in tuning ? notMeasured(reasonIn(language, from, tuning.notMeasured)) : tuning.centsFromA440,
  stops: ({ restarts, skips, findings }) =>
    restarts.length + skips.length + findings.filter((finding) => finding.kind === 'hesitation').length,
};

function transitions(result: TakeResult, asked: 'slur' | 'staccato' | 'breath') {
  return result.transitions?.filter((one) => one.asked === asked);
}

function share(words: NoFigureWords, of: number | undefined, count: number, whyNone: string): MaybeNumber {
  if (of === undefined) return notMeasured(words.notKept);
  return of === 0 ? notMeasured(whyNone) : (100 * count) / of;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
