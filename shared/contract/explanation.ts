import { z } from 'zod';
import { readingSchema } from './reading';

/** What stands behind one value of a unit or hall: its equation, what it was worked out from, and how sure it is. */
export const explanationSchema = z.object({
  unit: z.string().describe('id of the unit; of the hall where a hall was asked'),
  reading: readingSchema,
  formula: z.string().nullable().describe('null for a measured point'),
  source: z.string().nullable().describe('where the equation stands; null for a measured point'),
  inputs: z
    .array(
      readingSchema.extend({
        ofUnit: z
          .string()
          .optional()
          .describe('the unit that it is of, where a sum over the units of a hall was asked'),
      }),
    )
    .describe('points of the unit and its hall that it is worked out from'),
  siteFigures: z
    .array(z.object({ name: z.string(), value: z.number(), unitOfMeasure: z.string() }))
    .describe('figures of the site file that it is worked out from, by their keys'),
  budget: z
    .array(
      z.object({
        from: z
          .string()
          .describe('a point, a figure of the site file, or a model; two points for what they have in common'),
        contribution: z
          .number()
          .nullable()
          .describe(
            'standard uncertainty that it brings, in the unit of measure of the value; below 0 where a correlation takes it away (root of 2 r c1 c2 u1 u2); null: no accuracy is stated',
          ),
        share: z.number().nullable().describe('of the variance, together 1; below 0 where a correlation takes it away'),
        degreesOfFreedom: z
          .number()
          .nullable()
          .optional()
          .describe('of the observations that it rests on; null or left out: it rests on no count of them'),
      }),
    )
    .describe('parts whose squares, each with its sign, make the square of the standard uncertainty'),
  standardUncertainty: z.number().nullable().describe('null where an input states no accuracy'),
  coverageFactor: z
    .number()
    .nullable()
    .describe('k for 95.45 %, by Student’s t of the degrees of freedom (JCGM 100:2008, G.4.1 and table G.2)'),
  degreesOfFreedom: z
    .number()
    .nullable()
    .describe('effective (Welch–Satterthwaite), rounded down; null: no part rests on a count of observations'),
});
export type Explanation = z.infer<typeof explanationSchema>;
