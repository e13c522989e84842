import { z } from 'zod';

export const matchedPairsSchema = z
  .array(
    z.strictObject({
      points: z
        .array(z.string().min(1))
        .length(2)
        .describe(
          'The two thermometers, such as `[supply.temperature, return.temperature]`; `branch.*.return.temperature` stands for every branch.',
        ),
      correlation: z.number().describe('Of their errors, 0 to below 1: about 0.8 from one bath.'),
      by: z.string().min(1).optional().describe('Who calibrated them: a role or a name. Needed.'),
      on: z.string().optional().describe('On which day, such as `2026-03-14`. Needed.'),
    }),
  )
  .describe(
    'Thermometers that were calibrated together, by record: what they are off in common does not count where they are taken from each other. Without a record they count as independent.',
  );
