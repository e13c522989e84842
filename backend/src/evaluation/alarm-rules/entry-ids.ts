/**
 * Entries judged once a unit and second, or once for each branch or plate of it. In this order: what another looks at, or
 * folds under, stands before it.
 */
export const unitEntryIds = [
  'AIR-4',
  'AIR-1',
  'WATER-1',
  'VENT-1',
  'MARGIN-2',
  'MARGIN-1',
  'PUMP-1',
  'VSRC-1',
  'AIR-3',
  'AIR-2',
  'PERMIT-1',
  'VSRC-2',
  'FLOW-2',
  'FLOW-1',
  'FLOW-3',
  'TANK-1',
  'TANK-2',
  'TANK-3',
  'ISOL-1',
  'FAC-1',
  'FAC-2',
  'TSUP-2',
  'TSUP-1',
  'BOIL-2',
  'BOIL-1',
  'DEW-2',
  'DEW-1',
  'VALVE-1',
  'XFER-1',
  'FIL-2',
  'FIL-1',
  'PUMP-2',
  'PUMP-3',
  'HX-1',
  'RTH-1',
  'BAL-1',
  'CHEM-1',
  'CHEM-2',
  'CHEM-3',
  'CHEM-4',
  'CHEM-5',
  'CHEM-6',
  'CHEM-7',
  'SET-1',
  'INS-2',
  'INS-3',
  'INS-4',
  'CHANGE-1',
  'CHANGE-2',
] as const;
export type UnitEntryId = (typeof unitEntryIds)[number];

/** Entries judged once a second for what spans units: a loop with all its units, or a hall. */
export const groupEntryIds = ['TANK-4', 'AMB-1', 'MARGIN-3'] as const satisfies readonly string[];
export type GroupEntryId = (typeof groupEntryIds)[number];

/** Entries about this program itself, judged once a second. */
export const systemEntryIds = ['SYS-1', 'SYS-2', 'SYS-3', 'SYS-4', 'SYS-5'] as const satisfies readonly string[];
export type SystemEntryId = (typeof systemEntryIds)[number];

/** INS-1 is judged a point, COM-1 a gateway. */
export const entryIds = [...unitEntryIds, ...groupEntryIds, 'INS-1', 'COM-1', ...systemEntryIds] as const;
export type EntryId = (typeof entryIds)[number];

export const unitEntryPlace = Object.fromEntries(unitEntryIds.map((id, i) => [id, i])) as Readonly<
  Record<UnitEntryId, number>
>;
