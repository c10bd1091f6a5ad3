import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core';
import type { TestContext } from 'vitest';
import { needs, printedBy } from './programs.js';

/** Quiet: nothing is fetched that no page asks for. */
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--autoplay-policy=document-user-activation-required',
];

let running: Browser | undefined;

/** Opens the browser of the system with an empty profile; goes on only where one is installed. */
export async function browserContext(
  context: TestContext,
  options: BrowserContextOptions = {},
): Promise<BrowserContext> {
  needs(context, 'chromium');
  running ??= await chromium.launch({ executablePath: whereIs(), args: FLAGS });
  return running.newContext({ viewport: { width: 1000, height: 800 }, ...options });
}

/** Ends the browser, when one was opened. */
export async function closeBrowser(): Promise<void> {
  await running?.close();
  running = undefined;
}

/** The program on the path: the driver asks for its place. */
function whereIs(): string {
  return printedBy('which', ['chromium']).trim();
}
