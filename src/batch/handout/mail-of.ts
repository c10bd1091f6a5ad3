/** What schools head a column of mail addresses with. Source: common practice, English and German. */
const MAIL = /^(?:e-?)?mail(?:[ _-]?(?:address|adresse))?$/i;

/**
 * @param columns what a roster says of a take, by head
 * @returns the mail address, empty without one
 */
export function mailOf(columns: Readonly<Record<string, string>>): string {
  return Object.entries(columns).find(([head, cell]) => MAIL.test(head) && cell !== '')?.[1] ?? '';
}
