import { datesWith } from '../rules/dates.js';

/** How days are written. Source: DIN 5008; Unicode CLDR, German, for day and month in figures. */
export const DATES = datesWith({
  months: [
    'Januar',
    'Februar',
    'März',
    'April',
    'Mai',
    'Juni',
    'Juli',
    'August',
    'September',
    'Oktober',
    'November',
    'Dezember',
  ],
  date: (day, month, year) => `${day}. ${month} ${year}`,
  day: (day, month) => `${day}. ${month}`,
  shortDay: (day, _month, number) => `${day}.${number}.`,
});
