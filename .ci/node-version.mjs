// Says in one line when this Node.js is older than package.json asks for. Written for old ones: no syntax of today.
import { readFileSync } from 'node:fs';

const { engines } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
const numbers = (text) => text.split('.').map(Number);
const [major, minor] = numbers(engines.node.replace('>=', ''));
const [ownMajor, ownMinor] = numbers(process.versions.node);

if (ownMajor < major || (ownMajor === major && ownMinor < minor)) {
  console.error(`Node.js ${process.versions.node} is too old: ${engines.node} is needed (package.json, engines)`);
  process.exit(1);
}
