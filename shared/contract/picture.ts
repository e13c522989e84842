import { z } from 'zod';
import { alarmSchema, prioritySchema } from './alarm';
import { alertSchema } from './alert';
import { clockStateSchema, modeSchema } from './http-api';
import { permitSchema } from './permit';
import { isoTimeSchema, qualityReasonSchema, qualitySchema, readingSchema } from './reading';

const number = z.number().nullable();
const text = z.string().nullable();

const figureSchema = z.object({
  value: number,
  age: number.describe('seconds, at the moment of the picture'),
  quality: qualitySchema,
  reasons: z.array(qualityReasonSchema),
  expandedUncertainty: number,
});

const pressureWindowSchema = z.object({
  lowestPa: number,
  lowestWhere: text,
  highestPa: number,
  highestWhere: text,
  ambientPa: number,
  lowerWallPa: number,
  lowerWallKind: z.enum(['node', 'pumpInlet', 'plateWall']).nullable(),
  lowerWallWhere: text,
  lowerWallMargin: figureSchema,
  vacuumMargin: figureSchema,
  vacuumMarginWorst: figureSchema,
  lowerWallGuardPa: number,
  vacuumMarginGuardPa: z.number(),
  hourLowestPa: number,
  hourHighestPa: number,
});

const worstSchema = alarmSchema.pick({
  id: true,
  entry: true,
  title: true,
  priority: true,
  state: true,
  where: true,
  action: true,
  since: true,
  detail: true,
});

const countHolding = z.number().int().optional();

const loopLineSchema = z.object({
  unit: z.string(),
  name: z.string(),
  mode: modeSchema,
  modeKnown: z.boolean(),
  age: number,
  pressureWindow: pressureWindowSchema,
  heatRemoved: figureSchema,
  chipPower: figureSchema,
  drivingPressure: figureSchema,
  vacuumReserve: figureSchema,
  openingsCarried: figureSchema,
  openingsCarriedAll: figureSchema,
  openPermits: z.number().int(),
  ventedNotProtected: z.boolean(),
  worst: worstSchema.nullable(),
  moreAlarms: z.number().int(),
  gaps: z.object({ left: prioritySchema.nullable(), right: prioritySchema.nullable() }).optional(),
  setAsideHolding: countHolding.describe(
    'alarms of the unit that are set aside while their condition holds; absent: none',
  ),
});

const pathPlaceSchema = z.object({
  id: z.string(),
  name: z.string(),
  elevation: number,
  pressurePa: number,
  vapourPressurePa: number,
  temperature: number,
  outsideUnit: z.boolean(),
});

const branchShareSchema = z.object({
  id: z.string(),
  name: z.string(),
  flow: figureSchema,
  ratedFlow: number,
  returnTemperature: figureSchema,
  hottestPlate: figureSchema,
  hottestPlateId: text,
  heatRemoved: figureSchema,
  returnPressure: figureSchema,
  vacuumMargin: figureSchema,
  flowShare: figureSchema,
  state: z.enum(['inLoop', 'isolated', 'openUnderPermit']),
});

const serverLineSchema = z.object({
  id: z.string(),
  name: z.string(),
  branch: text,
  returnTemperature: figureSchema,
  power: figureSchema,
  fanSpeed: figureSchema,
  hottestPlate: figureSchema,
  hottestPlateId: text,
});

const everyPicture = {
  time: isoTimeSchema.nullable(),
  clock: clockStateSchema,
  standing: z.object({ 1: z.number().int(), 2: z.number().int(), 3: z.number().int() }),
};

/** What the Hall screen draws; the type is `HallPicture` of the live feed. */
export const hallPictureSchema = z.object({
  ...everyPicture,
  screen: z.literal('hall'),
  hall: z.string(),
  name: z.string(),
  ambientPressure: figureSchema,
  temperature: figureSchema,
  dewPoint: figureSchema,
  heatRemoved: figureSchema,
  chipPower: figureSchema,
  smallestMargin: z.object({ unit: z.string(), margin: figureSchema }).nullable(),
  loops: z.array(loopLineSchema),
  besideSetAside: countHolding.describe('the same of the hall and of no single unit'),
  permits: z.array(permitSchema),
});

/** What the Loop screen draws; the type is `LoopPicture` of the live feed. */
export const loopPictureSchema = z.object({
  ...everyPicture,
  screen: z.literal('loop'),
  unit: z.string(),
  hall: z.string(),
  line: loopLineSchema,
  points: z.array(readingSchema),
  path: z.array(pathPlaceSchema),
  branches: z.array(branchShareSchema),
  servers: z.array(serverLineSchema),
  loop: z.object({
    id: z.string(),
    name: z.string(),
    units: z.array(z.string()),
    unitsNeeded: z.number().int(),
  }),
  permits: z.array(permitSchema),
  alerts: z.array(alertSchema),
  alarms: z.array(alarmSchema),
  besideSetAside: countHolding.describe('the same of its gateway, or of its loop of several units'),
});
