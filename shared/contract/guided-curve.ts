import { z } from 'zod';
import { guidedQuantitySchema as quantity } from './guided-quantity';

/** Points of a result against what was set, with the curve through them. Values in SI; intervals for 95.45 %. */
export const guidedCurveSchema = z.object({
  across: z.object({ title: z.string(), quantity }),
  up: z.object({ title: z.string(), quantity }),
  law: z.string().describe('the curve as an equation; empty: none was fitted'),
  said: z.string().describe('how it was fitted, or why it was not'),
  points: z.array(
    z.object({
      title: z.string(),
      across: z.number(),
      acrossUncertainty: z.number(),
      up: z.number(),
      upUncertainty: z.number(),
      above: z.number().nullable().describe('residual: so far above the curve; null: no curve'),
    }),
  ),
  line: z.array(z.object({ across: z.number(), up: z.number(), uncertainty: z.number() })),
  terms: z.array(
    z.object({
      symbol: z.string(),
      title: z.string(),
      quantity: quantity.nullable().describe('null: a plain number'),
      value: z.number(),
      expandedUncertainty: z.number().nullable().describe('null: it was not fitted, or the points do not hold it'),
    }),
  ),
});
export type GuidedCurve = z.infer<typeof guidedCurveSchema>;
