import type { BriefNode } from './brief-node.js';
import { tempoAround } from './default-brief.js';
import type { BriefTempo } from './types.js';

const LOWEST = 10;
/** As fast as a score may be: whole notes at 250. */
const HIGHEST = 1000;

/** Quarters in each beat a tempo can be counted in. Source: definition of note values. */
const BEATS = {
  half: 2,
  'dotted-half': 3,
  quarter: 1,
  'dotted-quarter': 1.5,
  eighth: 0.5,
  'dotted-eighth': 0.75,
} as const;

/**
 * @param node `quarterBpm`, or `beat` and `bpm`; and the range, counted in the same beat
 * @param marked tempo of the part, null when none is marked
 * @returns the tempo in quarter notes a minute
 * @throws InputError `bad-brief`
 */
export function readTempo(node: BriefNode, marked: BriefTempo | null): BriefTempo | null {
  const { quarterBpm, beat, bpm, lowest, highest } = node.fields(['quarterBpm', 'beat', 'bpm', 'lowest', 'highest']);
  if (quarterBpm !== undefined && (beat ?? bpm) !== undefined) {
    (beat ?? bpm)?.fail('brief-tempo-twice', {});
  }
  if (bpm !== undefined && beat === undefined) bpm.fail('brief-tempo-without-beat', {});
  if (beat !== undefined && bpm === undefined) beat.fail('brief-tempo-without-number', {});
  const quarters = beat === undefined ? 1 : BEATS[beat.oneOf(Object.keys(BEATS) as (keyof typeof BEATS)[])];
  const given = quarterBpm ?? bpm;
  const asked = given === undefined ? marked?.quarterBpm : given.number(LOWEST, HIGHEST) * quarters;
  if (asked === undefined) {
    (lowest ?? highest)?.fail('brief-range-without-tempo', {});
    return null;
  }
  const around = given === undefined && marked !== null ? marked : tempoAround(asked);
  const least = lowest === undefined ? around.lowestQuarterBpm : lowest.number(1, HIGHEST) * quarters;
  const most = highest === undefined ? around.highestQuarterBpm : highest.number(1, 2 * HIGHEST) * quarters;
  const counted = (value: number): number => Math.round((value / quarters) * 100) / 100;
  if (least > asked) lowest?.fail('brief-above-tempo', { value: counted(least), tempo: counted(asked) });
  if (most < asked) highest?.fail('brief-below-tempo', { value: counted(most), tempo: counted(asked) });
  return { quarterBpm: asked, lowestQuarterBpm: least, highestQuarterBpm: most };
}
