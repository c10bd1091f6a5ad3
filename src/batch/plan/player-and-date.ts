import { realDay } from './real-day.js';

/** Who played and when, as far as a file's name says so. */
export interface PlayerAndDate {
  readonly player: string | null;
  /** ISO 8601 day */
  readonly date: string | null;
}

const DAY_FIRST = /^(\d{4})([-_.]?)(\d{2})\2(\d{2})(?:[ _.-]+(.*))?$/u;
const DAY_LAST = /^(.*?)[ _.-]+(\d{4})([-_.]?)(\d{2})\3(\d{2})$/u;
/** Letters: no disk has longer names, and longer ones would take long to try. Source: NAME_MAX of usual systems. */
const LONGEST = 255;
const TAKE_NUMBER = /(?:(?:^|[ _-]+)take)?[ _-]*(?:#\s*\d{1,3}|\(\d{1,3}\)|(?<=[ _-]|take)\d{1,3})$/iu;
const PERSON = /^\p{L}[\p{L}\p{M}'’.]*(?:[ _-]+\p{L}[\p{L}\p{M}'’.]*)*$/u;

/**
 * Reads player and day from a name such as `2026-03-02_Ada-Lindqvist` or `Ada Lindqvist 2026-03-02`. The day may also be
 * written `20260302`; a take number at the end is passed over. Hyphens join the words of a name where spaces or
 * underscores already part them (`Ada_Berg-Lind`), and part them otherwise (`Ada-Lindqvist`). Without a day nothing is
 * taken for a player, because most file names are not the names of people.
 *
 * @param stem a file's name without its ending
 * @returns player and day, null where the name does not say it
 *
 * ISO 8601 for the day.
 */
export function playerAndDate(stem: string): PlayerAndDate {
  if (stem.length > LONGEST) return NOTHING;
  const text = stem.normalize('NFC').trim();
  const first = DAY_FIRST.exec(text);
  if (first !== null) {
    const date = realDay(first[1], first[3], first[4]);
    return date === null ? NOTHING : { player: person(first[5] ?? ''), date };
  }
  const last = DAY_LAST.exec(withoutTakeNumber(text)) ?? DAY_LAST.exec(text);
  const date = last === null ? null : realDay(last[2], last[4], last[5]);
  return date === null ? NOTHING : { player: person(last?.[1] ?? ''), date };
}

const NOTHING: PlayerAndDate = { player: null, date: null };

function withoutTakeNumber(text: string): string {
  return text.replace(TAKE_NUMBER, '');
}

function person(text: string): string | null {
  const name = withoutTakeNumber(text.trim()).trim();
  if (!PERSON.test(name)) return null;
  return spaced(name);
}

/**
 * @param name words joined by spaces, underscores or hyphens
 * @returns the words with spaces between; hyphens stay where something else parts the words already
 */
export function spaced(name: string): string {
  return (/[ _]/.test(name) ? name.replaceAll(/[ _]+/g, ' ') : name.replaceAll('-', ' ')).trim();
}
