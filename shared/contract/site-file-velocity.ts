import { z } from 'zod';
import { velocityTableIds } from '../hydraulics/permissible-velocity';
import { optionalLength as length, optionalQuantity } from './site-file-quantity';

export const mainsSchema = z
  .strictObject({
    bore: length('82 mm', 'Bore of the mains. Needed.'),
    length: length('30 m', 'Straight length of supply and return main together: with it their friction loss is told.'),
    roughness: length('0.0015 mm', 'Of the inner wall. Default 0.0015 mm, drawn copper or stainless steel tube.'),
  })
  .describe('Supply and return main as pipes.');

export const permissibleVelocitySchema = z
  .strictObject({
    table: z
      .enum(velocityTableIds)
      .optional()
      .describe(
        'By which table the velocity is judged at its temperature: copperHandbook (Copper Tube Handbook: 2.4 m/s cold, 1.5 up to 60 °C, 0.9 above), copperBs6700 (BS 6700: 3 m/s to 50 °C, 2 at 90 °C), copperSwedish (2 m/s at 10 °C, 1.5 at 50 °C).',
      ),
    limit: optionalQuantity('velocity', '2 m/s', "A figure of the pipe maker's own, in place of a table."),
  })
  .describe('How fast water may flow in mains and manifolds. Without it velocities are told, and judged by nothing.');
