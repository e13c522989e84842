import { z } from 'zod';
import { limitsSchema } from './site-file-limits';
import { idSchema, pointsSchema, senderQualitySchema, timeSchema, topicSchema } from './site-file-points';
import { quantity } from './site-file-quantity';

const length = (example: string, description: string) => quantity('length', example, description).optional();

const elevationsSchema = z
  .strictObject({
    supplyTankSurface: length('1.0 m', 'Water surface in the supply tank, at its usual level.'),
    separatorSurface: length('0.6 m', 'Water surface in the return separator (or vacuum reservoir).'),
    returnInlet: length('1.2 m', 'Where the return enters the separator: the return column ends here.'),
    pumpInlet: length('0.15 m', "The pump's eye (ISO 9906 reference plane)."),
    supplySensor: length('0.9 m', 'Where `supply.pressure` is measured.'),
    returnSensor: length('1.1 m', 'Where `return.pressure` is measured.'),
    accuracy: length('5 cm', 'How well these heights are known (half-width). Default 5 cm.'),
  })
  .describe(
    "Heights above the hall's floor datum. 1 m is 9.8 kPa, as much as the margins that are watched: survey them.",
  );

const nodeSchema = z
  .strictObject({
    name: z.string().min(1).optional().describe('As screens show it. Default: the id.'),
    main: z.enum(['supply', 'return']).optional().describe('On which side of the plates. Needed.'),
    elevation: length('-0.5 m', 'Height above the floor datum. Needed.'),
    loss: quantity(
      'pressureDifference',
      '3.0 kPa',
      'Pressure lost at rated flow between the supply tank (supply main) or the separator (return main) and here. Default 0.',
    ).optional(),
  })
  .describe('One wetted place outside the unit: at least the lowest and the highest of each main.');

const branchSchema = z
  .strictObject({
    name: z.string().min(1).optional().describe('As screens show it. Default: the id.'),
    ratedFlow: quantity('volumeFlow', '43 L/min', 'Flow of this branch at rated loop flow.').optional(),
  })
  .describe("One rack's manifold pair.");

const plateSchema = z
  .strictObject({
    name: z.string().min(1).optional().describe('As screens show it. Default: the id.'),
    branch: idSchema.optional().describe('The branch that feeds it.'),
    elevation: length('1.3 m', 'Height above the floor datum.'),
  })
  .describe("One chip's cold plate.");

const vacuumSourceSchema = z
  .strictObject({
    count: z.number().int().min(1).max(16).optional().describe('How many equal sources the unit has. Default 1.'),
    curve: z
      .array(
        z.strictObject({
          pressure: quantity('absolutePressure', '32 kPa', 'Absolute pressure at the suction.'),
          suction: quantity('volumeFlow', '62 m3/h', 'Volume that one source takes in there, at that pressure.'),
        }),
      )
      .min(2)
      .optional()
      .describe("Suction by pressure of one source at the site's seal temperature, pressures rising. Needed."),
  })
  .describe("The vacuum source's own curve, by blank-off and calibrated orifices.");

const pressureWindowSchema = z
  .strictObject({
    margin: quantity(
      'pressureDifference',
      '6.5 kPa',
      'How far below ambient the highest wetted place is to stay. Default: the limit of MARGIN-1, else 5 kPa.',
    ).optional(),
    returnTemperature: quantity(
      'temperature',
      '45 °C',
      'Hottest return water. Default: supply set point plus rated heat over rated flow.',
    ).optional(),
    loopLoss: quantity(
      'pressureDifference',
      '40.2 kPa',
      'Pressure lost at rated flow from the supply tank to the separator. Without it the check is left out.',
    ).optional(),
    acceptNone: z
      .string()
      .min(1)
      .optional()
      .describe('Why this unit is run although it has no pressure window; turns the fault into a warning.'),
  })
  .describe(
    'For the check that the plant has a pressure window at its altitude: room between ambient on one side and boiling and the pump inlet on the other.',
  );

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
  elevations: elevationsSchema.optional(),
  nodes: z
    .record(idSchema, nodeSchema.nullable())
    .optional()
    .describe('Wetted places by id; at least one on each main.'),
  pump: z
    .strictObject({
      npshLimit: length(
        '2.1 m',
        'Least net positive suction head at the pump inlet: NPSHR and 0.5 m, or 1.3 times NPSHR.',
      ),
      suctionLoss: quantity(
        'pressureDifference',
        '2.4 kPa',
        "Pressure lost from the separator to the pump's inlet at rated flow. Default 0.",
      ).optional(),
    })
    .optional()
    .describe('The pump whose inlet stands at the low pressure.'),
  tanks: z
    .strictObject({
      supplyArea: quantity('area', '0.20 m2', 'Water surface of the supply tank.').optional(),
      separatorArea: quantity('area', '0.15 m2', 'Water surface of the separator.').optional(),
    })
    .optional()
    .describe('Areas that turn a level into litres.'),
  hoseBore: length('8 mm', 'Bore of one server hose where it would open: what "one open hose" means here.'),
  plateWallResistance: quantity(
    'thermalResistance',
    '0.01 K/W',
    'From chip case to wetted plate wall. Without it no plate wall is judged.',
  ).optional(),
  branches: z.record(idSchema, branchSchema.nullable()).optional().describe('Branches by id, in the order shown.'),
  plates: z.record(idSchema, plateSchema.nullable()).optional().describe('Plates by id; as many as are measured.'),
  vacuumSource: vacuumSourceSchema.optional(),
  pressureWindow: pressureWindowSchema.optional(),
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
