/** Acceptance grades of a pump test: what its figures may be off, as shares (±; of the efficiency below only). */
export const pumpGradeIds = ['1B', '2B', '3B', '1 (1999)', '2 (1999)'] as const;
export type PumpGradeId = (typeof pumpGradeIds)[number];

/** ISO 9906:2012 table 8 (1B and 3B from memory); grades 1 and 2 of ISO 9906:1999 table 10. */
export const pumpGrades: Readonly<
  Record<PumpGradeId, { readonly flow: number; readonly head: number; readonly efficiency: number }>
> = {
  '1B': { flow: 0.05, head: 0.03, efficiency: 0.03 },
  '2B': { flow: 0.08, head: 0.05, efficiency: 0.05 },
  '3B': { flow: 0.09, head: 0.07, efficiency: 0.07 },
  '1 (1999)': { flow: 0.045, head: 0.03, efficiency: 0.03 },
  '2 (1999)': { flow: 0.08, head: 0.05, efficiency: 0.05 },
};
