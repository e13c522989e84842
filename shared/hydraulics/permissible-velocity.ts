/** Most that water may flow through copper for years, by temperature; a site chooses the table by which it was built. */
export const velocityTableIds = ['copperHandbook', 'copperBs6700', 'copperSwedish'] as const;
export type VelocityTableId = (typeof velocityTableIds)[number];

export interface VelocityTable {
  readonly material: 'copper';
  readonly source: string;
  /** Rows of temperature, °C, and velocity, m/s: steps hold up to their temperature, lines join. */
  readonly form: 'steps' | 'line';
  readonly rows: readonly (readonly [celsius: number, metrePerSecond: number])[];
}

export const velocityTables: Readonly<Record<VelocityTableId, VelocityTable>> = {
  copperHandbook: {
    material: 'copper',
    source: 'Copper Development Association, Copper Tube Handbook: 8 ft/s cold, 5 ft/s hot, 2 to 3 ft/s above 60 °C',
    form: 'steps',
    // Where cold ends the handbook does not say: 25 °C, which EN 806-2 has as the warmest cold water (from memory).
    rows: [
      [25, 2.4],
      [60, 1.5],
      [100, 0.9],
    ],
  },
  copperBs6700: {
    material: 'copper',
    source: 'BS 6700, maximum water velocities in pipes',
    form: 'line',
    rows: [
      [10, 3],
      [50, 3],
      [70, 2.5],
      [90, 2],
    ],
  },
  copperSwedish: {
    material: 'copper',
    source:
      'Swedish recommendation for copper pipes that can not be replaced, as references on erosion corrosion quote it',
    form: 'line',
    rows: [
      [10, 2],
      [50, 1.5],
      [70, 1.3],
      [90, 1],
    ],
  },
};

/** Permissible velocity at a temperature, m/s; colder than the first row as there, NaN above the last. */
export function permissibleVelocity({ form, rows }: VelocityTable, celsius: number): number {
  let before = rows[0];
  for (const row of rows) {
    if (before === undefined || celsius <= row[0]) {
      if (form === 'steps' || before === undefined || row === before || celsius <= before[0]) return row[1];
      return before[1] + ((row[1] - before[1]) * (celsius - before[0])) / (row[0] - before[0]);
    }
    before = row;
  }
  return Number.NaN;
}
