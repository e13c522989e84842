import { z } from 'zod';
import { quantity } from './site-file-quantity';

export const entryLimitsSchema = z
  .strictObject({
    limit: z
      .string()
      .optional()
      .describe('The limit, such as `5 kPa`, `2 K` or `50 %`. Of an entry with a band, its upper end.'),
    low: z
      .string()
      .optional()
      .describe('Lower end of the band, for entries that have one (`CHEM-1` to `CHEM-5`), such as `8`.'),
    deadband: z.string().optional().describe('How far back past the limit the value must come, such as `0.5 kPa`.'),
    onDelay: quantity('duration', '10 s', 'How long the condition must last before the alarm is raised.').optional(),
    offDelay: quantity('duration', '30 s', 'How long it must be gone before the alarm clears.').optional(),
    reAlarmAfter: quantity(
      'duration',
      '4 h',
      'How long after it was acknowledged the alarm is told anew, while its condition lasts; at least 1 min. Left out: not at all.',
    ).optional(),
    enabled: z.boolean().optional().describe('`false` takes the entry out for this site, hall or unit.'),
    action: z.string().min(1).optional().describe('First action by site procedure, in place of the catalogue text.'),
  })
  .describe('What this site changes of one catalogue entry; keys left out keep the default.');

export type EntryInFile = z.infer<typeof entryLimitsSchema>;

export const limitsSchema = z
  .record(z.string(), entryLimitsSchema.nullable())
  .describe(
    'Limits by catalogue entry, such as `MARGIN-1`. May stand at the site, a hall and a unit: the nearest wins, key by key. `~` goes back to the catalogue.',
  );
export type LimitsInFile = z.infer<typeof limitsSchema>;
