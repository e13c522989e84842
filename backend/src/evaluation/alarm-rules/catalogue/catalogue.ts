import type { GroupEntry, Rationale, UnitEntry } from '../entry';
import { groupEntryIds, unitEntryIds, type EntryId, type GroupEntryId, type UnitEntryId } from '../entry-ids';
import { air1 } from './air-1';
import { boil1 } from './boil-1';
import { com1 } from './com-1';
import { dew1 } from './dew-1';
import { flow2 } from './flow-2';
import { ins1 } from './ins-1';
import { margin1 } from './margin-1';
import { margin2 } from './margin-2';
import { tsup1 } from './tsup-1';
import { water1 } from './water-1';

const byUnit: Readonly<Record<UnitEntryId, UnitEntry>> = {
  'AIR-1': air1,
  'WATER-1': water1,
  'MARGIN-2': margin2,
  'MARGIN-1': margin1,
  'FLOW-2': flow2,
  'TSUP-1': tsup1,
  'BOIL-1': boil1,
  'DEW-1': dew1,
};

const byGroup: Readonly<Record<GroupEntryId, GroupEntry>> = {};

/** In the order of `unitEntryIds`. */
export const unitEntries: readonly UnitEntry[] = unitEntryIds.map((id) => byUnit[id]);

/** In the order of `groupEntryIds`. */
export const groupEntries: readonly GroupEntry[] = groupEntryIds.map((id) => byGroup[id]);

/** The master list: every alarm there is, with its reason. */
export const catalogue: Readonly<Record<EntryId, Rationale>> = {
  ...byUnit,
  ...byGroup,
  'INS-1': ins1,
  'COM-1': com1,
};
