import type { MeasureId } from '../../standards/index.js';
import type { WeeksWords } from '../shapes/weeks.js';
import type { TroubleKind } from '../shapes/weeks-standing.js';
import type { Vocabulary } from '../shapes/words.js';

/** More days than these are told as a span. */
export const MOST_DAYS = 6;

/** Most decimals of a measure's number. */
const DECIMALS: Readonly<Record<MeasureId, number>> = {
  'as-written': 0,
  evenness: 1,
  entries: 0,
  fermatas: 1,
  tempo: 0,
  steadiness: 1,
  contrast: 1,
  hairpins: 1,
  slurs: 0,
  staccato: 0,
  breaths: 0,
  'own-tuning': 0,
  tuning: 0,
  'long-notes': 1,
  'breath-noise': 0,
  brightness: 1,
  stops: 0,
};

/** What the progress sheet's words are made of. */
type WeeksVocabulary = Pick<
  Vocabulary,
  'numbers' | 'dates' | 'measures' | 'weeksStanding' | 'troubles' | 'weeksLabels' | 'weeksSentences'
>;

/** Measures whose number may lie on either side of what is asked for: above 0 it has a sign as well. */
const TWO_SIDED: ReadonlySet<MeasureId> = new Set(['tuning']);

/**
 * @param vocabulary of one language
 * @returns everything the progress sheet says in it
 */
export function weeksWith(vocabulary: WeeksVocabulary): WeeksWords {
  const {
    weeksLabels: labels,
    weeksSentences: sentences,
    weeksStanding: standing,
    troubles,
    measures,
    numbers,
    dates,
  } = vocabulary;
  const figure = (measure: MeasureId, value: number): string => {
    const text = numbers.number(value, DECIMALS[measure]);
    return TWO_SIDED.has(measure) && value > 0 && text !== '0' ? `+${text}` : text;
  };
  const topic = (kind: TroubleKind, bars: readonly string[]): string => {
    const [one, several] = troubles[kind].topic;
    return standing.topicIn(bars.length > 1 ? several : one, bars);
  };
  return {
    ...sentences,
    standing,
    topic,
    goal: (goal) => {
      if (goal.about === 'bars') return standing.goalInBars(goal.bars, troubles[goal.kind].aim);
      if (goal.about === 'throughout') return standing.goalThroughout(troubles[goal.kind].aim);
      if (goal.about === 'measure') return measures[goal.measure].goal;
      if (goal.about === 'hear-again') return standing.goalHearAgain(goal.bars);
      return goal.about === 'listen' ? standing.goalListen(topic(goal.kind, goal.bars)) : standing.goalKeep;
    },
    labels,
    figure,
    measure: (measure) => measures[measure],
    measureInSentence: (measure) => sentences.inSentence(measures[measure].name),
    told: ({ measure, verdict, fromDay, from, to }) => {
      const words = measures[measure];
      const now = words.value(figure(measure, to));
      return sentences.change(words[verdict], now, dates.day(fromDay), figure(measure, from));
    },
  };
}
