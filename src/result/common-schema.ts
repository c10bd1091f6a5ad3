import { z } from 'zod';

/** Why there is no number. */
export const notMeasured = z.object({ notMeasured: z.string().min(3) });
/** Place of a note in the part as performed, from 0. */
export const noteIndex = z.int().min(0);
/** How often the bar has been reached, from 1. */
export const pass = z.int().min(1);
/** A bar as printed. */
export const bar = z.string();
