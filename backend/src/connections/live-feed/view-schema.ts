import { z } from 'zod';
import type { View } from '@ebbline/shared/contract/live-feed';

const id = z.string().min(1).max(200);

/** What a client may ask to be shown; whatever else it sends is refused. */
export const viewSchema: z.ZodType<View> = z.discriminatedUnion('screen', [
  z.strictObject({ screen: z.literal('hall'), hall: id }),
  z.strictObject({ screen: z.literal('loop'), unit: id }),
  z.strictObject({ screen: z.literal('alarms') }),
]);

/** Two clients with the same key are shown the same. */
export const viewKey = (view: View): string =>
  view.screen === 'hall' ? `hall ${view.hall}` : view.screen === 'loop' ? `loop ${view.unit}` : 'alarms';
