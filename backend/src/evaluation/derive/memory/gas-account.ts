/** The gas of the last fill goes out in this time at the soonest, s: own rule (the delay of AIR-2). */
const releaseS = 1800;
/** Pockets and dead legs go on for days: what is left of a budget fades so, s. Own rule. */
const fadeS = 3 * 86_400;

/**
 * Gas that a unit's source may carry without anyone having to look: permits for open branches, and what the water of the last
 * fill still holds. The pipeline sets the permits; fills are added by who sees them.
 */
export class GasAccount {
  /** Expected in-leak of all open permits of a unit, free m³/s. */
  readonly permitM3PerS: Float64Array;
  /** What the last fills may still release, free m³. */
  readonly budgetM3: Float64Array;

  constructor(units: number) {
    this.permitM3PerS = new Float64Array(units);
    this.budgetM3 = new Float64Array(units);
  }

  setPermits(unit: number, freeM3PerS: number): void {
    this.permitM3PerS[unit] = freeM3PerS;
  }

  addFill(unit: number, freeM3: number): void {
    if (freeM3 > 0) this.budgetM3[unit] = (this.budgetM3[unit] as number) + freeM3;
  }

  /** The rate that the budget explains now, free m³/s. */
  budgetRate(unit: number): number {
    return (this.budgetM3[unit] as number) / releaseS;
  }

  /** Takes what came above everything else that is accounted for; NaN takes nothing. */
  spend(unit: number, excessM3PerS: number, seconds: number): void {
    const left = this.budgetM3[unit] as number;
    if (left === 0) return;
    const spent = excessM3PerS > 0 ? excessM3PerS * seconds : 0;
    this.budgetM3[unit] = Math.max(0, left * (1 - seconds / fadeS) - spent);
  }
}
