/** Letters of one kind, and the packages whose faces may hold them, the likeliest first. */
interface Family {
  readonly letters: RegExp;
  readonly packages: readonly string[];
}

const HAN = /[\p{Script=Han}々〆ー・、。「」『』（）]/u;
/** Marks that several scripts share count as well. */
const of = (script: string): RegExp => new RegExp(`\\p{Script_Extensions=${script}}`, 'u');

const CHINESE = ['noto-serif-sc', 'noto-serif-tc', 'noto-serif-jp', 'noto-serif-kr'];
const JAPANESE = ['noto-serif-jp', 'noto-serif-sc', 'noto-serif-tc'];
const KOREAN = ['noto-serif-kr', 'noto-serif-tc', 'noto-serif-sc', 'noto-serif-jp'];

const KANA = /[\p{Script=Hiragana}\p{Script=Katakana}]/u;
const HANGUL = of('Hangul');

const FAMILIES: readonly Family[] = [
  { letters: of('Arabic'), packages: ['noto-naskh-arabic'] },
  { letters: of('Hebrew'), packages: ['noto-serif-hebrew'] },
  { letters: of('Devanagari'), packages: ['noto-serif-devanagari'] },
  { letters: of('Thai'), packages: ['noto-serif-thai'] },
  { letters: of('Armenian'), packages: ['noto-serif-armenian'] },
  { letters: of('Georgian'), packages: ['noto-serif-georgian'] },
  { letters: of('Bengali'), packages: ['noto-serif-bengali'] },
  { letters: of('Tamil'), packages: ['noto-serif-tamil'] },
  { letters: of('Telugu'), packages: ['noto-serif-telugu'] },
  { letters: of('Gujarati'), packages: ['noto-serif-gujarati'] },
  { letters: of('Gurmukhi'), packages: ['noto-serif-gurmukhi'] },
  { letters: of('Khmer'), packages: ['noto-serif-khmer'] },
  { letters: of('Ethiopic'), packages: ['noto-serif-ethiopic'] },
];

/**
 * Chinese letters look a little different in Japan and Korea; the other letters of a name tell where it is from.
 *
 * @param letter one character
 * @param text in which it stands
 * @returns names of packages, the likeliest first; none when no package is known for its script
 *
 * Source: Unicode Standard, 18.1 (Han unification); Unicode Standard Annex 24 (script property).
 */
export function packagesFor(letter: string, text: string): readonly string[] {
  if (KANA.test(letter)) return JAPANESE;
  if (HANGUL.test(letter)) return KOREAN;
  if (HAN.test(letter)) return KANA.test(text) ? JAPANESE : HANGUL.test(text) ? KOREAN : CHINESE;
  return FAMILIES.find(({ letters }) => letters.test(letter))?.packages ?? [];
}
