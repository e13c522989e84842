import { z } from 'zod';
import { alarmStateSchema } from './alarm';
import { alarmModeSchema } from './alarm-modes';

/** What has become of an alarm that was brought back: told again, in the state that its condition has now. */
export const broughtBackSchema = z.object({
  id: z.string(),
  mode: alarmModeSchema.describe('inService, or suppressedByDesign where the mode of its unit has it off now'),
  state: alarmStateSchema.describe(
    'unacknowledged where its condition holds; latchedUnacknowledged where it came and latched',
  ),
  active: z.boolean(),
});
export type BroughtBack = z.infer<typeof broughtBackSchema>;
