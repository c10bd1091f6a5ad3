import { isMeasured, type MaybeNumber } from '../../../base/index.js';
import type { TakeResult } from '../../result/take-result-schema.js';
import { groupBy } from '../../section/group-by.js';
import { GAP_WORDS } from '../../words/take/page-words.js';

interface Gap {
  readonly what: string;
  readonly reason: string;
}

/**
 * @param result the take, reviewed
 * @returns one line a reason: what was not measured, and why; qualities that share a reason share a line
 *
 * Source: definition.
 */
export function notMeasuredLines(result: TakeResult): string[] {
  const gaps = [...wholeTakeGaps(result), ...dynamicsGaps(result), ...fermataGaps(result)];
  return [...groupBy(gaps, (gap) => gap.reason)].map(([reason, group]) => {
    const what = [...new Set(group.map((gap) => gap.what))];
    return GAP_WORDS.line(GAP_WORDS.list(what), reason);
  });
}

function wholeTakeGaps({ tuning, tempo, recording }: TakeResult): Gap[] {
  return [
    ...('notMeasured' in tuning ? [{ what: GAP_WORDS.tuning, reason: tuning.notMeasured }] : []),
    ...('notMeasured' in tempo ? [{ what: GAP_WORDS.tempo, reason: tempo.notMeasured }] : []),
    ...gap(GAP_WORDS.noise, recording.signalToNoiseDb),
  ];
}

function dynamicsGaps({ levels, contrasts, hairpins }: TakeResult): Gap[] {
  return [
    ...levels.flatMap(({ mark, bar, levelDb }) => gap(GAP_WORDS.level(mark, bar), levelDb)),
    ...contrasts.flatMap(({ from, to, bar, differenceDb }) => gap(GAP_WORDS.step(from, to, bar), differenceDb)),
    ...hairpins.flatMap(({ kind, bar, toBar, riseDb }) => {
      return gap(GAP_WORDS.hairpin(kind, bar, toBar), riseDb);
    }),
  ];
}

function fermataGaps({ fermatas }: TakeResult): Gap[] {
  return fermatas.flatMap(({ bar, ratio }) => gap(GAP_WORDS.fermata(bar), ratio));
}

function gap(what: string, value: MaybeNumber): Gap[] {
  return isMeasured(value) ? [] : [{ what, reason: value.notMeasured.replace(/\.$/, '') }];
}
