import { reasonBit } from './quality-reasons';

/**
 * The newest value of every point of the site, as columns. A slot is an index into them; the site
 * compiles once to slots (`CompiledSite`). Written in place by the steps that own it; no object a sample.
 */
export interface SlotState {
  /** SI or °C as the point table says; NaN where there is no value. */
  readonly value: Float64Array;
  /** Source time, ms since 1970 UTC; NaN where none was received (or the age is unknown). */
  readonly sourceMs: Float64Array;
  /** Tick time (see `pipeline/inputs.ts`) when the newest sample was accepted; NaN before the first. */
  readonly acceptedMs: Float64Array;
  /** Tick time since when the value has not changed; NaN before the first. */
  readonly unchangedSinceMs: Float64Array;
  /** Bits of `reasonBit`; 0 = good. */
  readonly reasons: Uint32Array;
  /** U = k u for 95.45 %, same unit as the value; NaN where unknown. k = 2 but where `degreesOfFreedom` are few. */
  readonly expandedUncertainty: Float64Array;
  /** Effective degrees of freedom of the uncertainty (Welch–Satterthwaite, GUM G.4.1), rounded down; Infinity where k = 2. */
  readonly degreesOfFreedom: Float64Array;
  /** What decides the value (a node, branch or wall): index into the holder's `places`, −1 = none. */
  readonly where: Int32Array;
}

export function createSlotState(slots: number): SlotState {
  return {
    value: new Float64Array(slots).fill(Number.NaN),
    sourceMs: new Float64Array(slots).fill(Number.NaN),
    acceptedMs: new Float64Array(slots).fill(Number.NaN),
    unchangedSinceMs: new Float64Array(slots).fill(Number.NaN),
    reasons: new Uint32Array(slots).fill(reasonBit.notReceived),
    expandedUncertainty: new Float64Array(slots).fill(Number.NaN),
    degreesOfFreedom: new Float64Array(slots).fill(Infinity),
    where: new Int32Array(slots).fill(-1),
  };
}
