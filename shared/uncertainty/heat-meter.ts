/** Flow sensors of heat meters: ±(ofReading + ofPermanent·q_p/q) %, at most `most` %. Classes 1 and 3 from memory. */
export const meterClasses = {
  1: { ofReading: 1, ofPermanent: 0.01, most: 3.5 },
  2: { ofReading: 2, ofPermanent: 0.02, most: 5 },
  3: { ofReading: 3, ofPermanent: 0.05, most: 5 },
} as const;

export type MeterClass = keyof typeof meterClasses;

/** Largest error that a flow sensor of the class may show, %: EN 1434-1; Directive 2014/32/EU, annex VI. `share` = q_p/q. */
export const flowSensorError = (grade: MeterClass, share: number): number =>
  Math.min(meterClasses[grade].most, meterClasses[grade].ofReading + meterClasses[grade].ofPermanent * share);

/** The same for a pair of temperature sensors, %: ±(0.5 + 3 ΔΘ_min/ΔΘ). `share` = ΔΘ_min/ΔΘ, 0 to 1. */
export const temperaturePairError = (share: number): number => 0.5 + 3 * share;

/** The same for the calculator, %: ±(0.5 + ΔΘ_min/ΔΘ). */
export const calculatorError = (share: number): number => 0.5 + share;

/** The three together, %: they add (Directive 2014/32/EU, annex VI, 7). */
export const heatMeterError = (grade: MeterClass, flowShare: number, differenceShare: number): number =>
  flowSensorError(grade, flowShare) + temperaturePairError(differenceShare) + calculatorError(differenceShare);
