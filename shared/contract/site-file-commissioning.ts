import { z } from 'zod';
import { optionalQuantity } from './site-file-quantity';
import { exchangerRecordsSchema, lossRecordsSchema, pumpRecordSchema } from './site-file-records';

const exponent = (otherwise: string, description: string) =>
  z.number().optional().describe(`${description} Default ${otherwise}.`);

const volume = (example: string, description: string) => optionalQuantity('volume', example, description);

export const volumesSchema = z
  .strictObject({
    supplyToReturn: volume(
      '280 L',
      'Water on the way from the supply to the return sensor: by it the transit time is taken out of the heat balance.',
    ),
    water: volume('488 L', "All water of the unit's share of the loop, tanks included: what a fill takes."),
    separatorGas: volume('510 L', 'Room for gas in separator and receiver at the usual level.'),
    supplyTankGas: volume('80 L', 'Room for gas in the supply tank at its usual level.'),
    supplyTankUsable: volume('80 L', 'Water that the supply tank may give off until the loop starves.'),
    separatorRoom: volume('90 L', 'Water that the separator can still take.'),
  })
  .describe('Volumes at the usual levels.');

export const transitSchema = z
  .strictObject({
    platesToReturn: volume(
      '140 L',
      'Part of volumes.supplyToReturn that lies behind the plates: heat made in the chips is late by it. Default: half.',
    ),
    storedHeat: optionalQuantity(
      'heatCapacity',
      '280 kJ/K',
      'What pipe walls, hoses, plates and chips on this way take up to warm by one kelvin. A front comes later by it: 4.1 kJ/K count as one litre more. Default 0.',
    ),
    spread: z
      .number()
      .min(0)
      .max(0.5)
      .optional()
      .describe(
        'How much a front spreads on its way: standard deviation of its arrival over its transit. One long pipe 0.1 to 0.15, racks near and far 0.2 to 0.3. Default 0.25.',
      ),
    plateLag: optionalQuantity(
      'duration',
      '20 s',
      'Time constant of a plate with its chip: heat made in the chip comes into the water late by it. Default: plateHeatCapacity times commissioning.plate.resistance.',
    ),
    sensorLag: optionalQuantity(
      'duration',
      '10 s',
      'Time constant of the return sensor in its pocket. Clamped on: 30 to 90 s. Default 0.',
    ),
  })
  .describe(
    'What a change of temperature or of load meets on its way from the supply to the return sensor. Goes with volumes.supplyToReturn.',
  );

const loop = z
  .strictObject({
    loss: optionalQuantity('pressureDifference', '40.2 kPa', 'From supply tank to separator at rated flow.'),
    exponent: exponent('2', 'How the loss grows with flow (1 to 2.2).'),
    records: lossRecordsSchema.describe(
      'Loss at three or more flows that differ by a fifth and more, in place of `loss` and `exponent`: both are fitted.',
    ),
  })
  .describe('Resistance of the loop as found.');

const filter = z
  .strictObject({
    loss: optionalQuantity('pressureDifference', '15 kPa', 'Of the clean filter at rated flow.'),
    exponent: exponent('2', 'How the loss grows with flow (1 to 2.2).'),
    records: lossRecordsSchema.describe(
      'Loss at three or more flows that differ by a fifth and more, in place of `loss` and `exponent`: both are fitted.',
    ),
    temperature: optionalQuantity(
      'temperature',
      '40 °C',
      'Water there when it was taken. With an exponent below 2 the loss goes with viscosity, and is brought to it.',
    ),
  })
  .describe('Resistance of the clean filter.');

const exchanger = z
  .strictObject({
    ua: optionalQuantity('thermalConductance', '48000 W/K', 'UA of the clean exchanger at the two mass flows.'),
    loopFlow: optionalQuantity('massFlow', '5.74 kg/s', 'Mass flow of the loop at that UA.'),
    facilityFlow: optionalQuantity('massFlow', '5.74 kg/s', 'Mass flow of the facility water at that UA.'),
    exponent: exponent('0.75', 'How the film coefficients grow with flow (0.3 to 1).'),
    records: exchangerRecordsSchema,
    area: optionalQuantity('area', '22 m2', 'Area of its plates: brings fouling to one square metre.'),
  })
  .describe('The clean heat exchanger.');

const plate = z
  .strictObject({
    resistance: optionalQuantity('thermalResistance', '0.06 K/W', 'Chip case to supply water, at rated plate flow.'),
    fixed: optionalQuantity('thermalResistance', '0.03 K/W', 'The part of it that flow does not change. Default 0.'),
    exponent: exponent('0.8', 'How the rest falls with flow (0 to 1.5).'),
  })
  .describe('A clean cold plate.');

export const commissioningSchema = z
  .strictObject({
    by: z.string().min(1).optional().describe('Who took the figures: a role or a name. Needed.'),
    on: z.string().optional().describe('On which day, such as `2026-03-14`. Needed.'),
    loop: loop.optional(),
    filter: filter.optional(),
    exchanger: exchanger.optional(),
    gasLoad: optionalQuantity(
      'freeAirFlow',
      '1.5 free L/min',
      'Gas load of the tight loop: dissolved air and permeation. What is above it is in-leak.',
    ),
    pumpEfficiency: optionalQuantity('ratio', '45 %', 'Wire to water, at rated flow.'),
    pump: pumpRecordSchema.optional(),
    plate: plate.optional(),
  })
  .describe(
    'The commissioning record: what was measured when the plant was clean and tight. Baselines come from here.',
  );

export const knownGoodSchema = z
  .strictObject({
    from: z.string().optional().describe('The day (UTC) from which it is sound, such as `2026-03-14`. Needed.'),
    hours: z.number().optional().describe('How many hours of it are learnt from (4 to 720). Default 24.'),
  })
  .describe(
    'A period that an engineer calls sound: what the unit is like in its first watched hours is what changes are judged against. Another day learns anew. Without it nothing is learnt.',
  );

export const fanPathSchema = z
  .strictObject({
    resistance: optionalQuantity(
      'thermalResistance',
      '0.167 K/W',
      'Chip case to hall air with the fans at full speed. Needed.',
    ),
  })
  .describe("Fans that carry the chips' heat when the water stands. Leave out where there are none.");
