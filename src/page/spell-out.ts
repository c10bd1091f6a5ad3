const EAST_ASIAN = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}ー々〆]/u;

/**
 * Replaces letters that cannot be drawn by what they are, so that no name turns into boxes.
 *
 * @param text any text
 * @param canDraw whether a letter can be drawn
 * @param name what stands for letters of one kind that cannot be drawn
 * @returns the text with each stretch of missing letters of one script named in brackets
 *
 * Source: Unicode Standard Annex 24 (script property).
 */
export function spellOut(
  text: string,
  canDraw: (letter: string) => boolean,
  name: (letters: string) => string,
): string {
  let out = '';
  let missing = '';
  let space = '';
  const close = (): void => {
    if (missing !== '') out += name(missing);
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

/** Marks and joiners belong to the letters before them. */
function isSameKind(missing: string, letter: string, name: (letters: string) => string): boolean {
  if (/[\p{M}\p{Cf}]/u.test(letter)) return true;
  if (EAST_ASIAN.test(letter) && EAST_ASIAN.test(missing)) return true;
  return name(missing) === name(letter);
}
