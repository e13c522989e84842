/** A gas flow as free air, m³/s, with its standard uncertainty; NaN where it can't be known. */
export interface GasFlow {
  value: number;
  u: number;
}
