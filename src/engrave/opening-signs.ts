import type { LineBar } from './engraved-line.js';
import type { Piece } from './svg-pieces.js';
import { xExtent } from './x-extent.js';

/**
 * @param bar of an engraved line
 * @returns clef and key that stand before everything else in it
 *
 * Source: common practice.
 */
export function openingSigns({ pieces }: LineBar): readonly Piece[] {
  const start = Math.min(...pieces.filter(isNote).map((piece) => xExtent(piece)[0]));
  return pieces.filter((piece) => piece.role === 'opening' && xExtent(piece)[0] < start);
}

/** Notes and rests, but no barlines and no time signatures. */
const isNote = ({ role, sign }: Piece): boolean => role === 'solid' && sign !== null && sign.group !== 'meterSig';
