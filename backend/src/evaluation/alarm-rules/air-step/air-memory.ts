import type { CompiledUnit } from '../../site/compiled-site';
import { NoiseTable } from '../noise';
import { SecondRings } from '../second-rings';
import { stepRingLength } from '../step';

/** The signals of one unit that tell of air, in this order; behind them flow and return pressure of each branch. */
export const AirSignal = {
  /** Derived gas load, m³/s of free air. */
  gasLoad: 0,
  /** Vacuum source speed, 1. */
  vacuumSpeed: 1,
  /** Water in separator and supply tank, m³: gas in the pipes pushes it there. */
  tankWater: 2,
  /** Return flow less supply flow, m³/s: the surge in front of the gas. */
  returnExcess: 3,
  /** Separator pressure, Pa: guards the others. */
  separatorPressure: 4,
  /** Loop flow, m³/s: guards the others. */
  loopFlow: 5,
  /** Vapour pressure of the return water, Pa: its rise pushes dry gas out of the separator although none comes in. */
  vapourPressure: 6,
  /** Water in the separator, m³: what rises there pushes gas out although none comes in. */
  separatorWater: 7,
  /** Water in the tanks of all units on the loop, m³: guards the tank water. */
  loopWater: 8,
} as const;
export const airSignalCount = 9;

/** What AIR-1 remembers: the last twelve seconds of every signal, and what they were before the step. */
export interface AirMemory {
  readonly rings: SecondRings;
  readonly noise: NoiseTable;
  /** First signal of each unit. */
  readonly firstSignal: Int32Array;
  readonly branchCount: Int32Array;
  /** 1 = the newest separator pressure rests on an estimate of ambient. */
  readonly estimated: Uint8Array;
  /** When the loop's flow last was starting or stopping, tick time; NaN where it never did. */
  readonly flowMovedMs: Float64Array;
  /** When much water last went from tank to tank, so that gas went with it; as above. */
  readonly waterMovedMs: Float64Array;
  /** Gas load, and tank water, before the step that raised the alarm; NaN where none stands or a restart lost it. */
  readonly gasBefore: Float64Array;
  readonly waterBefore: Float64Array;
  /** How far the other branches stood over the separator then, Pa, with alternating tanks; as above. */
  readonly neighboursBefore: Float64Array;
  /** With alternating tanks: the highest set point of the separator in the running cycle and in the one before, Pa; NaN: not known. */
  readonly setPointOfSpan: Float64Array;
  readonly setPointBefore: Float64Array;
  /** Since when the separator stands at the pressure at which a standby source is called, tick time; NaN while it does not. */
  readonly calledMs: Float64Array;
  /** Separator pressure from which it rises, Pa; NaN where it does not. */
  readonly roseFromPa: Float64Array;
  /** Since when it stands still where it has risen to, tick time; NaN while it does not. */
  readonly stillSinceMs: Float64Array;
  /** When the newest step was told, tick time, and gas load before it; NaN as above. */
  readonly stepMs: Float64Array;
  readonly gasBeforeNewest: Float64Array;
  /** Branch named at the strongest moment of the step so far, −1 none; and how strong that was. */
  readonly namedBranch: Int32Array;
  readonly namedScore: Float64Array;
}

export function createAirMemory(units: readonly CompiledUnit[]): AirMemory {
  const firstSignal = new Int32Array(units.length);
  const branchCount = Int32Array.from(units, (unit) => unit.branches.length);
  let signals = 0;
  for (let unit = 0; unit < units.length; unit += 1) {
    firstSignal[unit] = signals;
    signals += airSignalCount + 2 * (branchCount[unit] as number);
  }
  return {
    rings: new SecondRings(signals, stepRingLength),
    noise: new NoiseTable(signals),
    firstSignal,
    branchCount,
    estimated: new Uint8Array(units.length),
    flowMovedMs: new Float64Array(units.length).fill(Number.NaN),
    waterMovedMs: new Float64Array(units.length).fill(Number.NaN),
    gasBefore: new Float64Array(units.length).fill(Number.NaN),
    waterBefore: new Float64Array(units.length).fill(Number.NaN),
    neighboursBefore: new Float64Array(units.length).fill(Number.NaN),
    setPointOfSpan: new Float64Array(units.length).fill(Number.NaN),
    setPointBefore: new Float64Array(units.length).fill(Number.NaN),
    calledMs: new Float64Array(units.length).fill(Number.NaN),
    roseFromPa: new Float64Array(units.length).fill(Number.NaN),
    stillSinceMs: new Float64Array(units.length).fill(Number.NaN),
    stepMs: new Float64Array(units.length).fill(Number.NaN),
    gasBeforeNewest: new Float64Array(units.length).fill(Number.NaN),
    namedBranch: new Int32Array(units.length).fill(-1),
    namedScore: new Float64Array(units.length),
  };
}

export const branchFlowSignal = (first: number, branch: number): number => first + airSignalCount + 2 * branch;
export const branchPressureSignal = (first: number, branch: number): number => first + airSignalCount + 2 * branch + 1;

/** After a gap in time nothing before it is comparable. */
export function forgetAir(memory: AirMemory, unit: number): void {
  const first = memory.firstSignal[unit] as number;
  memory.rings.forget(first, airSignalCount + 2 * (memory.branchCount[unit] as number));
  memory.calledMs[unit] = Number.NaN;
  memory.roseFromPa[unit] = Number.NaN;
  memory.stillSinceMs[unit] = Number.NaN;
}
