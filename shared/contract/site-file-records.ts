import { z } from 'zod';
import { pumpGradeIds } from '../hydraulics/pump-grades';
import { optionalQuantity, quantity } from './site-file-quantity';

const whoAndWhen = {
  by: z.string().min(1).optional().describe("Who took it. Default: the commissioning record's."),
  on: z.string().optional().describe("On which day. Default: the commissioning record's."),
};

/** Flow and loss of one segment, three or more of which say how the loss grows with flow. */
export const lossRecordsSchema = z
  .array(
    z.strictObject({
      flow: quantity('volumeFlow', '43 L/min', 'Flow.'),
      loss: quantity('pressureDifference', '40 kPa', 'Pressure lost at that flow.'),
      ...whoAndWhen,
    }),
  )
  .min(1)
  .optional();

export const exchangerRecordsSchema = z
  .array(
    z.strictObject({
      loopFlow: quantity('massFlow', '5.74 kg/s', 'Mass flow of the loop.'),
      facilityFlow: quantity('massFlow', '5.74 kg/s', 'Mass flow of the facility water.'),
      ua: quantity('thermalConductance', '48000 W/K', 'UA of the clean exchanger there.'),
      ...whoAndWhen,
    }),
  )
  .min(1)
  .optional()
  .describe(
    'UA at several pairs of flows, in place of `ua`, `loopFlow` and `facilityFlow`: three or more tell the two films and the wall apart (1/UA = a·q₁⁻ⁿ + b·q₂⁻ⁿ + w). Change one flow at a time, each by half.',
  );

export const pumpRecordSchema = z
  .strictObject({
    flow: optionalQuantity('volumeFlow', '346 L/min', 'Flow at which it was taken. Default: ratedFlow.'),
    speed: optionalQuantity('ratio', '94.7 %', 'Speed of the pump there. Needed.'),
    rise: optionalQuantity('pressureDifference', '103 kPa', 'Pressure rise from inlet to discharge there.'),
    grade: z
      .enum(pumpGradeIds)
      .optional()
      .describe(
        "Grade of ISO 9906 where the figures are the maker's: by it they may be off. Without it they are taken as measured on site, within 5 %.",
      ),
  })
  .describe(
    'The pump at one flow and speed: what its head and its efficiency are compared with at the same flow over speed.',
  );
