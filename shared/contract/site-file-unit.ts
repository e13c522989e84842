import { z } from 'zod';
import {
  commissioningSchema,
  fanPathSchema,
  knownGoodSchema,
  transitSchema,
  volumesSchema,
} from './site-file-commissioning';
import { fluidSchema } from './site-file-fluid';
import { limitsSchema } from './site-file-limits';
import { matchedPairsSchema } from './site-file-matched-pairs';
import { branchSchema, fittingsSchema, plateSchema, serverSchema } from './site-file-parts';
import {
  elevationsSchema,
  nodeSchema,
  pressureWindowSchema,
  pumpSchema,
  tanksSchema,
  vacuumSourceSchema,
} from './site-file-plant';
import { chipKeys, plateChannelSchema } from './site-file-plate';
import { idSchema, pointsSchema, senderQualitySchema, timeSchema, topicSchema } from './site-file-points';
import { optionalLength as length, quantity } from './site-file-quantity';
import { mainsSchema, permissibleVelocitySchema } from './site-file-velocity';
import { waterSchema } from './site-file-water';

/** Keys that a template and a unit share. All may be left out here: what is needed is asked for after the templates are merged in. */
const unitKeys = {
  template: idSchema
    .optional()
    .describe(
      'A template whose keys hold wherever this one says nothing else; maps merge key by key, the nearest wins.',
    ),
  shape: z
    .enum(['a', 'b', 'c'])
    .optional()
    .describe(
      'Plant shape: a = supply tank, return separator and transfer pump; b = alternating tanks; c = pump from a vacuum reservoir into the loop. Needed.',
    ),
  gateway: idSchema
    .optional()
    .describe('The gateway through which its telemetry comes. Default: the unit is its own gateway.'),
  topic: topicSchema
    .optional()
    .describe("The unit's common topic: one JSON object with many points. `{unit}` is filled in."),
  time: timeSchema.optional(),
  quality: senderQualitySchema.optional(),
  ratedFlow: quantity('volumeFlow', '346 L/min', 'Loop flow at which the losses hold. Needed.').optional(),
  ratedHeat: quantity('power', '208 kW', 'Heat into the water at rated load.').optional(),
  supplySetPoint: quantity('temperature', '35 °C', 'Supply temperature that the unit holds.').optional(),
  fluid: fluidSchema
    .optional()
    .describe('What flows in the loop. Default: water. Boiling pressures stay those of water, which boils first.'),
  facilityFluid: fluidSchema.optional().describe('What flows on the facility side of the exchanger. Default: water.'),
  elevations: elevationsSchema.optional(),
  nodes: z
    .record(idSchema, nodeSchema.nullable())
    .optional()
    .describe('Wetted places by id; at least one on each main.'),
  pump: pumpSchema.optional(),
  tanks: tanksSchema.optional(),
  volumes: volumesSchema.optional(),
  transit: transitSchema.optional(),
  hoseBore: length('8 mm', 'Bore of one server hose where it would open: what "one open hose" means here.'),
  openingDischargeCoefficient: z
    .number()
    .optional()
    .describe('Of an open hose: 0.6 for a sharp hole to 0.85 for a long one. Default 0.7.'),
  plateWallResistance: quantity(
    'thermalResistance',
    '0.01 K/W',
    'From chip case to wetted plate wall. Without it no plate wall is judged.',
  ).optional(),
  plateHeatCapacity: quantity(
    'heatCapacity',
    '350 J/K',
    'Of one plate with its chip: how fast it warms when the water stands.',
  ).optional(),
  plateLimit: quantity('temperature', '85 °C', 'Chip case temperature at which the chip throttles.').optional(),
  plateFullPower: chipKeys.fullPower,
  chipArea: chipKeys.chipArea,
  plateChannel: plateChannelSchema.optional(),
  fanPath: fanPathSchema.optional(),
  supplyClassLimit: quantity('temperature', '45 °C', 'Warmest supply that the racks are made for.').optional(),
  facilityDesignSupply: quantity(
    'temperature',
    '30 °C',
    'Facility water at design: warmer can not hold the supply set point at rated heat.',
  ).optional(),
  filterRating: quantity(
    'pressureDifference',
    '60 kPa',
    'Pressure drop that the filter element is rated for.',
  ).optional(),
  commissioning: commissioningSchema.optional(),
  matchedPairs: matchedPairsSchema.optional(),
  knownGood: knownGoodSchema.optional(),
  fittings: fittingsSchema.optional(),
  mains: mainsSchema.optional(),
  permissibleVelocity: permissibleVelocitySchema.optional(),
  branches: z.record(idSchema, branchSchema.nullable()).optional().describe('Branches by id, in the order shown.'),
  servers: z.record(idSchema, serverSchema.nullable()).optional().describe('Servers by id; as many as are measured.'),
  plates: z.record(idSchema, plateSchema.nullable()).optional().describe('Plates by id; as many as are measured.'),
  vacuumSource: vacuumSourceSchema.optional(),
  pressureWindow: pressureWindowSchema.optional(),
  water: waterSchema.optional(),
  points: pointsSchema.optional(),
  limits: limitsSchema.optional(),
};

export const templateSchema = z.strictObject(unitKeys).describe('Keys for many units at once.');
export type TemplateInFile = z.infer<typeof templateSchema>;

export const unitSchema = z
  .strictObject({
    name: z.string().min(1).describe('As screens show it.'),
    hall: idSchema.describe('The hall it stands in.'),
    ...unitKeys,
  })
  .describe('One cooling unit.');
export type UnitInFile = z.infer<typeof unitSchema>;
