import { numbersWith } from '../rules/numbers.js';

/** How numbers are written. */
export const NUMBERS = numbersWith('.');
