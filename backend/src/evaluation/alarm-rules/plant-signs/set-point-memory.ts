import { Verdict } from '../verdict';

/** Set points as people know them, and since when each is another; by unit and set point. */
export interface SetPointMemory {
  readonly known: Float64Array;
  /** Tick time; NaN where it is as known. */
  readonly changedMs: Float64Array;
}

export const SetPoint = { supply: 0, supplyTank: 1, separator: 2 } as const;
export type SetPoint = (typeof SetPoint)[keyof typeof SetPoint];
export const setPointCount = 3;

export function createSetPointMemory(units: number): SetPointMemory {
  return {
    known: new Float64Array(units * setPointCount).fill(Number.NaN),
    changedMs: new Float64Array(units * setPointCount).fill(Number.NaN),
  };
}

/**
 * Follows one set point: yes while it is another than the one known, until `rememberMs` have passed and the new one is the one
 * known. A value that is bad changes nothing, and says nothing of whether it is as known.
 */
export function followSetPoint(
  memory: SetPointMemory,
  place: number,
  value: number,
  least: number,
  nowMs: number,
  rememberMs: number,
): Verdict {
  const known = memory.known[place] as number;
  if (Number.isNaN(value)) return Number.isNaN(memory.changedMs[place]) ? Verdict.hold : Verdict.yes;
  if (Number.isNaN(known)) memory.known[place] = value;
  if (Number.isNaN(known) || Math.abs(value - known) < least) {
    memory.changedMs[place] = Number.NaN;
    return Verdict.no;
  }
  if (Number.isNaN(memory.changedMs[place])) memory.changedMs[place] = nowMs;
  if (nowMs - (memory.changedMs[place] as number) < rememberMs) return Verdict.yes;
  memory.known[place] = value;
  memory.changedMs[place] = Number.NaN;
  return Verdict.no;
}
