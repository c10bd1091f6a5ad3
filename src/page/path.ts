/**
 * @param value points
 * @returns the number for path data, to 1/100 point
 *
 * Source: SVG 2, path data.
 */
export function numberInPath(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

/**
 * @param points x and y in points; a NaN in y breaks the line
 * @returns path data of the line through the points
 *
 * Source: SVG 2, path data.
 */
export function lineThrough(points: readonly (readonly [number, number])[]): string {
  let drawing = false;
  let d = '';
  for (const [x, y] of points) {
    if (Number.isNaN(y)) {
      drawing = false;
      continue;
    }
    d += `${drawing ? 'L' : 'M'}${numberInPath(x)} ${numberInPath(y)}`;
    drawing = true;
  }
  return d;
}

/**
 * @param points x and y in points; a NaN in y breaks the area
 * @param base y of the area's straight edge
 * @returns path data of the areas between the points and the straight edge
 *
 * Source: SVG 2, path data.
 */
export function areaUnder(points: readonly (readonly [number, number])[], base: number): string {
  const parts: (readonly [number, number])[][] = [[]];
  for (const point of points) {
    if (Number.isNaN(point[1])) parts.push([]);
    else parts.at(-1)?.push(point);
  }
  return parts
    .filter((part) => part.length > 1)
    .map((part) => {
      const [first, last] = [part[0] as readonly [number, number], part.at(-1) as readonly [number, number]];
      const bottom = numberInPath(base);
      return `${lineThrough(part)}L${numberInPath(last[0])} ${bottom}L${numberInPath(first[0])} ${bottom}Z`;
    })
    .join('');
}
