import {
  BIGINT,
  BLOB,
  blobValue,
  DOUBLE,
  DuckDBBlobValue,
  DuckDBDataChunk,
  INTEGER,
  type DuckDBConnection,
  type DuckDBValue,
} from '@duckdb/node-api';
import { mergeRows, type MergedRow } from './merge-rows';
import { positionColumns } from './tail-tables';

/**
 * The rows of `source` with each (holder, second) once. Keys written more than once are merged value by value in
 * the order of writing, into a table of the connection's own; returns the SQL of the rows, without `written`.
 */
export async function mergeDuplicates(connection: DuckDBConnection, source: string, width: number): Promise<string> {
  const columns = ['holder', 'second', 'quality', ...positionColumns(width)].join(', ');
  await connection.run(
    `CREATE OR REPLACE TEMP TABLE repeated AS SELECT holder, second FROM (${source}) GROUP BY holder, second HAVING count(*) > 1`,
  );
  const counted = await connection.runAndReadAll('SELECT count(*) FROM repeated');
  if (Number(counted.getRows()[0]?.[0]) === 0) return `SELECT ${columns} FROM (${source})`;

  const values = positionColumns(width).map((column) => `${column} DOUBLE`);
  await connection.run(
    `CREATE OR REPLACE TEMP TABLE merged (${['holder INTEGER', 'second BIGINT', 'quality BLOB', ...values].join(', ')})`,
  );
  const inOrder = await connection.stream(
    `SELECT ${columns} FROM (${source}) SEMI JOIN repeated USING (holder, second) ORDER BY holder, second, written`,
  );
  const writer = await mergedWriter(connection, width);
  let open: { holder: DuckDBValue; second: DuckDBValue; row: MergedRow } | null = null;
  for await (const rows of inOrder.yieldRows()) {
    for (const [holder = null, second = null, quality = null, ...found] of rows) {
      const row: MergedRow = {
        values: found.map((value) => (typeof value === 'number' ? value : null)),
        quality: quality instanceof DuckDBBlobValue ? quality.bytes : null,
      };
      if (open !== null && open.holder === holder && open.second === second) {
        open.row = mergeRows(open.row, row);
      } else {
        if (open !== null) writer.add(open.holder, open.second, open.row);
        open = { holder, second, row };
      }
    }
  }
  if (open !== null) writer.add(open.holder, open.second, open.row);
  writer.finish();
  return `SELECT ${columns} FROM (${source}) ANTI JOIN repeated USING (holder, second) UNION ALL SELECT ${columns} FROM merged`;
}

interface MergedWriter {
  add(holder: DuckDBValue, second: DuckDBValue, row: MergedRow): void;
  finish(): void;
}

const rowsAtOnce = 2048;

async function mergedWriter(connection: DuckDBConnection, width: number): Promise<MergedWriter> {
  const appender = await connection.createAppender('merged', null, 'temp');
  const types = [INTEGER, BIGINT, BLOB, ...Array.from({ length: width }, () => DOUBLE)];
  let rows: DuckDBValue[][] = [];
  const flush = (): void => {
    const chunk = DuckDBDataChunk.create(types, rows.length);
    chunk.setRows(rows);
    appender.appendDataChunk(chunk);
    rows = [];
  };
  return {
    add(holder, second, { values, quality }) {
      rows.push([holder, second, quality === null ? null : blobValue(quality), ...values]);
      if (rows.length === rowsAtOnce) flush();
    },
    finish() {
      if (rows.length > 0) flush();
      appender.closeSync();
    },
  };
}
