/** One note or rest of the compact notation. */
export interface NoteWord {
  /** null for a rest */
  readonly pitch: { readonly step: string; readonly alter: number; readonly octave: number } | null;
  readonly value: 'w' | 'h' | 'q' | 'e';
  readonly dotted: boolean;
  /** place in a triplet: 0, 1, 2, or null outside */
  readonly triplet: number | null;
  /** the mark characters after the value */
  readonly marks: string;
}

/** What stands between the notes. */
export interface DirectionWord {
  readonly direction: string;
}

const NOTE = /^([A-Gr])([#b]?)(\d?):([whqe])(d?)([(~.>,^)]*)$/;

function noteWord(word: string, triplet: number | null): NoteWord {
  const match = NOTE.exec(word);
  if (!match) throw new Error(`not a word of the étude's notation: ${word}`);
  const [, step = '', sign = '', octave = '', value = '', dot = '', marks = ''] = match;
  const alter = sign === '#' ? 1 : sign === 'b' ? -1 : 0;
  const pitch = step === 'r' ? null : { step, alter, octave: Number(octave) };
  return { pitch, value: value as NoteWord['value'], dotted: dot === 'd', triplet, marks };
}

/**
 * @param bar one line of the étude
 * @returns its notes, rests and directions in order
 * @throws Error when a word is none of the notation
 *
 * Source: definition, where the étude is written down.
 */
export function etudeWords(bar: string): (NoteWord | DirectionWord)[] {
  const words: (NoteWord | DirectionWord)[] = [];
  let triplet: number | null = null;
  for (const word of bar.split(' ')) {
    if (word === '3[') triplet = 0;
    else if (word === ']') triplet = null;
    else if (word.startsWith('!')) words.push({ direction: word.slice(1) });
    else {
      words.push(noteWord(word, triplet));
      if (triplet !== null) triplet++;
    }
  }
  return words;
}
