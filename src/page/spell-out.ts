const EAST_ASIAN = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}ー々〆]/u;

/**
 * Replaces letters that cannot be drawn by what they are, so that no name turns into boxes.
 *
 * @param text any text
 * @param canDraw whether a letter can be drawn
 * @param name what stands for letters of one kind that cannot be drawn, e.g. `[Tamil letters]`
 * @param tell called with each stretch of letters that is named so
 * @returns the text with each stretch of missing letters of one script named in brackets, with the numbers of its letters, so
 * that two names are never alike
 *
 * Source: Unicode Standard Annex 24 (script property); Unicode Standard, appendix A (numbers of letters).
 */
export function spellOut(
  text: string,
  canDraw: (letter: string) => boolean,
  name: (letters: string) => string,
  tell: (letters: string) => void,
): string {
  let out = '';
  let missing = '';
  let space = '';
  const close = (): void => {
    if (missing !== '') {
      out += numbered(name(missing), missing);
      tell(missing);
    }
    out += space;
    [missing, space] = ['', ''];
  };
  for (const letter of text) {
    if (letter === ' ') {
      if (missing === '') out += letter;
      else space += letter;
    } else if (canDraw(letter)) {
      close();
      out += letter;
    } else {
      if (missing !== '' && !isSameKind(missing, letter, name)) close();
      missing += letter;
      space = '';
    }
  }
  close();
  return out;
}

/** Longer than any name; of a longer title the beginning tells enough. */
const MOST_NUMBERS = 40;

function numbered(named: string, letters: string): string {
  if (!/\p{L}/u.test(letters)) return named;
  const numbers = [...letters.replaceAll(' ', '')].map((letter) =>
    (letter.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0'),
  );
  return `${named.slice(0, -1)} ${numbers.slice(0, MOST_NUMBERS).join('-')}]`;
}

/** Marks and joiners belong to the letters before them. */
function isSameKind(missing: string, letter: string, name: (letters: string) => string): boolean {
  if (/[\p{M}\p{Cf}]/u.test(letter)) return true;
  if (EAST_ASIAN.test(letter) && EAST_ASIAN.test(missing)) return true;
  return name(missing) === name(letter);
}
