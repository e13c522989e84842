import type { DuckDBConnection } from '@duckdb/node-api';
import type { HistoryMinute, MinuteQuery } from '../../../ports/history-store';
import { emptyMinute } from '../empty-minute';
import type { Catalogue } from './catalogue';
import type { DamagedFiles } from './damaged-files';
import { findColumns } from './find-columns';
import { minuteSql } from './minute-sql';
import { damagedFault, readFault } from './read-fault';
import type { ReadSources } from './read-sql';
import { samePlaces } from './same-places';

const holdersAtOnce = 64;

/**
 * One minute of holders as it was sealed.
 * @throws CodedError HISTORY_READ_FAILED, also where a file is known to hold something else than was sealed
 */
export async function readMinute(
  connection: DuckDBConnection,
  { holders, minuteMs }: MinuteQuery,
  catalogue: Catalogue,
  sources: ReadSources,
  damaged: Pick<DamagedFiles, 'changed' | 'note'>,
): Promise<HistoryMinute[]> {
  const minutes = holders.map(({ columns }) => emptyMinute(columns.length));
  const found = holders.map((holder) => findColumns(catalogue, holder));
  for (const group of samePlaces(found, holdersAtOnce)) {
    const statement = minuteSql(minuteMs, group, sources);
    if (statement === null) continue;
    const changed = damaged.changed(statement.files);
    if (changed.length > 0) throw damagedFault(changed);
    try {
      const rows = (await connection.runAndReadAll(statement.sql)).getRows();
      for (const [number, ...figures] of rows) {
        const holder = group.holders.find((one) => one.number === Number(number));
        const minute = minutes[holder?.asked ?? -1];
        if (holder === undefined || minute === undefined) continue;
        for (const [place, { column }] of holder.found.entries())
          put(minute, column, figures.slice(4 * place, 4 * place + 4).map(Number));
      }
    } catch (cause) {
      throw await readFault(connection, sources.folder, statement.files, group.positions[0] ?? 0, cause, (names) =>
        damaged.note(names),
      );
    }
  }
  return minutes;
}

function put(minute: HistoryMinute, column: number, [min = NaN, mean = NaN, max = NaN, count = 0]: number[]): void {
  if (count === 0) return;
  minute.min[column] = min;
  minute.mean[column] = mean;
  minute.max[column] = max;
  minute.count[column] = count;
}
