/**
 * @param year four digits
 * @param month two digits
 * @param day two digits
 * @returns the ISO 8601 day, null when the calendar has no such day
 *
 * Source: ISO 8601, Gregorian calendar.
 */
export function realDay(year = '', month = '', day = ''): string | null {
  const iso = `${year}-${month}-${day}`;
  const time = Date.parse(`${iso}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(iso) ? iso : null;
}
