import type { BarRemark } from '../remark-table.js';
import { childNamed, type XmlElement } from '../source/xml-element.js';
import type { DraftRoute } from './read-route.js';

/** What a barline says. */
export interface BarlineContent {
  readonly route: Partial<DraftRoute>;
  /** a repeat begins with the next bar */
  readonly forwardRepeatAfter: boolean;
  /** a fermata over the end of the bar */
  readonly fermata: boolean;
  /** what could not be read as it is meant, null when all is */
  readonly remark: BarRemark | null;
}

/**
 * @param element `barline`
 * @returns repeats, endings and signs at it
 *
 * Source: MusicXML 4.0, `barline`, `repeat`, `ending`; a barline stands right unless it says otherwise.
 */
export function readBarline(element: XmlElement): BarlineContent {
  const location = element.attributes.location ?? 'right';
  const repeat = childNamed(element, 'repeat')?.attributes;
  const forward = repeat?.direction === 'forward';
  const ending = childNamed(element, 'ending')?.attributes;
  const within = repeat !== undefined && location === 'middle';
  return {
    route: {
      ...(forward && location !== 'right' ? { forwardRepeat: true } : {}),
      ...(repeat?.direction === 'backward' ? { backwardRepeatTimes: timesOf(repeat.times) } : {}),
      ...(ending?.type === 'start' ? { endingStart: endingNumbers(ending.number ?? '') } : {}),
      ...(ending?.type === 'stop' || ending?.type === 'discontinue' ? { endingStop: true } : {}),
      ...(childNamed(element, 'segno') === undefined ? {} : { segno: 'segno' }),
      ...(childNamed(element, 'coda') === undefined ? {} : { codaSymbol: true }),
    },
    forwardRepeatAfter: forward && location === 'right',
    fermata: location === 'right' && childNamed(element, 'fermata') !== undefined,
    remark: within ? 'repeat-within-bar' : null,
  };
}

function timesOf(text: string | undefined): number {
  const times = Math.trunc(Number(text ?? 2));
  return times >= 1 ? times : 2;
}

/** "1", "1, 2", "1 2"; an ending without a number counts as the first. */
function endingNumbers(text: string): number[] {
  const numbers = (text.match(/\d+/g) ?? []).map(Number).filter((n) => n >= 1 && n <= 99);
  return numbers.length > 0 ? numbers : [1];
}
