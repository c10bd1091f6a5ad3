/**
 * @param template of the words, with `{name}` where something is to stand
 * @param values by name
 * @returns the words with the values in their places
 */
export function fill(template: string, values: Readonly<Record<string, string | number>>): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? ''));
}
