import { z } from 'zod';
import { idSchema } from './site-file-points';
import { chipKeys } from './site-file-plate';
import { optionalLength as length, optionalQuantity } from './site-file-quantity';
import { lossRecordsSchema } from './site-file-records';

const name = z.string().min(1).optional().describe('As screens show it. Default: the id.');

const fittings = {
  mainBore: length(
    '25 mm',
    "Bore of the rack's own hose: what a cut of the whole rack opens. Wider than about 8.5 mm, water comes down through such a cut whatever the pressure: plan it as a spill.",
  ),
  restrictorBore: length('3.6 mm', 'Bore of the restrictor at the inlet of each server hose.'),
  outletBore: length('5 mm', 'Narrowest bore between the open end of a server hose and the return manifold.'),
  manifoldBore: length('76 mm', 'Bore of the rack manifold: with it the velocity in it is told.'),
  manifoldArea: optionalQuantity('area', '58 cm2', 'Its cross-section, where it is no round pipe.'),
  checkValve: z
    .boolean()
    .optional()
    .describe(
      '`true` where the inlet has a check valve. A restrictor limits what a cut lets in, only a check valve stops it. Default false.',
    ),
};

export const fittingsSchema = z
  .strictObject(fittings)
  .describe('What the branches have in common; a branch may say otherwise, key by key.');

export const branchSchema = z
  .strictObject({
    name,
    ratedFlow: optionalQuantity('volumeFlow', '43 L/min', 'Flow of this branch at rated loop flow.'),
    records: lossRecordsSchema.describe(
      'Loss from supply tank to separator by way of this branch, with all branches open, at one flow of it or more. Three or more that differ by a fifth also give the exponent; else that of the loop holds.',
    ),
    ...fittings,
  })
  .describe("One rack's manifold pair.");
export type BranchInFile = z.infer<typeof branchSchema>;

export const serverSchema = z
  .strictObject({ name, branch: idSchema.optional().describe('The branch that feeds it.') })
  .describe("One server's hoses on a branch.");

export const plateSchema = z
  .strictObject({
    name,
    branch: idSchema.optional().describe("The branch that feeds it. Default: its server's."),
    server: idSchema.optional().describe('The server that it sits in.'),
    elevation: length('1.3 m', 'Height above the floor datum.'),
    ...chipKeys,
    fans: z
      .boolean()
      .optional()
      .describe("`false` where no fans carry this chip's heat when the water stands, although `fanPath` says so."),
  })
  .describe("One chip's cold plate.");
export type PlateInFile = z.infer<typeof plateSchema>;

export const namedTankSchema = z
  .strictObject({
    name,
    area: optionalQuantity('area', '0.20 m2', 'Water surface of the tank: turns its level into litres.'),
  })
  .describe('One tank with points of its own.');
