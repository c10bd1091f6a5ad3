// The listening room is one file: what src/report/listen/page holds is gathered in one script, and written down as a module
// that the room embeds. Written only when it has changed, so that whatever watches it is left in peace.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'rolldown';

const LISTEN = join(import.meta.dirname, 'src', 'report', 'listen');

/** Gathers the script; also what the tests do first, so that they never try an old one. */
export default async function gatherRoomScript() {
  const { output } = await build({
    input: join(LISTEN, 'page', 'main.ts'),
    output: { format: 'iife', comments: false },
    write: false,
  });
  // No script ends within a script.
  const text = JSON.stringify(output[0].code.replaceAll('</', '<\\/'));
  const module = `/** What the listening room does when it is opened: gathered from \`page/\`, never edited. */\nexport const ROOM_SCRIPT: string = ${text};\n`;
  const file = join(LISTEN, 'room-script.ts');
  if (!existsSync(file) || readFileSync(file, 'utf8') !== module) writeFileSync(file, module);
}

if (process.argv[1] === import.meta.filename) await gatherRoomScript();
