import { z } from 'zod';
import { bar, pass } from './common-schema.js';

/** How a take ends. */
export const endingSchema = z.enum(['whole', 'broken-off', 'cut-off']).meta({
  description: 'broken-off: the player did not come to the end; cut-off: the recording ends before the playing does',
});

/** How much of the part a take plays. */
export const playedSchema = z
  .object({
    played: z.int().min(0),
    of: z.int().min(0),
    stretches: z.array(z.object({ bar, toBar: bar, pass })).meta({
      description: 'what was played, by printed bars; a new one where bars are left out or the part goes back',
    }),
    restarts: z.int().min(0).meta({ description: 'how often the player stopped and began again' }),
    ending: endingSchema,
  })
  .meta({ description: 'bars played, of those of the part as performed; only in takes that were reviewed' });
