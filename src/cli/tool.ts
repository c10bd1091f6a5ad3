import { createRequire } from 'node:module';

const { name, version }: { name: string; version: string } = createRequire(import.meta.url)('../../package.json');

/** Name and version of the program, as package.json states them. */
export const TOOL = { name, version } as const;
