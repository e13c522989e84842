import { BIGINT, BLOB, blobValue, DOUBLE, DuckDBDataChunk, INTEGER, type DuckDBConnection } from '@duckdb/node-api';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
import type { HolderPlaces } from './catalogue';
import { rowQuality } from './row-quality';
import type { TailTable } from './tail-tables';

/** Rows that one data chunk takes (the engine's vector size). */
const chunkRows = 2048;

/** Appends the rows at `indices` to a tail, within the transaction that the connection is in. */
export async function appendRows(
  connection: DuckDBConnection,
  table: TailTable,
  rows: HistoryRows,
  indices: readonly number[],
  places: readonly HolderPlaces[],
): Promise<void> {
  // One appender a commit: an open one would lose its rows when a table is altered.
  const appender = await connection.createAppender(table.name);
  const types = [INTEGER, BIGINT, BLOB, ...Array.from({ length: table.width }, () => DOUBLE)];
  for (let at = 0; at < indices.length; at += chunkRows) {
    const part = indices.slice(at, at + chunkRows);
    const chunk = DuckDBDataChunk.create(types, part.length);
    fillKeys(chunk, rows, part, places);
    fillValues(chunk, table.width, rows, part, places);
    appender.appendDataChunk(chunk);
  }
  appender.closeSync();
}

function fillKeys(
  chunk: DuckDBDataChunk,
  rows: HistoryRows,
  part: readonly number[],
  places: readonly HolderPlaces[],
): void {
  const placesOf = (row: number): HolderPlaces | undefined => places[rows.holder[row] ?? -1];
  chunk.setColumnValues(
    0,
    part.map((row) => placesOf(row)?.holder ?? null),
  );
  chunk.setColumnValues(
    1,
    part.map((row) => BigInt(rows.secondMs[row] ?? NaN)),
  );
  chunk.setColumnValues(
    2,
    part.map((row) => {
      const quality = rowQuality(rows, row, placesOf(row)?.positions ?? new Int32Array());
      return quality === null ? null : blobValue(quality);
    }),
  );
}

/** Column by column, straight into the vectors: most of what a commit costs outside the engine is here. */
function fillValues(
  chunk: DuckDBDataChunk,
  width: number,
  rows: HistoryRows,
  part: readonly number[],
  places: readonly HolderPlaces[],
): void {
  const { values } = rows;
  const offsets = Int32Array.from(part, (row) => rows.offset[row] ?? 0);
  const columnsOf = part.map((row) => places[rows.holder[row] ?? -1]?.columns ?? noColumns);
  for (let position = 0; position < width; position++) {
    const vector = chunk.getColumnVector(3 + position);
    for (let at = 0; at < part.length; at++) {
      const column = columnsOf[at]?.[position] ?? -1;
      const value = column < 0 ? NaN : (values[(offsets[at] ?? 0) + column] ?? NaN);
      vector.setItem(at, Number.isFinite(value) ? value : NaN);
    }
    vector.flush();
  }
}

const noColumns = new Int32Array();
