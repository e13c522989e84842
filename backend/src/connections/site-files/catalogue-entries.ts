import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';
import { rationaleTable } from '../../evaluation/alarm-rules/rationale/rationale-table';

/** What a site file's `limit` of each catalogue entry is; null: the entry has none. */
export const catalogueEntries: ReadonlyMap<string, QuantityKind | null> = new Map(
  entryIds.map((id) => [id, rationaleTable[id].setting.limit]),
);
