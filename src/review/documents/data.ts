import { toJson } from '../../result/index.js';
import type { TakeDocument } from './types.js';

/** The result as data. It is always written: the section and later weeks are told from it. */
export const DATA = {
  folder: 'takes',
  ending: 'json',
  wanted: () => true,
  hears: false,
  madeFor: () => '',
  make: async ({ result }) => new TextEncoder().encode(toJson(result)),
} as const satisfies TakeDocument;
