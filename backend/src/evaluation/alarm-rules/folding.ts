import type { UnitEntryId } from './entry-ids';

/**
 * Consequences fold under their first-out, on the same unit: the first of these that is in alarm. They stay in the
 * list, marked. Beside these, COM-1 folds INS-1 of the points behind its gateway. AIR-1 folds what that rack suffers;
 * no such entry is built yet. A first-out never has a lower priority than what it folds (`priorityOfEntry`).
 */
export const foldsUnder: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  /** The pair's upper step hides the lower. */
  'MARGIN-1': ['MARGIN-2'],
  /** Without flow the supply sensor stands in dead water. */
  'TSUP-1': ['FLOW-2'],
};
