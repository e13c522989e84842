/** Affinity of one pump at two speeds at the same ratio of flow to speed: q ~ n, Δp ~ n², P ~ n³ (ISO 9906:2012, conversion to another speed). */
export const flowAtSpeed = (flow: number, speedRatio: number): number => flow * speedRatio;
export const riseAtSpeed = (rise: number, speedRatio: number): number => rise * speedRatio * speedRatio;
export const powerAtSpeed = (power: number, speedRatio: number): number => power * speedRatio ** 3;

/** Pressure rise now over the commissioned one at this speed; holds at the commissioned ratio of flow to speed. */
export const headRatio = (rise: number, commissionedRise: number, speedRatio: number): number =>
  rise / riseAtSpeed(commissionedRise, speedRatio);
