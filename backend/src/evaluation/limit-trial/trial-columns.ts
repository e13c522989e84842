/** A stretch of recorded time, column by column in the order of the trial's slots. */
export interface TrialColumns {
  readonly startMs: number;
  /** 1000, or 60,000 where only minutes are left. */
  readonly stepMs: number;
  readonly count: number;
  /** NaN where nothing was measured, or bad. */
  readonly values: readonly Float64Array[];
  /** 0 nothing, 1 good, 2 uncertain, 3 bad. */
  readonly quality: readonly Uint8Array[];
}

/** One entry run over one unit's recorded points with two settings side by side. */
export interface UnitTrial {
  /** Slots of the unit's own site (`siteOfUnit`) whose columns it needs, in that order. */
  readonly slots: Int32Array;
  /** Derived points whose uncertainty the rule keeps as a guard, and history has not. */
  readonly guards: readonly number[];
  /** Expanded uncertainty that holds from now on. */
  setUncertainty(slot: number, expanded: number): void;
  /** Judges places [from, to) of the columns. */
  run(columns: TrialColumns, from: number, to: number): void;
  /** Steps with data, and without. */
  readonly judgedMs: number;
  readonly missingMs: number;
}
