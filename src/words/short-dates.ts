import { dateInWords } from './dates.js';

/**
 * @param day ISO 8601 day
 * @returns day and month, "2 March"; the year stands elsewhere on the page
 *
 * Source: ISO 8601-1 for the form read.
 */
export function dayInWords(day: string): string {
  return dateInWords(day).replace(/ \d{4}$/, '');
}

/**
 * @param day ISO 8601 day
 * @returns day and month for narrow places, "2 Mar"
 *
 * Source: ISO 8601-1 for the form read.
 */
export function shortDay(day: string): string {
  return dayInWords(day).replace(/^(\d+ \p{L}{3})\p{L}*$/u, '$1');
}
