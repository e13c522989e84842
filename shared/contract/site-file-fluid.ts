import { z } from 'zod';
import { quantity } from './site-file-quantity';

export const glycolSources = ['ashrae', 'melinder2010'] as const;

export const fluidSchema = z
  .strictObject({
    kind: z.enum(['water', 'propyleneGlycol']).describe('What it is; propyleneGlycol is a mixture with water.'),
    source: z
      .enum(glycolSources)
      .optional()
      .describe(
        'Whose properties of propylene glycol hold: ashrae = tables of inhibited glycol (ASHRAE Fundamentals 2001), −35 … 100 °C; melinder2010 = Melinder (IIR 2010), −45 … 40 °C. They differ by about 1 % in heat. Needed for propyleneGlycol.',
      ),
    massFraction: quantity('ratio', '25 %', 'Share of glycol by mass. 25 % by mass is 24.4 % by volume.').optional(),
    volumeFraction: quantity(
      'ratio',
      '25 %',
      'Share of glycol by volume. State one of the two shares, not both.',
    ).optional(),
  })
  .describe('The liquid of one side.');
export type FluidInFile = z.infer<typeof fluidSchema>;
