import type { UnevenCause } from '../../measure/index.js';

/** Notes of tuplets and beats that are longer, or shorter, than the others of their groups, take by take. */
export interface Leaning {
  /** what they have in common; several where it cannot be told which of them it is */
  readonly causes: readonly UnevenCause[];
  /** positive is longer, in shares of the written length */
  readonly differenceShare: number;
  /** 95 % */
  readonly intervalShare: readonly [number, number];
  /** of so many notes */
  readonly count: number;
}
