import { z } from 'zod';
import { namedTankSchema } from './site-file-parts';
import { idSchema } from './site-file-points';
import { optionalLength as length, optionalQuantity, quantity } from './site-file-quantity';

export const elevationsSchema = z
  .strictObject({
    supplyTankSurface: length('1.0 m', 'Water surface in the supply tank, at its usual level.'),
    separatorSurface: length('0.6 m', 'Water surface in the return separator (or vacuum reservoir).'),
    returnInlet: length('1.2 m', 'Where the return enters the separator: the return column ends here.'),
    pumpInlet: length('0.15 m', "The pump's eye (ISO 9906 reference plane)."),
    supplySensor: length('0.9 m', 'Where `supply.pressure` is measured.'),
    returnSensor: length('1.1 m', 'Where `return.pressure` is measured.'),
    accuracy: length(
      '5 cm',
      'How well the height of any of these, or of a node, above any other is known (half-width), as a levelling from one to the other gives it; of heights that were measured one by one from the floor, 1.4 times what each is known to. Default 5 cm.',
    ),
  })
  .describe(
    "Heights above the hall's floor datum. 1 m is 9.8 kPa, as much as the margins that are watched: survey them.",
  );

export const nodeSchema = z
  .strictObject({
    name: z.string().min(1).optional().describe('As screens show it. Default: the id.'),
    main: z.enum(['supply', 'return']).optional().describe('On which side of the plates. Needed.'),
    elevation: length('-0.5 m', 'Height above the floor datum. Needed.'),
    loss: optionalQuantity(
      'pressureDifference',
      '3.0 kPa',
      'Pressure lost at rated flow between the supply tank (supply main) or the separator (return main) and here. Default 0.',
    ),
    branch: idSchema
      .optional()
      .describe(
        'Id of the branch that this place belongs to, such as a manifold of its own. While that branch is isolated the place is no part of the loop: no margin counts it, and it is not protected.',
      ),
  })
  .describe('One wetted place outside the unit: at least the lowest and the highest of each main.');

export const pumpSchema = z
  .strictObject({
    npshLimit: length(
      '2.1 m',
      'Least net positive suction head at the pump inlet: NPSHR and 0.5 m, or 1.3 times NPSHR.',
    ),
    suctionLoss: optionalQuantity(
      'pressureDifference',
      '2.4 kPa',
      "Pressure lost from the separator to the pump's inlet at rated flow. Default 0.",
    ),
  })
  .describe('The pump whose inlet stands at the low pressure.');

export const tanksSchema = z
  .strictObject({
    supplyArea: optionalQuantity('area', '0.20 m2', 'Water surface of the supply tank: turns its level into litres.'),
    separatorArea: optionalQuantity('area', '0.15 m2', 'Water surface of the separator.'),
    supplyHeight: length('0.80 m', 'Inner height of the supply tank, from the zero of its level.'),
    separatorHeight: length('0.90 m', 'Inner height of the separator, from the zero of its level.'),
    supplyUsualLevel: length('0.50 m', 'Level of the supply tank at which the volumes hold.'),
    separatorUsualLevel: length('0.45 m', 'Level of the separator at which the volumes hold.'),
    named: z
      .record(idSchema, namedTankSchema.nullable())
      .optional()
      .describe(
        'Tanks that have points of their own (`tank.*`), by id: the alternating tanks of shape b, or more than the two of shape a.',
      ),
  })
  .describe('Supply tank and separator, and tanks beyond these.');

export const vacuumSourceSchema = z
  .strictObject({
    count: z.number().int().min(1).max(16).optional().describe('How many equal sources the unit has. Default 1.'),
    control: z
      .enum(['startStop', 'speed', 'constant'])
      .optional()
      .describe(
        'How it is held: startStop between two pressures; speed by a drive; constant at full speed with a bleed, where only a flow tells the gas load. Default speed.',
      ),
    sealWaterTemperature: optionalQuantity(
      'temperature',
      '25 °C',
      'Seal water temperature at which the curve was taken (liquid ring). Warmer seal water takes capacity away.',
    ),
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

export const pressureWindowSchema = z
  .strictObject({
    margin: optionalQuantity(
      'pressureDifference',
      '6.5 kPa',
      'How far below ambient the highest wetted place is to stay. Default: the limit of MARGIN-1, else 5 kPa.',
    ),
    returnTemperature: optionalQuantity(
      'temperature',
      '45 °C',
      'Hottest return water. Default: supply set point plus rated heat over rated flow.',
    ),
    loopLoss: optionalQuantity(
      'pressureDifference',
      '40.2 kPa',
      'Pressure lost at rated flow from the supply tank to the separator. Default: commissioning.loop.loss; without both the check is left out.',
    ),
    acceptNone: z
      .string()
      .min(1)
      .optional()
      .describe('Why this unit is run although it has no pressure window; turns the fault into a warning.'),
  })
  .describe(
    'For the check that the plant has a pressure window at its altitude: room between ambient on one side and boiling and the pump inlet on the other.',
  );
