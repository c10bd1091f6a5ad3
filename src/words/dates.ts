const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/**
 * @param day ISO 8601 calendar day
 * @returns "2 March 2026"; a text that is no such day is returned as it came
 *
 * Source: ISO 8601-1 for the form read.
 */
export function dateInWords(day: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(day);
  const month = match === null ? undefined : MONTHS[Number(match[2]) - 1];
  return match === null || month === undefined ? day : `${Number(match[3])} ${month} ${match[1]}`;
}
