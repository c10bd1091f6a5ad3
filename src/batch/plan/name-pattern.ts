import { InputError } from '../../base/index.js';
import { spaced } from './player-and-date.js';
import { type NamePiece, readByPieces } from './read-by-pieces.js';
import { realDay } from './real-day.js';

const FIELDS = ['player', 'date', 'instrument', 'part'] as const;
const DATE = /^(\d{4})[-_.]?(\d{2})[-_.]?(\d{2})$/;
/** Longer names would take long to try. */
const LONGEST = 255;

/** What a file name says by its pattern. */
export type NameFacts = { readonly [field in (typeof FIELDS)[number]]: string | null };

/** Reads one file name; null when it is not made as the pattern says. */
export type NameReader = (stem: string) => NameFacts | null;

/**
 * Understands a pattern such as `{date}_{player}`. What stands between the fields stands so in the file names; `{skip}`
 * stands for anything. Days are written `2026-03-02` or `20260302`.
 *
 * @param pattern the pattern, for names without their ending
 * @returns what reads a name by it
 * @throws InputError `bad-option` when it cannot be understood
 */
export function namePattern(pattern: string): NameReader {
  const pieces = pattern
    .normalize('NFC')
    .split(/(\{[^{}]*\})/)
    .filter((piece) => piece !== '');
  const fields = pieces.filter(isField).map((piece) => piece.slice(1, -1));
  const wrong = faultIn(pattern, pieces, fields);
  if (wrong !== null) throw wrong;
  const shape = pieces.map(pieceOf);
  return (stem) => {
    const found = stem.length > LONGEST ? null : readByPieces(shape, stem.normalize('NFC').trim());
    if (found === null) return null;
    const text = (field: string): string | null => found.get(field) ?? null;
    const day = DATE.exec(text('date') ?? '');
    const date = day === null ? null : realDay(day[1], day[2], day[3]);
    if (fields.includes('date') && date === null) return null;
    const [player, instrument] = [text('player'), text('instrument')];
    return {
      player: player === null ? null : spaced(player),
      date,
      instrument: instrument === null ? null : spaced(instrument),
      part: text('part'),
    };
  };
}

const isField = (piece: string): boolean => piece.startsWith('{') && piece.endsWith('}');

function faultIn(pattern: string, pieces: readonly string[], fields: readonly string[]): InputError | null {
  const known = [...FIELDS, 'skip'];
  if (pattern.length > LONGEST)
    return new InputError('names-stray-sign', { pattern: pattern.slice(0, LONGEST), fields: known });
  const unknown = fields.find((field) => !known.includes(field));
  if (unknown !== undefined) return new InputError('names-no-such-field', { pattern, field: unknown, fields: known });
  if (pieces.some((piece) => !isField(piece) && /[{}/\\]/.test(piece))) {
    return new InputError('names-stray-sign', { pattern, fields: known });
  }
  if (new Set(fields).size < fields.length) return new InputError('names-field-twice', { pattern });
  if (!fields.some((field) => field !== 'skip')) return new InputError('names-no-field', { pattern, fields: known });
  const touching = pieces.some((piece, i) => i > 0 && isField(piece) && isField(pieces[i - 1] ?? ''));
  return touching ? new InputError('names-fields-touch', { pattern }) : null;
}

const pieceOf = (piece: string): NamePiece => (isField(piece) ? { field: piece.slice(1, -1) } : { text: [...piece] });
