import { z } from 'zod';
import { QUARTERS_OF_BEAT, type TempoBeat } from '../../score/index.js';

/** What a metronome counts in the metre of a part: dotted quarters in 6/8, 9/8 and 12/8. */
export const tempoBeatSchema = z.enum(Object.keys(QUARTERS_OF_BEAT) as [TempoBeat, ...TempoBeat[]]);
