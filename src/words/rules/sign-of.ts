const SIGNS: Readonly<Record<string, string>> = { '-2': '𝄫', '-1': '♭', '0': '♮', '1': '♯', '2': '𝄪' };

/**
 * @param alter semitones
 * @returns the sign that asks for it, e.g. `♯`
 *
 * Source: common practice.
 */
export function signOf(alter: number): string {
  return SIGNS[String(Math.round(alter))] ?? '';
}
