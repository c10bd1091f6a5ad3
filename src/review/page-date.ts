/** Stands in the PDF where no take says when it was recorded. */
const NO_DAY = '2000-01-01';

/**
 * The day a PDF says it was made on. It never comes from the clock, so that the same takes give the same bytes.
 *
 * @param days ISO 8601 days of the takes on the pages, null where a take has none
 * @returns midnight UTC of the latest day
 */
export function pageDate(days: readonly (string | null)[]): Date {
  const latest = days
    .filter((day) => day !== null)
    .sort()
    .at(-1);
  return new Date(`${latest ?? NO_DAY}T00:00:00Z`);
}
