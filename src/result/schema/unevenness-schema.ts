import { z } from 'zod';
import { correlation, fraction, seconds } from '../quantities.js';
import { notMeasured } from './common-schema.js';

const cause = z.enum(['leap', 'articulation', 'first', 'last', 'register']);
const count = z.int().min(0);
const interval = (description: string) => z.array(fraction()).length(2).meta({ description });
const difference = {
  differenceShare: fraction('how much longer these notes are than the others of their groups, of what is written'),
  intervalShare: interval('95 % interval'),
};
const joint = {
  ...difference,
  jointIntervalShare: interval('so wide that 95 of 100 takes have all their causes within theirs'),
};

/** What the unevenness of tuplets and beats goes with. */
export const unevennessSchema = z
  .union([
    notMeasured,
    z.object({
      groups: count,
      causes: z.array(
        z.object({
          cause,
          count: count.meta({ description: 'notes with it' }),
          others: count.meta({ description: 'notes without it, in groups that have both' }),
          noteSeconds: seconds('median length of the notes with it, as written'),
          ...joint,
          beside: z
            .array(
              z.object({
                cause,
                together: correlation('how much the two come at the same notes'),
                difference: z.object(joint).optional().meta({ description: 'absent where they cannot be told apart' }),
              }),
            )
            .meta({ description: 'what is left of it when another cause is allowed for' }),
        }),
      ),
    }),
  ])
  .meta({
    description:
      'what the lengths of notes in tuplets and beats go with: leap: the line leaps after the note; articulation: the way of playing changes at it; first, last: of its group; register: the line goes into another third of the part’s range',
  });

/** What the unevenness of a group goes with, as it is told. */
export const causeSchema = z
  .object({
    causes: z.array(cause).meta({ description: 'several where it cannot be told which of them it is' }),
    ...difference,
    count: count.meta({ description: 'of so many notes' }),
  })
  .meta({ description: 'of an uneven group: what this take’s unevenness goes with, where this group shows it' });
