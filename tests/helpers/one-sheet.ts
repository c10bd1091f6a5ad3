import { drawSectionSheets } from '../../src/report/index.js';

/** The first of a section's sheets: the only one of a usual section. */
export async function oneSheet(input: Parameters<typeof drawSectionSheets>[0]): Promise<Uint8Array> {
  for await (const sheet of drawSectionSheets(input)) return sheet;
  throw new Error('there is no sheet');
}
