/** IEC 60751:2022, tolerance classes of platinum resistance thermometers: ±(absolute + relative·|t|) K, t in °C. */
export const platinumClasses = {
  AA: { absolute: 0.1, relative: 0.0017 },
  A: { absolute: 0.15, relative: 0.002 },
  B: { absolute: 0.3, relative: 0.005 },
  C: { absolute: 0.6, relative: 0.01 },
} as const;

export type PlatinumClass = keyof typeof platinumClasses;

/** Half-width of what a platinum thermometer of a class may be off at `celsius`, K. */
export const platinumTolerance = (grade: PlatinumClass, celsius: number): number =>
  platinumClasses[grade].absolute + platinumClasses[grade].relative * Math.abs(celsius);
