import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { celsius, metre } from '@ebbline/shared/units/quantity';
import { has, uOf, valueOf, type GuidedView } from '../guided-view';

/** A pressure whose reading is known by hydrostatics while the loop is vented and stands. */
export interface ZeroPlace {
  readonly point: string;
  readonly title: string;
  /** Water above the sensor, m, with what a level adds to its uncertainty; 0 for a sensor in the gas of a vented tank. */
  readonly heightM: number;
  readonly levelU: number;
  /** So much lower the top of the column may stand, as its water can run back, m; NaN: not known how much. */
  readonly runsBackM: number;
  /** Which thermometer stands for the column; null: no column. */
  readonly temperature: 'supply.temperature' | 'return.temperature' | null;
}

/**
 * Elevation of a surface now, m, with its standard uncertainty by the level: as stated at the usual level, and by what the level is off
 * it. NaN where any of this is not known: water that stands has run back to the tanks, and none is at its usual level.
 */
function surface(
  view: GuidedView,
  statedM: number | null,
  usualM: number | null,
  level: string,
): readonly [number, number] {
  const now = valueOf(view, level);
  const u = uOf(view, level);
  return statedM === null || usualM === null || Number.isNaN(u) ? [Number.NaN, 0] : [statedM + now - usualM, u];
}

/** Pressures that the check can judge, in the order of the water's way. */
export function zeroPlaces(view: GuidedView): readonly ZeroPlace[] {
  const { design, tanks } = view.plan.unit;
  const { volumes } = design;
  const [supplyM, supplyU] = surface(
    view,
    design.supplyTankSurfaceM,
    volumes.supplyTankUsualLevelM,
    'supplyTank.level',
  );
  const [separatorM, separatorU] = surface(
    view,
    design.separatorSurfaceM,
    volumes.separatorUsualLevelM,
    'separator.level',
  );
  const gas = (point: string, title: string): ZeroPlace => ({
    ...{ point, title, heightM: 0, levelU: 0, runsBackM: 0, temperature: null },
  });
  const water = (
    point: string,
    title: string,
    topM: number,
    sensorM: number | null,
    levelU: number,
    temperature: ZeroPlace['temperature'],
    runsBackM = 0,
  ): ZeroPlace => ({
    ...{ point, title, levelU, runsBackM, temperature },
    heightM: topM - (sensorM ?? Number.NaN),
  });
  const inletM = design.returnInletM ?? Number.NaN;
  return [
    gas('supplyTank.pressure', 'Supply tank'),
    water('supply.pressure', 'Supply main', supplyM, design.supplySensorM, supplyU, 'supply.temperature'),
    water(
      'return.pressure',
      'Return main',
      inletM,
      design.returnSensorM,
      0,
      'return.temperature',
      // Where no check valve holds it, water of the return runs back until both stand alike (communicating vessels).
      Math.max(0, inletM - supplyM),
    ),
    gas('separator.pressure', 'Separator'),
    water('pump.inlet.pressure', 'Pump inlet', separatorM, design.pumpInletM, separatorU, 'return.temperature'),
    ...tanks.map(({ id, name }) => gas(`tank.${id}.pressure`, name)),
  ].filter(({ point }) => has(view, point));
}

/** ρ g of the column above the sensor, Pa/m; 0 without one, NaN where its temperature is not known. */
export function columnOf(view: GuidedView, { temperature }: ZeroPlace): number {
  if (temperature === null) return 0;
  const reading = valueOf(view, temperature);
  return Number.isNaN(reading) ? Number.NaN : staticHead(view.plan.fluid.density(celsius(reading)), metre(1));
}
