/**
 * @param value a number
 * @param decimals how many are written, as many as it has when it is left out
 * @returns the number as German writes it
 */
export function withComma(value: number, decimals?: number): string {
  return (decimals === undefined ? String(value) : value.toFixed(decimals)).replace('.', ',');
}
