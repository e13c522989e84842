import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { Passed, type Transit } from './memory/transit';
import { throughTanks, transitHalfWidth, type TransitPlan } from './transit-plan';
import type { FrameReadings } from './frame-readings';

/** Below this share of rated flow the loop counts as standing, and no water brings anything: own rule, the zero of a flow meter. */
export const standingShare = 0.02;

/** What the water that returns now met on its way; NaN where the loop stands or was not watched long enough. */
export class TransitNow {
  /** The water carries nothing. */
  standing = false;
  /** Whether the way is long enough in sight, with what was made in the chips. */
  known = false;
  heatKnown = false;
  /** Supply temperature with which it set out, and what its way is not known by, K. */
  supplyC = Number.NaN;
  supplyU = Number.NaN;
  /** Flow with which it passed the plates, m³/s, and the power of the chips then, W. */
  flowM3PerS = Number.NaN;
  powerW = Number.NaN;
  powerU = Number.NaN;
  /** Supply temperature of the water that leaves the plates now: what a branch's own return is held against. */
  atPlatesC = Number.NaN;
  /** Water into and out of the exchanger now, and what each is not known by, K; NaN where the unit's own volume is not stated. */
  exchangerInC = Number.NaN;
  exchangerOutC = Number.NaN;
  exchangerInU = Number.NaN;
  exchangerOutU = Number.NaN;

  read(frame: FrameReadings): void {
    const { memory, plan } = frame;
    const way = plan.transit;
    this.known = false;
    this.exchangerInC = Number.NaN;
    this.heatKnown = false;
    this.standing = frame.stopped || frame.flow < standingShare * plan.unit.design.ratedFlowM3PerS;
    if (memory === null || way === null) return;
    const { transit } = memory;
    const unit = plan.unitIndex;
    if (this.standing) transit.forget(unit);
    const farthest = way.whole * (1 + transitHalfWidth) + way.spread;
    this.known = !this.standing && transit.isKnown(unit, farthest, false);
    const fromPlates = way.fromPlates * (1 + transitHalfWidth) + way.spreadFromPlates;
    this.heatKnown = this.known && transit.isKnown(unit, fromPlates, true);
    if (!this.known) return;
    this.readTemperatures(frame, transit, way);
    this.readHeat(transit, unit, way);
  }

  private readTemperatures(frame: FrameReadings, transit: Transit, way: TransitPlan): void {
    const unit = frame.plan.unitIndex;
    this.supplyC = mean(transit, unit, Passed.supply, way.whole, way.spread);
    this.supplyU = halfway(
      mean(transit, unit, Passed.supply, way.whole * shorter, way.spread),
      mean(transit, unit, Passed.supply, way.whole * longer, way.spread),
    );
    const toPlates = Math.max(0, way.whole - way.fromPlates);
    this.atPlatesC = mean(transit, unit, Passed.supply, toPlates, way.spread * (toPlates / way.whole));
    if (way.throughUnit !== null && transit.isKnown(unit, throughTanks * way.throughUnit, false))
      this.readExchanger(transit, unit, way.throughUnit, frame.supplyTemperature);
  }

  /** The exchanger stands half-way through the unit's tanks: what comes into it returned some volumes ago, what left it is not yet at the supply sensor. */
  private readExchanger(transit: Transit, unit: number, throughUnit: number, supplyC: number): void {
    const half = throughUnit / 2;
    this.exchangerInC = mean(transit, unit, Passed.returned, half, half);
    this.exchangerInU = halfway(
      mean(transit, unit, Passed.returned, half * 0.5, half * 0.5),
      mean(transit, unit, Passed.returned, half * throughTanks, half * throughTanks),
    );
    // The mean of the last half tells how fast the tank behind the exchanger warms: T + τ dT/dt, its storage.
    const gain = 2 * (supplyC - mean(transit, unit, Passed.supply, half / 2, half / 2));
    this.exchangerOutC = supplyC + gain;
    this.exchangerOutU = rectangular(Math.abs(gain));
  }

  private readHeat(transit: Transit, unit: number, way: TransitPlan): void {
    const { fromPlates, spreadFromPlates: half } = way;
    this.flowM3PerS = (2 * half * way.sliceM3) / stretch(transit, unit, Passed.seconds, fromPlates, half);
    if (!this.heatKnown) return;
    this.powerW = power(transit, unit, fromPlates, half);
    // Way and lags are known to a tenth, both as slices at the flow of then.
    const slices = transitHalfWidth * (fromPlates + (way.lagS * this.flowM3PerS) / way.sliceM3);
    this.powerU = halfway(
      power(transit, unit, Math.max(half, fromPlates - slices), half),
      power(transit, unit, fromPlates + slices, half),
    );
  }
}

const shorter = 1 - transitHalfWidth;
const longer = 1 + transitHalfWidth;

const stretch = (transit: Transit, unit: number, column: 0 | 1 | 2 | 3, back: number, half: number): number =>
  transit.between(unit, column, back - half, back + half);

/** Mean over the slices by which a front spreads. */
function mean(transit: Transit, unit: number, column: 0 | 1, back: number, half: number): number {
  const reach = Math.max(half, 0.5);
  return stretch(transit, unit, column, Math.max(back, reach), reach) / (2 * reach);
}

const power = (transit: Transit, unit: number, back: number, half: number): number =>
  stretch(transit, unit, Passed.joules, back, half) / stretch(transit, unit, Passed.seconds, back, half);

/** u of a value that lies between these two: of the shorter and of the longer way. */
const halfway = (one: number, other: number): number => rectangular(Math.abs(one - other) / 2);
