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
  /** Which thermometer stands for the column; null: no column. */
  readonly temperature: 'supply.temperature' | 'return.temperature' | null;
}

/** Elevation of a surface now, m: as stated at the usual level, and by what the level is off it. NaN where it is not stated. */
function surface(
  view: GuidedView,
  statedM: number | null,
  usualM: number | null,
  level: string,
): readonly [number, number] {
  const now = valueOf(view, level);
  if (statedM === null) return [Number.NaN, 0];
  if (usualM === null || Number.isNaN(now)) return [statedM, 0];
  const u = uOf(view, level);
  return [statedM + now - usualM, Number.isNaN(u) ? 0 : u];
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
  const gas = (point: string, title: string): ZeroPlace => ({ point, title, heightM: 0, levelU: 0, temperature: null });
  const water = (
    point: string,
    title: string,
    topM: number,
    sensorM: number | null,
    levelU: number,
    temperature: ZeroPlace['temperature'],
  ): ZeroPlace => ({ point, title, heightM: topM - (sensorM ?? Number.NaN), levelU, temperature });
  return [
    gas('supplyTank.pressure', 'Supply tank'),
    water('supply.pressure', 'Supply main', supplyM, design.supplySensorM, supplyU, 'supply.temperature'),
    water(
      'return.pressure',
      'Return main',
      design.returnInletM ?? Number.NaN,
      design.returnSensorM,
      0,
      'return.temperature',
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
