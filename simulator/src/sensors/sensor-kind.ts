/**
 * What sensors of each kind add to the truth, SI and K. Noise is the deviation at 1 s; accuracy the half-width
 * of what is drawn once; both a fixed part and a share of the reading. Common practice, no source.
 */
export interface SensorKind {
  readonly noise: number;
  readonly noiseShare: number;
  readonly accuracy: number;
  readonly accuracyShare: number;
  readonly lagS: number;
  /** Smallest step of what it tells; 0: as fine as the payload. */
  readonly resolution: number;
  /** Asked only so often, s. */
  readonly pollS: number;
  /** Reads nothing below this. */
  readonly blindBelow: number;
  /** Share of samples in which it repeats its last value. */
  readonly missingShare: number;
}

const plain: SensorKind = {
  noise: 0,
  noiseShare: 0,
  accuracy: 0,
  accuracyShare: 0,
  lagS: 0,
  resolution: 0,
  pollS: 1,
  blindBelow: -Infinity,
  missingShare: 0,
};

const kind = (own: Partial<SensorKind>): SensorKind => ({ ...plain, ...own });

export const sensorKinds = {
  pressure: kind({ noise: 50, accuracy: 400, lagS: 0.2 }),
  barometer: kind({ noise: 10, accuracy: 100, lagS: 1 }),
  /** Pt100 class A in a pocket, IEC 60751: ±(0.15 + 0.002 t). */
  temperature: kind({ noise: 0.015, accuracy: 0.15, accuracyShare: 0.002, lagS: 10 }),
  electromagneticFlow: kind({ noiseShare: 0.004, accuracyShare: 0.005, lagS: 2 }),
  ultrasonicFlow: kind({ noiseShare: 0.015, accuracyShare: 0.02, lagS: 8, missingShare: 0.001 }),
  exhaustFlow: kind({ noiseShare: 0.01, accuracyShare: 0.03, lagS: 2, blindBelow: 2 / 60000 }),
  level: kind({ noise: 0.0005, accuracy: 0.003, lagS: 1 }),
  pressureDrop: kind({ noise: 50, accuracy: 200, lagS: 0.5 }),
  chipTemperature: kind({ accuracy: 0.5, resolution: 1, pollS: 10 }),
  boardPower: kind({ noiseShare: 0.003, accuracyShare: 0.04, pollS: 10 }),
  powerMeter: kind({ noiseShare: 0.002, accuracyShare: 0.01 }),
  valve: kind({ noise: 0.001, accuracy: 0.01, lagS: 0.5 }),
  humidity: kind({ noise: 0.002, accuracy: 0.025, lagS: 20 }),
  conductivity: kind({ noiseShare: 0.003, accuracyShare: 0.03, lagS: 5 }),
  ph: kind({ noise: 0.005, accuracy: 0.1, lagS: 20 }),
  inhibitor: kind({ noiseShare: 0.01, accuracyShare: 0.05, lagS: 60 }),
  /** What a controller knows of itself. */
  exact: plain,
} as const satisfies Record<string, SensorKind>;

export type SensorKindName = keyof typeof sensorKinds;
