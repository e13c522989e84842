import type { DuckDBConnection, DuckDBDataChunk } from '@duckdb/node-api';
import type { HistorySeconds } from '../../../ports/history-store';
import type { SecondsPlan } from '../history-query';
import { SecondColumns } from '../second-columns';
import type { Catalogue } from './catalogue';
import { readFault } from './read-fault';
import type { ReadSources } from './read-sql';
import { secondsSql } from './seconds-sql';

/** Columns of a holder as they were written, tails and sealed files merged. */
export async function readSeconds(
  connection: DuckDBConnection,
  plan: SecondsPlan,
  catalogue: Catalogue,
  sources: ReadSources,
  note: (damaged: readonly string[]) => void,
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
  try {
    const result = await connection.run(statement.sql);
    for (const chunk of await result.fetchAllChunks()) {
      asked.forEach(({ column }, place) => take(columns, column, chunk, 1 + place, 1 + asked.length + place));
    }
  } catch (cause) {
    throw await readFault(connection, sources.folder, statement.files, positions[0] ?? 0, cause, note);
  }
  return columns.seconds(retiredBeforeMs);
}

/** One column of values and that of its marks, straight from the vectors. */
function take(columns: SecondColumns, column: number, chunk: DuckDBDataChunk, valueAt: number, markAt: number): void {
  const places = chunk.getColumnVector(0);
  const values = chunk.getColumnVector(valueAt);
  const marks = chunk.getColumnVector(markAt);
  for (let row = 0; row < chunk.rowCount; row += 1) {
    const value = values.getItem(row) as number | null;
    columns.put(column, places.getItem(row) as number, value ?? NaN, marks.getItem(row) as number);
  }
}
