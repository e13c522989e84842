import type { UnitEntryId } from './entry-ids';

/**
 * Consequences fold under their first-out, on the same unit: the first of these that is in alarm. They stay in the
 * list, marked. Beside these, COM-1 folds INS-1 of the points behind its gateway. A first-out never has a lower priority
 * than what it folds (`priorityOfEntry`).
 */
export const foldsUnder: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  /** The pair's upper step hides the lower. */
  'MARGIN-1': ['MARGIN-2'],
  'DEW-1': ['DEW-2'],
  'FIL-1': ['FIL-2'],
  /** Without flow the supply sensor stands in dead water; without facility water the supply can but warm. */
  'TSUP-2': ['FLOW-2', 'FAC-1'],
  'TSUP-1': ['FLOW-2', 'FAC-1', 'TSUP-2'],
  /** A standby starts because the first one tripped. */
  'VSRC-2': ['VSRC-1', 'PUMP-1'],
};

/** Of those, first-outs that fold only what is on the branch that they name. */
export const foldsOnBranchOnly: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {};

/** Consequences in another unit of the same loop: they fold under the first-out wherever on the loop it stands. */
export const foldsAcrossLoop: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {};

/**
 * One cause in the hall, and every unit tells of it: the first unit's alarm is the first-out, those of the other units fold
 * under it where they came within `withinMs` of it.
 */
export interface AcrossHall {
  readonly withinMs: number;
  /** Only where falling weather explains it: ambient pressure well below its mean of hours. */
  readonly onlyWeather?: true;
}

export const foldsAcrossHall: Readonly<Partial<Record<UnitEntryId, AcrossHall>>> = {};
