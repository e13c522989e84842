import { BlockMeans } from './block-means';
import { GasAccount } from './gas-account';
import { OffTests } from './off-tests';
import { PatternWatch } from './pattern-watch';
import { SecondWindows } from './second-windows';
import { ShiftWatch } from './shift-watch';
import { TopUps } from './top-ups';
import { Transit } from './transit';
import { Trend } from './trend';

/** Signals of a unit that are watched second by second. */
export const WindowSignal = { supplyLevel: 0, separatorLevel: 1, gasContent: 2, gasRemoved: 3, tankVolume: 4 } as const;
const signals = 5;

/** Steps of a unit that lie further apart are not comparable second by second: windows start anew. */
const longestStepMs = 1500;

/** All that the derived points of a site remember between seconds, columns by unit. Owned by one pipeline, written in place. */
export class DeriveMemory {
  readonly windows: SecondWindows;
  readonly transit: Transit;
  readonly offTests: OffTests;
  readonly gas: GasAccount;
  readonly topUps: TopUps;
  /** Margin over four hours, filter over two days, water of the loop less what was topped up over a day. */
  readonly marginTrend: Trend;
  readonly filterTrend: Trend;
  readonly waterTrend: Trend;
  /** Water that gas has carried out of each unit since the start, m³; and the day's trend of what nothing explains. */
  readonly waterLossM3: Float64Array;
  readonly balanceTrend: Trend;
  /** In-leak over two days; exchanger and plates, which foul slowly, over two weeks. */
  readonly inLeakTrend: Trend;
  readonly uaTrend: Trend;
  readonly plateTrend: Trend;
  /** What is held against the known-good period, and from when that period is. */
  readonly watch: BlockMeans;
  readonly shifts: ShiftWatch;
  readonly pattern: PatternWatch;
  readonly goodFromMs: Float64Array;
  /** Value of `mode` at the last step; NaN where it was not known. */
  readonly lastMode: Float64Array;
  private readonly steppedMs: Float64Array;

  constructor(units: number) {
    this.windows = new SecondWindows(units * signals);
    this.transit = new Transit(units);
    this.offTests = new OffTests(units);
    this.gas = new GasAccount(units);
    this.topUps = new TopUps(units);
    this.marginTrend = new Trend(units, { stepMs: 600_000, length: 24 });
    this.filterTrend = new Trend(units, { stepMs: 3_600_000, length: 48 });
    this.waterTrend = new Trend(units, { stepMs: 3_600_000, length: 24 });
    this.waterLossM3 = new Float64Array(units);
    this.balanceTrend = new Trend(units, { stepMs: 3_600_000, length: 24 });
    this.inLeakTrend = new Trend(units, { stepMs: 3_600_000, length: 48 });
    this.uaTrend = new Trend(units, { stepMs: 21_600_000, length: 56 });
    this.plateTrend = new Trend(units, { stepMs: 21_600_000, length: 56 });
    this.watch = new BlockMeans(units);
    this.shifts = new ShiftWatch(units);
    this.pattern = new PatternWatch(units);
    this.goodFromMs = new Float64Array(units).fill(Number.NaN);
    this.lastMode = new Float64Array(units).fill(Number.NaN);
    this.steppedMs = new Float64Array(units).fill(Number.NaN);
  }

  signal(unit: number, signal: (typeof WindowSignal)[keyof typeof WindowSignal]): number {
    return unit * signals + signal;
  }

  /** Time of the unit's last step, ms; NaN before the first. */
  steppedAt(unit: number): number {
    return this.steppedMs[unit] as number;
  }

  addWaterLoss(unit: number, m3: number): void {
    this.waterLossM3[unit] = (this.waterLossM3[unit] as number) + m3;
  }

  /** Seconds since the unit's last step, 0 where this one was taken already. Windows are forgotten over a gap. */
  advance(unit: number, nowMs: number): number {
    const elapsedMs = nowMs - (this.steppedMs[unit] as number);
    if (elapsedMs <= 0) return 0;
    this.steppedMs[unit] = nowMs;
    if (elapsedMs <= longestStepMs) return elapsedMs / 1000;
    this.windows.forget(unit * signals, signals);
    this.offTests.interrupt(unit);
    return 1;
  }
}
