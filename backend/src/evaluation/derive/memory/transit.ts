import { laggedShare } from '@ebbline/shared/heat/first-order-lag';

const length = 128;
const mask = length - 1;

/** Farthest that can be looked back, in slices. */
export const longestBack = length - 2;

/** A gap of telemetry shorter than this is bridged with what was seen last, s: own rule, a fifth of a usual transit. */
const longestHeldS = 10;

/** What is summed up over passed water: temperature of supply and of return × slices, seconds, joules made in the chips. */
export const Passed = { supply: 0, returned: 1, seconds: 2, joules: 3 } as const;
type Column = (typeof Passed)[keyof typeof Passed];
const width = 4;

/** What a step brought; NaN where it is not known. */
export interface TransitSample {
  flowM3PerS: number;
  supplyC: number;
  returnC: number;
  heatW: number;
}

/**
 * What the water of each unit carried, slice by slice of passed volume. By volume, not by time: water that stands stays where it is,
 * and a change of flow moves nothing. At the edge of each slice stand the sums up to it, so that the mean over any stretch
 * is one subtraction.
 */
export class Transit {
  private readonly edges: Float64Array;
  private readonly sums: Float64Array;
  /** Slices passed so far, and when the temperatures or the heat were last not known. */
  private readonly passed: Float64Array;
  private readonly since: Float64Array;
  private readonly heatSince: Float64Array;
  private readonly held: Float64Array;
  private readonly heldMs: Float64Array;
  private readonly heatHeldMs: Float64Array;
  private readonly pushedMs: Float64Array;
  /** Heat as the plates give it to the water, and as the sensor sees it. */
  private readonly lagged: Float64Array;
  private readonly sliceM3: Float64Array;

  constructor(units: number) {
    const unknown = (cells: number): Float64Array => new Float64Array(units * cells).fill(Number.NaN);
    this.edges = new Float64Array(units * length * width);
    this.sums = new Float64Array(units * width);
    this.passed = new Float64Array(units);
    this.since = new Float64Array(units);
    this.heatSince = new Float64Array(units);
    this.held = unknown(width);
    this.heldMs = unknown(1);
    this.heatHeldMs = unknown(1);
    this.pushedMs = unknown(1);
    this.lagged = unknown(2);
    this.sliceM3 = unknown(1);
  }

  /** Takes what a step brought. Heat made in the chips comes late by the plate's time constant and by the sensor's, one behind the other. */
  push(
    unit: number,
    nowMs: number,
    sliceM3: number,
    sample: TransitSample,
    plateLagS: number,
    sensorLagS: number,
  ): void {
    const elapsedS = (nowMs - (this.pushedMs[unit] as number)) / 1000;
    this.pushedMs[unit] = nowMs;
    const follows = elapsedS > 0 && elapsedS <= longestHeldS && this.sliceM3[unit] === sliceM3;
    this.sliceM3[unit] = sliceM3;
    const at = unit * width;
    if (!Number.isNaN(sample.flowM3PerS + sample.supplyC + sample.returnC)) {
      this.held[at] = sample.supplyC;
      this.held[at + 1] = sample.returnC;
      this.held[at + 2] = Math.max(0, sample.flowM3PerS) / sliceM3;
      this.heldMs[unit] = nowMs;
    }
    if (!Number.isNaN(sample.heatW)) {
      this.held[at + 3] = sample.heatW;
      this.heatHeldMs[unit] = nowMs;
    }
    const known = follows && nowMs - (this.heldMs[unit] as number) <= longestHeldS * 1000;
    const heatKnown = known && nowMs - (this.heatHeldMs[unit] as number) <= longestHeldS * 1000;
    if (!heatKnown) this.lagged.fill(Number.NaN, unit * 2, unit * 2 + 2);
    const warmed = this.lag(unit * 2, this.held[at + 3] as number, elapsedS, plateLagS);
    const heatW = this.lag(unit * 2 + 1, warmed, elapsedS, sensorLagS);
    if (known) this.move(unit, (this.held[at + 2] as number) * elapsedS, elapsedS, heatKnown ? heatW * elapsedS : 0);
    if (!known) this.since[unit] = this.passed[unit] as number;
    if (!heatKnown) this.heatSince[unit] = this.passed[unit] as number;
  }

  /** What lies before now is no longer comparable: the water stood, and took on what lies around it. */
  forget(unit: number): void {
    this.since[unit] = this.passed[unit] as number;
    this.heatSince[unit] = this.passed[unit] as number;
  }

  /** Whether temperatures and flow, or the heat too, are known so many slices back. */
  isKnown(unit: number, back: number, heat: boolean): boolean {
    const since = (heat ? this.heatSince : this.since)[unit] as number;
    return (this.passed[unit] as number) - since >= back;
  }

  /** Sum over the slices between `from` and `to` back from now; `from` below `to`, at most `longestBack`. */
  between(unit: number, column: Column, from: number, to: number): number {
    return this.sumAt(unit, column, from) - this.sumAt(unit, column, to);
  }

  private sumAt(unit: number, column: Column, back: number): number {
    const passed = this.passed[unit] as number;
    const now = this.sums[unit * width + column] as number;
    if (back <= 0) return now;
    const place = passed - back;
    const edge = Math.floor(place);
    const before = this.edges[(unit * length + (edge & mask)) * width + column] as number;
    const whole = edge + 1 <= passed;
    const after = whole ? (this.edges[(unit * length + ((edge + 1) & mask)) * width + column] as number) : now;
    const span = whole ? 1 : passed - edge;
    return span > 0 ? before + ((after - before) * (place - edge)) / span : before;
  }

  /** A first-order lag over one step; what comes in stands still within it. */
  private lag(place: number, value: number, elapsedS: number, lagS: number): number {
    const before = this.lagged[place] as number;
    const lagged = Number.isNaN(before) ? value : before + (value - before) * laggedShare(elapsedS, lagS);
    this.lagged[place] = lagged;
    return lagged;
  }

  private move(unit: number, slices: number, seconds: number, joules: number): void {
    const { sums, edges } = this;
    const at = unit * width;
    const passed = this.passed[unit] as number;
    const reached = passed + slices;
    const supply = slices * (this.held[at] as number);
    const returned = slices * (this.held[at + 1] as number);
    for (let edge = Math.max(Math.floor(passed) + 1, Math.floor(reached) - mask); edge <= reached; edge += 1) {
      const share = (edge - passed) / slices;
      const to = (unit * length + (edge & mask)) * width;
      edges[to] = (sums[at] as number) + supply * share;
      edges[to + 1] = (sums[at + 1] as number) + returned * share;
      edges[to + 2] = (sums[at + 2] as number) + seconds * share;
      edges[to + 3] = (sums[at + 3] as number) + joules * share;
    }
    sums[at] = (sums[at] as number) + supply;
    sums[at + 1] = (sums[at + 1] as number) + returned;
    sums[at + 2] = (sums[at + 2] as number) + seconds;
    sums[at + 3] = (sums[at + 3] as number) + joules;
    this.passed[unit] = reached;
  }
}
