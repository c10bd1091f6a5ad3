import { isMeasured, type MaybeNumber } from '../../../base/index.js';
import type { TakeResult } from '../../result/take-result-schema.js';
import { groupBy } from '../../section/group-by.js';

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
    return `${sentenceCase(listInWords(what))}: ${reason}.`;
  });
}

function wholeTakeGaps({ tuning, tempo, recording }: TakeResult): Gap[] {
  return [
    ...('notMeasured' in tuning ? [{ what: 'tuning', reason: tuning.notMeasured }] : []),
    ...('notMeasured' in tempo ? [{ what: 'tempo', reason: tempo.notMeasured }] : []),
    ...gap('the noise of the room', recording.signalToNoiseDb),
  ];
}

function dynamicsGaps({ levels, contrasts, hairpins }: TakeResult): Gap[] {
  return [
    ...levels.flatMap(({ mark, bar, levelDb }) => gap(`the level under ${mark} in bar ${bar}`, levelDb)),
    ...contrasts.flatMap(({ from, to, bar, differenceDb }) =>
      gap(`the step from ${from} to ${to} in bar ${bar}`, differenceDb),
    ),
    ...hairpins.flatMap(({ kind, bar, toBar, riseDb }) => {
      return gap(`the ${kind} ${bar === toBar ? `in bar ${bar}` : `in bars ${bar}–${toBar}`}`, riseDb);
    }),
  ];
}

function fermataGaps({ fermatas }: TakeResult): Gap[] {
  return fermatas.flatMap(({ bar, ratio }) => gap(`the fermata in bar ${bar}`, ratio));
}

function gap(what: string, value: MaybeNumber): Gap[] {
  return isMeasured(value) ? [] : [{ what, reason: value.notMeasured.replace(/\.$/, '') }];
}

function listInWords(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
