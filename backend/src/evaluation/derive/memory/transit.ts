const mask = 255;

/** Supply temperature of the last 256 seconds of every unit: what returns now left some time ago. */
export class Transit {
  private readonly temperature: Float32Array;
  private readonly heads: Uint8Array;

  constructor(units: number) {
    this.temperature = new Float32Array(units * (mask + 1)).fill(Number.NaN);
    this.heads = new Uint8Array(units);
  }

  push(unit: number, temperature: number): void {
    const head = ((this.heads[unit] as number) + 1) & mask;
    this.heads[unit] = head;
    this.temperature[unit * (mask + 1) + head] = temperature;
  }

  /** Supply temperature `seconds` ago; NaN where it is not known. Longer ago than the ring holds, the oldest. */
  at(unit: number, seconds: number): number {
    const age = Math.min(mask, Math.round(seconds));
    return this.temperature[unit * (mask + 1) + (((this.heads[unit] as number) - age) & mask)] as number;
  }

  forget(unit: number): void {
    this.temperature.fill(Number.NaN, unit * (mask + 1), (unit + 1) * (mask + 1));
  }
}
