/** When machines of a unit stopped and when their standby last ran; tick time, NaN where it was not seen. */
export interface RunMemory {
  readonly pumpStoppedMs: Float64Array;
  readonly vacuumStoppedMs: Float64Array;
  /** When power of the unit was last seen lost, while that event lasts: pump and source stopped together. */
  readonly powerLostMs: Float64Array;
  /** When something stops to be the consequence of an alarm that is over, so that it has to be looked at again; NaN: nothing is. */
  readonly foldEndsMs: Float64Array;
  /** Since when a mode point says that the unit starts, or comes back after a loss of power; NaN while it does not. */
  readonly startsSinceMs: Float64Array;
  /** The last second in which the loop stood as it was meant to; `stands`: 1 while it does. */
  readonly stoodMs: Float64Array;
  readonly stands: Uint8Array;
  readonly pumpWasRunning: Uint8Array;
  readonly vacuumWasRunning: Uint8Array;
  /** Return less supply temperature over the last seconds in which the pump ran, K; NaN where one of them was bad. */
  readonly heatInWaterK: Float64Array;
  /** The same for whichever pump carries the loop, lead or standby: when the last of them stopped, and with what heat in the water. */
  readonly loopStoppedMs: Float64Array;
  readonly loopWasRunning: Uint8Array;
  readonly loopHeatK: Float64Array;
  /** 1: the standby was the last pump seen to run, without the lead. */
  readonly standbyWasLast: Uint8Array;
  /** Separator pressure when the vacuum source stopped, Pa. */
  readonly pressureAtStop: Float64Array;
  /** When the standby was last seen to run, or since when it is watched. */
  readonly pumpStandbyProvedMs: Float64Array;
  readonly vacuumStandbyProvedMs: Float64Array;
}

export function createRunMemory(units: number): RunMemory {
  const never = (): Float64Array => new Float64Array(units).fill(Number.NaN);
  return {
    pumpStoppedMs: never(),
    vacuumStoppedMs: never(),
    powerLostMs: never(),
    foldEndsMs: never(),
    startsSinceMs: never(),
    stoodMs: never(),
    stands: new Uint8Array(units),
    pumpWasRunning: new Uint8Array(units),
    vacuumWasRunning: new Uint8Array(units),
    heatInWaterK: never(),
    loopStoppedMs: never(),
    loopWasRunning: new Uint8Array(units),
    loopHeatK: never(),
    standbyWasLast: new Uint8Array(units),
    pressureAtStop: never(),
    pumpStandbyProvedMs: never(),
    vacuumStandbyProvedMs: never(),
  };
}
