import { z } from 'zod';
import type { QuantityKind } from './quantity-kind';

/** What figures of tests are of. */
export const guidedQuantities = [
  'temperature',
  'temperatureDifference',
  'absolutePressure',
  'pressureDifference',
  'volumeFlow',
  'freeAirFlow',
  'power',
  'ratio',
  'thermalResistance',
  'duration',
] as const satisfies readonly QuantityKind[];
export const guidedQuantitySchema = z.enum(guidedQuantities);
export type GuidedQuantity = z.infer<typeof guidedQuantitySchema>;
