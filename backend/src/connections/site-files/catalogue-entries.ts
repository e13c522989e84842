import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import type { EntryId } from '../../evaluation/alarm-rules/entry-ids';

/** What a site file's `limit` of each catalogue entry is; null: the entry has none. */
const quantities: Readonly<Record<EntryId, QuantityKind | null>> = {
  'AIR-1': 'freeAirFlow',
  'WATER-1': null,
  'MARGIN-1': 'pressureDifference',
  'MARGIN-2': 'pressureDifference',
  'PUMP-1': null,
  'VSRC-1': null,
  'VSRC-2': null,
  'FLOW-2': 'ratio',
  'FAC-1': 'ratio',
  'FAC-2': 'temperatureDifference',
  'TSUP-2': 'temperatureDifference',
  'TSUP-1': 'temperatureDifference',
  'BOIL-1': 'pressureDifference',
  'DEW-2': 'temperatureDifference',
  'DEW-1': 'temperatureDifference',
  'VALVE-1': 'ratio',
  'XFER-1': 'ratio',
  'FIL-2': 'ratio',
  'FIL-1': 'ratio',
  'PUMP-2': 'duration',
  'PUMP-3': 'ratio',
  'HX-1': 'ratio',
  'RTH-1': 'ratio',
  'BAL-1': 'ratio',
  'CHEM-1': 'conductivity',
  'CHEM-2': 'ph',
  'CHEM-3': 'bacteria',
  'CHEM-4': 'concentration',
  'CHEM-5': 'turbidity',
  'SET-1': null,
  'AMB-1': 'pressureDifference',
  'INS-1': null,
  'COM-1': null,
};

export const catalogueEntries: ReadonlyMap<string, QuantityKind | null> = new Map(Object.entries(quantities));
