import { type AffineMap, combined, UNMOVED } from '../page/index.js';

/**
 * @param text SVG `transform` attribute: translate, scale, rotate, matrix
 * @returns the affine map
 *
 * Source: SVG 2, the `transform` property.
 */
export function readTransform(text: string | undefined): AffineMap {
  let whole = UNMOVED;
  for (const [, name, list] of (text ?? '').matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const [p = 0, q, r = 0, s = 0, t = 0, u = 0] = (list ?? '')
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    whole = combined(whole, one(name ?? '', [p, q, r, s, t, u]));
  }
  return whole;
}

function one(
  name: string,
  [p, q, r, s, t, u]: readonly [number, number | undefined, number, number, number, number],
): AffineMap {
  if (name === 'translate') return [1, 0, 0, 1, p, q ?? 0];
  if (name === 'scale') return [p, 0, 0, q ?? p, 0, 0];
  if (name === 'matrix') return [p, q ?? 0, r, s, t, u];
  if (name !== 'rotate') return UNMOVED;
  const [cos, sin] = [Math.cos((p * Math.PI) / 180), Math.sin((p * Math.PI) / 180)];
  const turn: AffineMap = [cos, sin, -sin, cos, 0, 0];
  return combined(combined([1, 0, 0, 1, q ?? 0, r], turn), [1, 0, 0, 1, -(q ?? 0), -r]);
}
