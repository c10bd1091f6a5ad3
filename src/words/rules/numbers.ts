import type { Numbers } from '../shapes/numbers.js';

/**
 * @param decimalMark what stands between whole and fraction
 * @returns how numbers are written with it
 *
 * Source: ISO 80000-1 for the decimal mark and the minus sign.
 */
export function numbersWith(decimalMark: string): Numbers {
  const marked = (text: string): string => text.replace('.', decimalMark);
  return {
    number: (value, decimals) => {
      const text = String(Number(Math.abs(value).toFixed(decimals)));
      return marked(value < 0 && text !== '0' ? `−${text}` : text);
    },
    whole: (value) => String(Math.round(value)),
    tenth: (value) => marked(String(toTenth(value))),
    exact: (value) => marked(String(value)),
    fixed: (value, decimals) => marked(value.toFixed(decimals)),
    hundredths: (milliseconds) => marked((Math.max(10, Math.round(milliseconds / 10) * 10) / 1000).toFixed(2)),
    down: (db) => marked(String(db < 10 ? Math.floor(db * 10 + 1e-6) / 10 : Math.floor(db))),
  };
}

/**
 * @param value any finite number
 * @returns the same to a tenth
 */
export function toTenth(value: number): number {
  return Math.round(10 * value) / 10;
}
