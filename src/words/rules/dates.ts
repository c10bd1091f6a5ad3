import type { Dates, DateWords } from '../shapes/dates.js';

/**
 * @param words how days are written in one language
 * @returns what writes them
 *
 * Source: ISO 8601-1 for the form read.
 */
export function datesWith({ months, date, day, shortDay }: DateWords): Dates {
  const written = (iso: string, write: (day: number, month: string, number: number, year: string) => string) => {
    const [, year, number, dayOfMonth] = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso) ?? [];
    const month = months[Number(number) - 1];
    return year === undefined || month === undefined ? iso : write(Number(dayOfMonth), month, Number(number), year);
  };
  return {
    date: (iso) => written(iso, (dayOfMonth, month, _, year) => date(dayOfMonth, month, year)),
    day: (iso) => written(iso, day),
    shortDay: (iso) => written(iso, shortDay),
  };
}
