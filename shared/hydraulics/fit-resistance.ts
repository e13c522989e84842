/** One record of a segment: flow in m³/s and the pressure lost in it, Pa. */
export interface LossRecord {
  readonly flowM3PerS: number;
  readonly lossPa: number;
}

export interface ResistanceFit {
  readonly exponent: number;
  /** Loss at the flow that was asked for, Pa. */
  readonly lossPa: number;
}

/**
 * Fits Δp = R qⁿ to three or more records by a straight line through their logarithms (flow resistance of a commissioned segment;
 * turbulent n = 2, narrow channels and loaded filters 1 … 1.8). Null where the flows do not differ: from the least to the largest by
 * less than a fifth (own rule), as then the line has any slope.
 */
export function fitResistance(records: readonly LossRecord[], atFlowM3PerS: number): ResistanceFit | null {
  const flows = records.map(({ flowM3PerS }) => flowM3PerS);
  if (records.length < 3 || !(Math.max(...flows) >= leastSpread * Math.min(...flows))) return null;
  const x = flows.map((flow) => Math.log(flow / atFlowM3PerS));
  const y = records.map(({ lossPa }) => Math.log(lossPa));
  const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
  const meanX = mean(x);
  const meanY = mean(y);
  const over = x.reduce((sum, one, i) => sum + (one - meanX) * ((y[i] ?? Number.NaN) - meanY), 0);
  const under = x.reduce((sum, one) => sum + (one - meanX) ** 2, 0);
  const exponent = over / under;
  return { exponent, lossPa: Math.exp(meanY - exponent * meanX) };
}

const leastSpread = 1.2;
