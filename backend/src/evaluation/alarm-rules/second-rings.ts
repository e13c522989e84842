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

  /** Gives the value that was the newest before. */
  push(signal: number, value: number): number {
    const first = signal * this.length;
    const last = this.heads[signal] as number;
    // No remainder of a division: that alone would cost more than the rest.
    const head = last + 1 === this.length ? 0 : last + 1;
    const before = this.values[first + last] as number;
    this.heads[signal] = head;
    this.values[first + head] = value;
    return before;
  }

  /** The value `age` ticks ago; `age` < length. */
  at(signal: number, age: number): number {
    const place = (this.heads[signal] as number) - age;
    return this.values[signal * this.length + (place < 0 ? place + this.length : place)] as number;
  }

  /** Mean of the values from `fromAge` to `toAge` ticks ago, both counted; NaN where one is. */
  mean(signal: number, fromAge: number, toAge: number): number {
    const first = signal * this.length;
    let place = (this.heads[signal] as number) - fromAge;
    if (place < 0) place += this.length;
    let sum = 0;
    for (let age = fromAge; age <= toAge; age += 1) {
      sum += this.values[first + place] as number;
      place = place === 0 ? this.length - 1 : place - 1;
    }
    return sum / (toAge - fromAge + 1);
  }

  /** Sum of the newest values, each times the weight of its age; NaN where one is. */
  weighted(signal: number, weightOfAge: Float64Array): number {
    const first = signal * this.length;
    let place = this.heads[signal] as number;
    let sum = 0;
    for (let age = 0; age < weightOfAge.length; age += 1) {
      sum += (weightOfAge[age] as number) * (this.values[first + place] as number);
      place = place === 0 ? this.length - 1 : place - 1;
    }
    return sum;
  }

  /** Forgets `count` signals from `first` on: what lies before a gap is no longer comparable. */
  forget(first: number, count: number): void {
    this.values.fill(Number.NaN, first * this.length, (first + count) * this.length);
  }
}
