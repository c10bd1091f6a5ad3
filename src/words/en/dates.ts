import { datesWith } from '../rules/dates.js';

/** How days are written. Source: Unicode CLDR, British English. */
export const DATES = datesWith({
  months: [
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
  ],
  date: (day, month, year) => `${day} ${month} ${year}`,
  day: (day, month) => `${day} ${month}`,
  shortDay: (day, month) => `${day} ${month.slice(0, 3)}`,
});
