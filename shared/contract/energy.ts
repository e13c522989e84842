import { z } from 'zod';
import { isoTimeSchema } from './reading';

/** Powers that are added up to energies, and the point of a unit that each comes from. */
export const energyPoints = {
  heatRemoved: 'heatRemoved',
  facilityHeat: 'facilityHeat',
  chipEnergy: 'chipPower',
  unitEnergy: 'unit.power',
} as const;
export type EnergyQuantity = keyof typeof energyPoints;
export const energyQuantities = ['heatRemoved', 'facilityHeat', 'chipEnergy', 'unitEnergy'] as const;

export const energySteps = ['hour', 'day', 'month'] as const;
export const energyStepSchema = z.enum(energySteps);
export type EnergyStep = (typeof energySteps)[number];

/** One energy over one period. Only what was measured is added up; nothing is put into a gap. */
export const energyTotalSchema = z.object({
  energy: z.number().nullable().describe('J, over the measured seconds only; null where none was measured'),
  expandedUncertainty: z
    .number()
    .nullable()
    .describe(
      'J, k = 2, of the measured part. What the sensors are off stays the same from second to second, so it is not divided by √n (JCGM 100:2008, 5.2.2); null where an input states no accuracy',
    ),
  measuredSeconds: z.number().describe('unit-seconds with a value; of a hall, summed over its units'),
  wantedSeconds: z
    .number()
    .describe('seconds of the period that have passed, times the units that have the point; 0: no unit has it'),
  share: z.number().nullable().describe('measured ÷ wanted, 0 to 1; null where nothing is wanted'),
});
export type EnergyTotal = z.infer<typeof energyTotalSchema>;

export const energyPeriodSchema = z.object({
  start: isoTimeSchema,
  end: isoTimeSchema.describe('exclusive; a day of a change of clocks has 23 or 25 hours'),
  heatRemoved: energyTotalSchema,
  facilityHeat: energyTotalSchema,
  chipEnergy: energyTotalSchema,
  unitEnergy: energyTotalSchema,
  heatPerUnitEnergy: z
    .number()
    .nullable()
    .describe('heat removed ÷ electrical energy of the unit, over what of the period has both; null where nothing has'),
});
export type EnergyPeriod = z.infer<typeof energyPeriodSchema>;

/** `GET /api/energy`: totals by hour, day or month of the site's local calendar. */
export const energyReportSchema = z.object({
  hall: z.string().nullable(),
  unit: z.string().nullable(),
  units: z.array(z.string()).describe('the units that are added up'),
  timeZone: z.string(),
  by: energyStepSchema,
  from: isoTimeSchema.describe('start of the first period: `from` of the query, taken back to a local boundary'),
  to: isoTimeSchema.describe('end of the last period, exclusive; the last may still run'),
  periods: z.array(energyPeriodSchema),
  total: energyPeriodSchema.describe('over all periods'),
});
export type EnergyReport = z.infer<typeof energyReportSchema>;

/** Either a unit or a hall; neither: the whole site. */
export const energyQuerySchema = z.strictObject({
  unit: z.string().min(1).optional(),
  hall: z.string().min(1).optional(),
  from: isoTimeSchema,
  to: isoTimeSchema,
  by: energyStepSchema,
});
export type EnergyQuery = z.infer<typeof energyQuerySchema>;
