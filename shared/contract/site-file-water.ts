import { z } from 'zod';
import { molybdateFormSchema } from './hand-entry';
import { quantity } from './site-file-quantity';
import { waterParameterIds } from './water-parameters';

const value = (what: string) =>
  z
    .string()
    .optional()
    .describe(`${what} In the parameter's own unit of measure, such as \`8\` (pH), \`60 mg/L\` or \`20 µS/cm\`.`);

const parameterSchema = z
  .strictObject({
    lowLow: value('Below this it is called very low.'),
    low: value('Lower end of the band.'),
    high: value('Upper end of the band.'),
    highHigh: value('Above this it is called very high.'),
    as: molybdateFormSchema
      .optional()
      .describe('As what the four are counted: 40 mg/L as Mo is 66.7 mg/L as MoO₄. Needed for molybdate.'),
    basis: z.string().min(1).optional().describe('What the band rests on, such as the inhibitor maker’s sheet.'),
    byHand: z
      .boolean()
      .optional()
      .describe('`true`: people type values of this parameter. Default: where `due` is stated.'),
    due: quantity('duration', '7 d', 'A value typed by a person counts for so long; then the next is due.').optional(),
    lastCalibration: z.iso.date().optional().describe('Date of the sensor’s last calibration, such as `2026-09-30`.'),
  })
  .describe('One parameter of the water. Bands left out keep the default, where there is one.');
export type WaterParameterInFile = z.infer<typeof parameterSchema>;

export const waterSchema = z
  .strictObject({
    conductivityCoefficient: quantity(
      'ratio',
      '2 %',
      'Rise of conductivity per kelvin, by which it is brought to 25 °C (linear form of ISO 7888). Default 2 %.',
    ).optional(),
    phElectrode: z
      .strictObject({
        compensation: z
          .enum(['sender', 'none'])
          .describe(
            'sender: the number in the payload has the slope of the water’s temperature already. none: it was made from mV with the slope of 25 °C, whatever the temperature; Ebbline puts the slope right.',
          ),
      })
      .optional()
      .describe('How `water.ph` is told. Default: sender.'),
    molybdateShownAs: molybdateFormSchema.optional().describe('As what molybdate is shown. Default: Mo.'),
    parameters: z
      .partialRecord(z.enum(waterParameterIds), parameterSchema.nullable())
      .optional()
      .describe(`Parameters by id: ${waterParameterIds.join(', ')}.`),
  })
  .describe('What the water of the loop is looked after by: bands, and values that people type.');
export type WaterInFile = z.infer<typeof waterSchema>;
