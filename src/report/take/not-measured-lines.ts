import { groupBy, isMeasured, type MaybeNumberTold, type NotMeasuredTold } from '../../base/index.js';
import type { TakeResult } from '../../result/index.js';
import { type Words, wordsIn } from '../../words/index.js';

interface Gap {
  readonly what: string;
  readonly reason: NotMeasuredTold;
}

/**
 * @param result the take, reviewed
 * @returns one line a reason: what was not measured, and why; qualities that share a reason share a line. What the lines
 * of the criteria say already is left out
 */
export function notMeasuredLines(result: TakeResult): string[] {
  const words = wordsIn(result.language ?? 'en');
  const said = ({ code }: NotMeasuredTold) =>
    code !== undefined && result.criteria.some(({ reason }) => reason?.code === code);
  const wholeTake = wholeTakeGaps(words, result).filter(({ reason }) => !said(reason));
  const gaps = [...wholeTake, ...dynamicsGaps(words, result), ...fermataGaps(words, result)];
  return [...groupBy(gaps, (gap) => gap.reason.notMeasured)].map(([reason, group]) => {
    const what = [...new Set(group.map((gap) => gap.what))];
    return words.gap.line(words.gap.list(what), reason);
  });
}

function wholeTakeGaps(words: Words, { tuning, tempo, recording }: TakeResult): Gap[] {
  return [
    ...('notMeasured' in tuning ? [{ what: words.gap.tuning, reason: tuning }] : []),
    ...('notMeasured' in tempo ? [{ what: words.gap.tempo, reason: tempo }] : []),
    ...gap(words.gap.noise, recording.signalToNoiseDb),
  ];
}

function dynamicsGaps(words: Words, { levels, contrasts, hairpins }: TakeResult): Gap[] {
  return [
    ...levels.flatMap(({ mark, bar, levelDb }) => gap(words.gap.level(mark, bar), levelDb)),
    ...contrasts.flatMap(({ from, to, bar, differenceDb }) => gap(words.gap.step(from, to, bar), differenceDb)),
    ...hairpins.flatMap(({ kind, bar, toBar, riseDb }) => {
      return gap(words.gap.hairpin(kind, bar, toBar), riseDb);
    }),
  ];
}

function fermataGaps(words: Words, { fermatas }: TakeResult): Gap[] {
  return fermatas.flatMap(({ bar, ratio }) => gap(words.gap.fermata(bar), ratio));
}

function gap(what: string, value: MaybeNumberTold): Gap[] {
  return isMeasured<number>(value) ? [] : [{ what, reason: value }];
}
