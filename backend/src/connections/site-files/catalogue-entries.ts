import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import type { EntryId } from '../../evaluation/alarm-rules/entry-ids';

/** What a site file's `limit` of each catalogue entry is; null: the entry has none. */
const quantities: Readonly<Record<EntryId, QuantityKind | null>> = {
  'AIR-1': 'freeAirFlow',
  'WATER-1': null,
  'MARGIN-1': 'pressureDifference',
  'MARGIN-2': 'pressureDifference',
  'FLOW-2': 'ratio',
  'TSUP-1': 'temperatureDifference',
  'BOIL-1': 'pressureDifference',
  'DEW-1': 'temperatureDifference',
  'INS-1': null,
  'COM-1': null,
};

export const catalogueEntries: ReadonlyMap<string, QuantityKind | null> = new Map(Object.entries(quantities));
