import { scatterOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { part } from './uncertainty-budget';
import type { ScatterHolder } from './scatter-holder';

/** How a gas flow was found: index into the names of `gasMethodNames`. Best first: what a pause shows, a meter, a curve. */
export const GasMethod = { none: -1, pause: 0, meter: 1, curve: 2 } as const;
export type GasMethod = (typeof GasMethod)[keyof typeof GasMethod];

/** A gas flow as free air, m³/s, with the parts of its standard uncertainty; NaN where it can't be known, 0 where it has no such part. */
export interface GasFlow {
  value: number;
  u: number;
  method: GasMethod;
  uMeter: number;
  uBleed: number;
  uCurve: number;
  /** What the noise of pressure, temperature and level makes of the gas that collects. */
  uNoise: number;
  /** Degrees of freedom of `uNoise`. */
  noiseDegrees: number;
  /** What the stated gas room makes of it. */
  uRoom: number;
}

export const unknownGas = (): GasFlow => ({
  value: Number.NaN,
  u: Number.NaN,
  method: GasMethod.none,
  uMeter: 0,
  uBleed: 0,
  uCurve: 0,
  uNoise: 0,
  noiseDegrees: Infinity,
  uRoom: 0,
});

export function copyGas(from: Readonly<GasFlow>, into: GasFlow): void {
  into.value = from.value;
  into.u = from.u;
  into.method = from.method;
  into.uMeter = from.uMeter;
  into.uBleed = from.uBleed;
  into.uCurve = from.uCurve;
  into.uNoise = from.uNoise;
  into.noiseDegrees = from.noiseDegrees;
  into.uRoom = from.uRoom;
}

/** u by its parts. */
export function addUp(flow: GasFlow): void {
  const { uMeter, uBleed, uCurve, uNoise, uRoom } = flow;
  flow.u = Math.sqrt(uMeter * uMeter + uBleed * uBleed + uCurve * uCurve + uNoise * uNoise + uRoom * uRoom);
}

/** u of a gas flow, times what a value makes of it; with its parts where a budget is asked for. `writeFitted` writes the value. */
export function gasU(holder: ScatterHolder, flow: Readonly<GasFlow>, sensitivity = 1): number {
  if (flow.uNoise !== 0) holder.scatter += scatterOf(sensitivity * flow.uNoise, flow.noiseDegrees);
  if (holder.budget !== null) {
    const { uMeter, uBleed, uCurve, uNoise, uRoom } = flow;
    if (uMeter !== 0) part(holder, 'vacuum.exhaustFlow', sensitivity * uMeter);
    if (uBleed !== 0) part(holder, 'vacuum.bleedFlow', sensitivity * uBleed);
    if (uCurve !== 0) part(holder, 'vacuumSource.curve', sensitivity * uCurve);
    if (uNoise !== 0) part(holder, 'noise of pressure, temperature and level', sensitivity * uNoise, flow.noiseDegrees);
    if (uRoom !== 0) part(holder, 'volumes.separatorGas', sensitivity * uRoom);
  }
  return Math.abs(sensitivity) * flow.u;
}
