/** Both sides of the exchanger between loop and facility water, in counterflow. Written in place. */
export interface Exchanger {
  /**
   * Loop water into and out of the exchanger, °C, and what its way between the sensors and the exchanger adds to that of their readings, K:
   * 0 where they are taken as they read, as the site file states no volume of the unit.
   */
  loopInC: number;
  loopOutC: number;
  loopInWayU: number;
  loopOutWayU: number;
  /** Terminal differences, K: at the loop's return and at its supply end. */
  warmEnd: number;
  coldEnd: number;
  warmEndU: number;
  coldEndU: number;
  /** Capacity rates, W/K. */
  loopRate: number;
  facilityRate: number;
  /** Heat that goes over, W: of the two sides, each by its certainty (1/u²), or the loop's where the other is not metered. */
  heat: number;
  heatU: number;
  loopHeat: number;
  facilityHeat: number;
  /** Share of the loop's figure in `heat`, 0 to 1. */
  loopWeight: number;
  /** Relative standard uncertainty of each side's heat without its thermometers. */
  loopRestU: number;
  facilityRestU: number;
}

export const emptyExchanger = (): Exchanger => ({
  loopInC: Number.NaN,
  loopOutC: Number.NaN,
  loopInWayU: Number.NaN,
  loopOutWayU: Number.NaN,
  warmEnd: Number.NaN,
  coldEnd: Number.NaN,
  warmEndU: Number.NaN,
  coldEndU: Number.NaN,
  loopRate: Number.NaN,
  facilityRate: Number.NaN,
  heat: Number.NaN,
  heatU: Number.NaN,
  loopHeat: Number.NaN,
  facilityHeat: Number.NaN,
  loopWeight: Number.NaN,
  loopRestU: Number.NaN,
  facilityRestU: Number.NaN,
});
