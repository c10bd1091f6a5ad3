const DAY_MS = 86_400_000;
/** 1 January 1970 was a Thursday; the Monday before it. */
const FIRST_MONDAY_DAYS = -3;

/**
 * @param text any text
 * @returns true for a calendar day that exists, written as ISO 8601 has it
 *
 * Source: ISO 8601-1.
 */
export function isDay(text: string): boolean {
  const time = Date.parse(`${text}T00:00:00Z`);
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

/**
 * @param day ISO 8601 day
 * @returns days since 1 January 1970
 *
 * Source: ECMA-262, time values.
 */
export function dayNumber(day: string): number {
  return Math.round(Date.parse(`${day}T00:00:00Z`) / DAY_MS);
}

/**
 * @param day ISO 8601 day
 * @returns the Monday of its week
 *
 * Source: ISO 8601-1, weeks begin on Monday.
 */
export function weekOf(day: string): string {
  const days = dayNumber(day);
  const monday = days - ((((days - FIRST_MONDAY_DAYS) % 7) + 7) % 7);
  return new Date(monday * DAY_MS).toISOString().slice(0, 10);
}
