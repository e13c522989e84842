/**
 * The last seconds of many signals, one sample a tick, as rings in one array. A signal's ring is written by
 * `push` in order and read by age: 0 is the newest. NaN where nothing was known.
 */
export class SecondRings {
  private readonly values: Float64Array;
  private readonly heads: Uint8Array;

  constructor(
    signals: number,
    readonly length: number,
  ) {
    this.values = new Float64Array(signals * length).fill(Number.NaN);
    this.heads = new Uint8Array(signals);
  }

  push(signal: number, value: number): void {
    const head = ((this.heads[signal] as number) + 1) % this.length;
    this.heads[signal] = head;
    this.values[signal * this.length + head] = value;
  }

  /** The value `age` ticks ago; `age` < length. */
  at(signal: number, age: number): number {
    const place = ((this.heads[signal] as number) + this.length - age) % this.length;
    return this.values[signal * this.length + place] as number;
  }

  /** Mean of the values from `fromAge` to `toAge` ticks ago, both counted; NaN where one is. */
  mean(signal: number, fromAge: number, toAge: number): number {
    let sum = 0;
    for (let age = fromAge; age <= toAge; age += 1) sum += this.at(signal, age);
    return sum / (toAge - fromAge + 1);
  }

  /** Forgets `count` signals from `first` on: what lies before a gap is no longer comparable. */
  forget(first: number, count: number): void {
    this.values.fill(Number.NaN, first * this.length, (first + count) * this.length);
  }
}
