import { pointTable } from '@ebbline/shared/contract/point-table';
import { catalogue } from '../catalogue/catalogue';
import { entryIds, type EntryId } from '../entry-ids';
import { gradeOf } from '../priority';
import type { FurtherRationale } from './further-rationale';
import { ofFlowAndHeat } from './of-flow-and-heat';
import { ofInstrumentsAndProgram } from './of-instruments-and-program';
import { ofVacuumAndAir } from './of-vacuum-and-air';
import { ofWaterAndMachines } from './of-water-and-machines';

/** What each entry holds beside its rule. An entry that is missing does not compile. */
export const rationaleTable: Readonly<Record<EntryId, FurtherRationale>> = {
  ...ofVacuumAndAir,
  ...ofFlowAndHeat,
  ...ofWaterAndMachines,
  ...ofInstrumentsAndProgram,
};

const known: ReadonlySet<string> = new Set(entryIds);
export const isEntryId = (text: string): text is EntryId => known.has(text);

/** UCUM code of limit, low end and deadband of an entry; null where it has no limit that could be set. */
export function unitOfSetting(id: EntryId): string | null {
  const { limit } = rationaleTable[id].setting;
  return limit === null ? null : (pointTable.find(({ quantity }) => quantity === limit)?.unit ?? '1');
}

/** Share of the alarms that the grid puts at priority 1; what it makes an alert is no alarm and not counted. */
export function shareOfPriority1(): number {
  const grades = entryIds.map((id) => gradeOf(catalogue[id].severity, catalogue[id].timeToRespondS));
  const alarms = grades.filter((grade) => grade !== 'alert');
  return alarms.filter((grade) => grade === 1).length / alarms.length;
}
