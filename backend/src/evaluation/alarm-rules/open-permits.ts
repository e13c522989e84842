/** What open and overdue permits allow, columns by unit; kept by the pipeline as permits come and go. */
export class OpenPermits {
  /** Open permits of the unit. */
  readonly count: Uint16Array;
  /** In-leak that all of them together expect, free m³/s. */
  readonly expectedM3PerS: Float64Array;
  /** Gas load before the work that is open began, free m³/s; NaN where it was not known. */
  readonly baselineM3PerS: Float64Array;
  /** 1 = one of them is for the whole loop. */
  readonly wholeLoop: Uint8Array;
  /** When the first of them is due, ms; NaN where none is open. */
  readonly dueMs: Float64Array;
  /** When the one for the whole loop is due, ms; NaN where none is open. */
  readonly wholeLoopDueMs: Float64Array;
  private readonly branches: (readonly number[])[];

  constructor(units: number) {
    this.count = new Uint16Array(units);
    this.expectedM3PerS = new Float64Array(units);
    this.baselineM3PerS = new Float64Array(units).fill(Number.NaN);
    this.wholeLoop = new Uint8Array(units);
    this.dueMs = new Float64Array(units).fill(Number.NaN);
    this.wholeLoopDueMs = new Float64Array(units).fill(Number.NaN);
    this.branches = Array.from({ length: units }, () => nothing);
  }

  /** Indices of the unit's branches that have a permit of their own. */
  branchesOf(unit: number): readonly number[] {
    return this.branches[unit] ?? nothing;
  }

  setBranches(unit: number, branches: readonly number[]): void {
    this.branches[unit] = branches;
  }
}

const nothing: readonly number[] = [];
