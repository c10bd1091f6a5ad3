import type { LineBar } from './engraved-line.js';
import type { Shape } from './read-shapes.js';
import { xExtent } from './x-extent.js';

/**
 * @param bar of an engraved line
 * @returns clef and key that stand before everything else in it
 *
 * Source: common practice.
 */
export function openingSigns({ shapes }: LineBar): readonly Shape[] {
  const start = Math.min(...shapes.filter(isNote).map((shape) => xExtent(shape)[0]));
  return shapes.filter((shape) => shape.role === 'opening' && xExtent(shape)[0] < start);
}

/** Notes and rests, but no barlines and no time signatures. */
const isNote = ({ role, sign }: Shape): boolean => role === 'solid' && sign !== null && sign.group !== 'meterSig';
