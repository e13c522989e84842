import { z } from 'zod';
import { maximumTrendPoints, type View } from '@ebbline/shared/contract/live-feed';
import { unreachable } from '@ebbline/shared/errors/unreachable';

const id = z.string().min(1).max(200);

/** What a client may ask to be shown; whatever else it sends is refused. */
export const viewSchema: z.ZodType<View> = z.discriminatedUnion('screen', [
  z.strictObject({ screen: z.literal('hall'), hall: id }),
  z.strictObject({ screen: z.literal('loop'), unit: id }),
  z.strictObject({ screen: z.literal('alarms') }),
  z.strictObject({
    screen: z.literal('trends'),
    points: z.array(z.strictObject({ unit: id, point: id })).max(maximumTrendPoints),
  }),
]);

/** Two clients with the same key are shown the same. */
export function viewKey(view: View): string {
  switch (view.screen) {
    case 'hall':
      return `hall ${view.hall}`;
    case 'loop':
      return `loop ${view.unit}`;
    case 'alarms':
      return 'alarms';
    case 'trends':
      return `trends ${JSON.stringify(view.points.map(({ unit, point }) => [unit, point]))}`;
    default:
      return unreachable(view);
  }
}
