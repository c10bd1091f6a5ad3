export type { Take } from './types.js';
