import {
  criterionReason,
  isMeasured,
  type MaybeNumber,
  median,
  type NotMeasured,
  type NotMeasuredTold,
  notMeasured,
  quantile,
  robustSpread,
} from '../base/index.js';
import { reasonOf, type TakeResult } from '../result/index.js';
import { type MeasureId, STANDARDS } from '../standards/index.js';
import { loudnessRank } from './loudness-rank.js';
import { MEASURES } from './measures.js';

/** Where a fermata's length usually lies: about twice what is written. Source: common practice, from memory. */
const USUAL_FERMATA = 2;
const LEAST_HELD_NOTES = 10;
const LEAST_TEMPO_BARS = 4;
const MOST_OF_THE_NOTES = 0.9;

/**
 * The numbers of one take that are followed over weeks.
 *
 * @param result a take that was reviewed
 * @returns one number a measure, in its unit, or the reason why there is none; what was not judged is never a number
 *
 * Source: definition; `contrast` and `hairpins` are medians, positive in the direction that is asked for; `fermatas` is the
 * one farthest from twice; `own-tuning` is within what nine of ten held notes lie.
 */
export function figuresOf(result: TakeResult): Record<MeasureId, MaybeNumber> {
  const figures = Object.entries(FIGURES).map(([id, figure]) => {
    const criterion = MEASURES.find((measure) => measure.id === id)?.criterion;
    const line = result.criteria.find((one) => one.criterion === criterion);
    return [id, line?.judged === false ? notJudged(line, result) : figure(result)];
  });
  return Object.fromEntries(figures) as Record<MeasureId, MaybeNumber>;
}

/** The reason of a criterion's line; its words, where an older result has nothing else. */
function notJudged({ summary, reason }: TakeResult['criteria'][number], { language = 'en' }: TakeResult): NotMeasured {
  const known = reasonOf({ notMeasured: summary, ...reason }, language);
  return { notMeasured: known.code === 'told-there' ? known : criterionReason(known) };
}

/** Why the result has no number, as a reason. */
const whyNone = (value: NotMeasuredTold, { language = 'en' }: TakeResult): NotMeasured => ({
  notMeasured: reasonOf(value, language),
});

type Figure = (result: TakeResult) => MaybeNumber;

const FIGURES: Readonly<Record<MeasureId, Figure>> = {
  'as-written': ({ notes }) => {
    const counted = notes.filter((note) => !note.grace);
    return share(
      counted.length,
      counted.filter((note) => note.status === 'as-written').length,
      notMeasured('no-notes-to-count'),
    );
  },
  evenness: ({ groups }) => {
    if (groups === undefined) return notMeasured('number-not-kept');
    const off = groups.map((g) => Math.max(...g.shares.map((part, k) => Math.abs(part - (g.written[k] ?? part)))));
    return off.length === 0 ? notMeasured('no-groups') : 100 * mean(off);
  },
  entries: ({ entries }) => {
    if (entries === undefined) return notMeasured('number-not-kept');
    const off = entries.map((entry) => 1000 * Math.abs(entry.lateSeconds));
    return off.length === 0 ? notMeasured('no-entries') : mean(off);
  },
  fermatas: ({ fermatas }) => {
    const ratios = fermatas.map((fermata) => fermata.ratio).filter(isMeasured<number>);
    const away = (ratio: number) => Math.abs(Math.log(ratio / USUAL_FERMATA));
    return ratios.toSorted((a, b) => away(b) - away(a))[0] ?? notMeasured('no-fermatas');
  },
  tempo: (result) => {
    const { tempo } = result;
    if ('notMeasured' in tempo) return whyNone(tempo, result);
    if (tempo.markedQuarterBpm === null) return notMeasured('no-tempo-mark');
    return (100 * tempo.playedQuarterBpm) / tempo.markedQuarterBpm;
  },
  steadiness: (result) => {
    const { tempo } = result;
    if ('notMeasured' in tempo) return whyNone(tempo, result);
    const bars = tempo.bars.map((bar) => bar.quarterBpm);
    return bars.length < LEAST_TEMPO_BARS
      ? notMeasured('too-few-bars-to-compare')
      : (100 * robustSpread(bars)) / median(bars);
  },
  contrast: ({ contrasts }) => {
    const asked = contrasts.flatMap((contrast) => {
      const steps = loudnessRank(contrast.to) - loudnessRank(contrast.from);
      const { registerAdjustedDb: adjusted, differenceDb } = contrast;
      const db = isMeasured<number>(adjusted) ? adjusted : differenceDb;
      return isMeasured<number>(db) && steps !== 0 && !Number.isNaN(steps) ? [db * Math.sign(steps)] : [];
    });
    return asked.length === 0 ? notMeasured('no-contrasts') : median(asked);
  },
  hairpins: ({ hairpins }) => {
    if (hairpins.some((hairpin) => hairpin.registerAdjustedRiseDb === undefined)) return notMeasured('number-not-kept');
    const asked = hairpins.flatMap(({ kind, registerAdjustedRiseDb: adjusted, riseDb }) => {
      const db = adjusted !== undefined && isMeasured<number>(adjusted) ? adjusted : riseDb;
      return isMeasured<number>(db) ? [kind === 'crescendo' ? db : -db] : [];
    });
    return asked.length === 0 ? notMeasured('no-hairpins') : median(asked);
  },
  slurs: (result) => {
    const pairs = transitions(result, 'slur');
    const joined = pairs?.filter((pair) => pair.gapSeconds <= STANDARDS.slurGapWatch.value);
    return share(pairs?.length, joined?.length ?? 0, notMeasured('no-slurs'));
  },
  staccato: (result) => {
    const pairs = transitions(result, 'staccato');
    if (pairs === undefined) return notMeasured('number-not-kept');
    return pairs.length === 0 ? notMeasured('no-staccato') : 100 * median(pairs.map((pair) => pair.soundedShare));
  },
  breaths: (result) => {
    const marks = transitions(result, 'breath');
    const taken = marks?.filter((mark) => mark.gapSeconds > STANDARDS.breathTaken.value);
    return share(marks?.length, taken?.length ?? 0, notMeasured('no-breaths'));
  },
  'own-tuning': ({ notes }) => {
    const cents = notes.flatMap(({ onset, offset, status, centsFromOwnTuning: own }) => {
      const held = onset !== undefined && offset !== undefined && offset - onset >= STANDARDS.noteSeconds.value;
      return held && status === 'as-written' && own !== undefined && isMeasured<number>(own) ? [Math.abs(own)] : [];
    });
    return cents.length < LEAST_HELD_NOTES ? notMeasured('too-few-held-notes') : quantile(cents, MOST_OF_THE_NOTES);
  },
  tuning: (result) => {
    const { tuning } = result;
    return 'notMeasured' in tuning ? whyNone(tuning, result) : tuning.centsFromA440;
  },
  'long-notes': (result) => {
    const { steadiness } = result;
    if (steadiness === undefined) return notMeasured('number-not-kept');
    return 'notMeasured' in steadiness ? whyNone(steadiness, result) : steadiness.wobbleCents;
  },
  'breath-noise': (result) => {
    const { breathNoise } = result;
    if (breathNoise === undefined) return notMeasured('number-not-kept');
    return 'notMeasured' in breathNoise ? whyNone(breathNoise, result) : breathNoise.harmonicsToNoiseDb;
  },
  brightness: (result) => {
    const { toneColour } = result;
    if (toneColour === undefined) return notMeasured('brief-without-sound');
    if ('notMeasured' in toneColour) return whyNone(toneColour, result);
    return median(toneColour.notes.map(({ centroidHarmonics }) => centroidHarmonics));
  },
  stops: ({ restarts, skips, findings }) =>
    restarts.length + skips.length + findings.filter((finding) => finding.kind === 'hesitation').length,
};

function transitions(result: TakeResult, asked: 'slur' | 'staccato' | 'breath') {
  return result.transitions?.filter((one) => one.asked === asked);
}

function share(of: number | undefined, count: number, nothing: NotMeasured): MaybeNumber {
  if (of === undefined) return notMeasured('number-not-kept');
  return of === 0 ? nothing : (100 * count) / of;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
