/** Scripts that pages can name, by their English names. */
const SCRIPTS: Readonly<Record<string, string>> = {
  Japanese: 'japanisch',
  Korean: 'koreanisch',
  Chinese: 'chinesisch',
  Arabic: 'arabisch',
  Hebrew: 'hebräisch',
  Thai: 'thailändisch',
  Hindi: 'Hindi',
  Bengali: 'bengalisch',
  Tamil: 'tamilisch',
  Georgian: 'georgisch',
  Armenian: 'armenisch',
  Amharic: 'amharisch',
};

/**
 * @param script English name of a script; null for letters of another script, 'sign' for a sign
 * @returns what stands for letters of it on a German page
 *
 * Source: definition.
 */
export function germanMissingLetters(script: string | null): string {
  if (script === 'sign') return '[Zeichen]';
  const name = script === null ? undefined : SCRIPTS[script];
  return name === undefined ? '[andere Schrift]' : `[${name}]`;
}
