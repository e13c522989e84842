import type { DuckDBConnection, DuckDBDataChunk } from '@duckdb/node-api';
import type { HistorySeconds } from '../../../ports/history-store';
import type { SecondsPlan } from '../history-query';
import { SecondColumns } from '../second-columns';
import type { Catalogue } from './catalogue';
import type { DamagedFiles } from './damaged-files';
import { damagedFault, readFault } from './read-fault';
import type { ReadSources } from './read-sql';
import { marksAtOnce, secondsSql } from './seconds-sql';

/**
 * Columns of a holder as they were written, tails and sealed files merged.
 * @throws CodedError HISTORY_READ_FAILED, also where a file is known to hold something else than was sealed
 */
export async function readSeconds(
  connection: DuckDBConnection,
  plan: SecondsPlan,
  catalogue: Catalogue,
  sources: ReadSources,
  damaged: Pick<DamagedFiles, 'changed' | 'note'>,
): Promise<HistorySeconds> {
  const columns = new SecondColumns(plan);
  const { retiredBeforeMs } = sources.manifest;
  const found = plan.columns.map(({ point, unitOfMeasure }) => catalogue.find(plan.holder, point, unitOfMeasure));
  const holder = found.find((one) => one !== null)?.holder;
  if (holder === undefined) return columns.seconds(retiredBeforeMs);
  const asked = found.flatMap((one, column) => (one === null ? [] : [{ column, position: one.position }]));
  const positions = asked.map(({ position }) => position);
  const statement = secondsSql(plan, holder, positions, sources);
  if (statement === null) return columns.seconds(retiredBeforeMs);
  const changed = damaged.changed(statement.files);
  if (changed.length > 0) throw damagedFault(changed);
  try {
    const result = await connection.run(statement.sql);
    for (const chunk of await result.fetchAllChunks()) {
      asked.forEach(({ column }, place) => {
        const marksAt = 1 + asked.length + Math.floor(place / marksAtOnce);
        take(columns, column, chunk, 1 + place, marksAt, 2 * (place % marksAtOnce));
      });
    }
  } catch (cause) {
    throw await readFault(connection, sources.folder, statement.files, positions[0] ?? 0, cause, (names) =>
      damaged.note(names),
    );
  }
  return columns.seconds(retiredBeforeMs);
}

/** One column of values and its marks, straight from the vectors. */
function take(
  columns: SecondColumns,
  column: number,
  chunk: DuckDBDataChunk,
  valuesAt: number,
  marksAt: number,
  shift: number,
): void {
  const places = chunk.getColumnVector(0);
  const values = chunk.getColumnVector(valuesAt);
  const marks = chunk.getColumnVector(marksAt);
  // Asking the chunk again for each row costs more than all the rest.
  const { rowCount } = chunk;
  const target = columns.column(column);
  for (let row = 0; row < rowCount; row += 1) {
    const packed = marks.getItem(row) as number;
    const place = places.getItem(row) as number;
    const value = values.getItem(row) as number;
    if (packed < 0 && Number.isFinite(value)) {
      target.values[place] = value;
      target.quality[place] = good;
    } else columns.put(column, place, value, packed < 0 ? packed : (packed >> shift) & 3);
  }
}

const good = 1;
