import type { GroupEntry, Rationale, SystemEntry, UnitEntry } from '../entry';
import {
  groupEntryIds,
  systemEntryIds,
  unitEntryIds,
  type EntryId,
  type GroupEntryId,
  type SystemEntryId,
  type UnitEntryId,
} from '../entry-ids';
import { air1 } from './air-1';
import { air2 } from './air-2';
import { air3 } from './air-3';
import { air4 } from './air-4';
import { amb1 } from './amb-1';
import { bal1 } from './bal-1';
import { boil1 } from './boil-1';
import { boil2 } from './boil-2';
import { change1 } from './change-1';
import { change2 } from './change-2';
import { chem1 } from './chem-1';
import { chem2 } from './chem-2';
import { chem3 } from './chem-3';
import { chem4 } from './chem-4';
import { chem5 } from './chem-5';
import { chem6 } from './chem-6';
import { chem7 } from './chem-7';
import { com1 } from './com-1';
import { dew1 } from './dew-1';
import { dew2 } from './dew-2';
import { fac1 } from './fac-1';
import { fac2 } from './fac-2';
import { fil1 } from './fil-1';
import { fil2 } from './fil-2';
import { flow1 } from './flow-1';
import { flow2 } from './flow-2';
import { flow3 } from './flow-3';
import { hx1 } from './hx-1';
import { ins1 } from './ins-1';
import { ins2 } from './ins-2';
import { ins3 } from './ins-3';
import { ins4 } from './ins-4';
import { isol1 } from './isol-1';
import { margin1 } from './margin-1';
import { margin2 } from './margin-2';
import { margin3 } from './margin-3';
import { permit1 } from './permit-1';
import { pump1 } from './pump-1';
import { pump2 } from './pump-2';
import { pump3 } from './pump-3';
import { rth1 } from './rth-1';
import { set1 } from './set-1';
import { sys1 } from './sys-1';
import { sys2 } from './sys-2';
import { sys3 } from './sys-3';
import { sys4 } from './sys-4';
import { sys5 } from './sys-5';
import { tank1 } from './tank-1';
import { tank2 } from './tank-2';
import { tank3 } from './tank-3';
import { tank4 } from './tank-4';
import { tsup1 } from './tsup-1';
import { tsup2 } from './tsup-2';
import { valve1 } from './valve-1';
import { vent1 } from './vent-1';
import { vsrc1 } from './vsrc-1';
import { vsrc2 } from './vsrc-2';
import { water1 } from './water-1';
import { xfer1 } from './xfer-1';

const byUnit: Readonly<Record<UnitEntryId, UnitEntry>> = {
  'AIR-4': air4,
  'AIR-1': air1,
  'WATER-1': water1,
  'VENT-1': vent1,
  'MARGIN-2': margin2,
  'MARGIN-1': margin1,
  'PUMP-1': pump1,
  'VSRC-1': vsrc1,
  'AIR-3': air3,
  'AIR-2': air2,
  'PERMIT-1': permit1,
  'VSRC-2': vsrc2,
  'FLOW-2': flow2,
  'FLOW-1': flow1,
  'FLOW-3': flow3,
  'TANK-1': tank1,
  'TANK-2': tank2,
  'TANK-3': tank3,
  'ISOL-1': isol1,
  'FAC-1': fac1,
  'FAC-2': fac2,
  'TSUP-2': tsup2,
  'TSUP-1': tsup1,
  'BOIL-2': boil2,
  'BOIL-1': boil1,
  'DEW-2': dew2,
  'DEW-1': dew1,
  'VALVE-1': valve1,
  'XFER-1': xfer1,
  'FIL-2': fil2,
  'FIL-1': fil1,
  'PUMP-2': pump2,
  'PUMP-3': pump3,
  'HX-1': hx1,
  'RTH-1': rth1,
  'BAL-1': bal1,
  'CHEM-1': chem1,
  'CHEM-2': chem2,
  'CHEM-3': chem3,
  'CHEM-4': chem4,
  'CHEM-5': chem5,
  'CHEM-6': chem6,
  'CHEM-7': chem7,
  'SET-1': set1,
  'INS-2': ins2,
  'INS-3': ins3,
  'INS-4': ins4,
  'CHANGE-1': change1,
  'CHANGE-2': change2,
};

const byGroup: Readonly<Record<GroupEntryId, GroupEntry>> = {
  'TANK-4': tank4,
  'AMB-1': amb1,
  'MARGIN-3': margin3,
};

const bySystem: Readonly<Record<SystemEntryId, SystemEntry>> = {
  'SYS-1': sys1,
  'SYS-2': sys2,
  'SYS-3': sys3,
  'SYS-4': sys4,
  'SYS-5': sys5,
};

/** In the order of `unitEntryIds`. */
export const unitEntries: readonly UnitEntry[] = unitEntryIds.map((id) => byUnit[id]);

/** In the order of `groupEntryIds`. */
export const groupEntries: readonly GroupEntry[] = groupEntryIds.map((id) => byGroup[id]);

/** In the order of `systemEntryIds`. */
export const systemEntries: readonly SystemEntry[] = systemEntryIds.map((id) => bySystem[id]);

/** The master list: every alarm there is, with its reason. */
export const catalogue: Readonly<Record<EntryId, Rationale>> = {
  ...byUnit,
  ...byGroup,
  'INS-1': ins1,
  'COM-1': com1,
  ...bySystem,
};
