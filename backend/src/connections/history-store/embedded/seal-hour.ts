import { join } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { dayMs, hourMs } from '../history-query';
import { finishFile, temporaryName } from './durable-file';
import type { Manifest, SealedFile, SealedKind } from './manifest';
import { mergeDuplicates } from './merge-duplicates';
import {
  copyToParquet,
  fileRows,
  groupOf,
  inGroup,
  minuteColumnsUpTo,
  minutesOf,
  sqlText,
  tailRows,
} from './sealed-sql';
import type { TailTable } from './tail-tables';

/** A file that is whole on the disk but not yet in force, and what it takes the place of. */
export interface WrittenFile {
  readonly name: string;
  readonly bytes: number;
  readonly replaces: string | null;
}

/** Rows in unit order; a row group of a few units lets a read skip the others. */
const secondsRowGroup = 30_720;
const minutesRowGroup = 23_040;

/**
 * Writes the rows of an hour's closed tails as Parquet files, merged with what was sealed of that hour before, and
 * the minutes of that hour into the day's files. Nothing is in force until the manifest says so.
 */
export async function sealHour(
  connection: DuckDBConnection,
  folder: string,
  manifest: Manifest,
  hour: number,
  tails: readonly TailTable[],
): Promise<WrittenFile[]> {
  const written: WrittenFile[] = [];
  for (const group of await groupsIn(connection, tails)) {
    written.push(...(await sealGroup(connection, folder, manifest, hour, tails, group)));
  }
  return written;
}

async function groupsIn(connection: DuckDBConnection, tails: readonly TailTable[]): Promise<number[]> {
  const holders = tails.map((table) => `SELECT DISTINCT holder FROM ${table.name}`).join(' UNION ');
  const found = await connection.runAndReadAll(holders);
  return [...new Set(found.getRows().map(([holder]) => groupOf(Number(holder))))].sort((a, b) => a - b);
}

async function sealGroup(
  connection: DuckDBConnection,
  folder: string,
  manifest: Manifest,
  hour: number,
  tails: readonly TailTable[],
  group: number,
): Promise<WrittenFile[]> {
  const write = async (kind: SealedKind, startMs: number, width: number, source: string, rowGroup: number) => {
    const replaces: SealedFile | undefined = manifest.find(kind, startMs, group);
    const name = await manifest.announce(kind, startMs, group, width);
    await connection.run(copyToParquet(source, temporaryName(join(folder, name)), rowGroup));
    return { name, bytes: await finishFile(join(folder, name)), replaces: replaces?.name ?? null };
  };

  const before = manifest.find('seconds', hour, group);
  const width = Math.max(before?.width ?? 0, ...tails.map((table) => table.width));
  const sources = tails.map((table) => `${tailRows(table, width)} WHERE ${inGroup(group)}`);
  if (before !== undefined) sources.push(fileRows(join(folder, before.name), before, width));
  const merged = await mergeDuplicates(connection, sources.join(' UNION ALL '), width);
  const seconds = await write('seconds', hour, width, `${merged} ORDER BY holder, second`, secondsRowGroup);

  const day = Math.floor(hour / dayMs) * dayMs;
  const dayBefore = manifest.find('minutes', day, group);
  const fresh = minutesOf(`SELECT * FROM read_parquet(${sqlText(join(folder, seconds.name))})`, width);
  const dayWidth = Math.max(width, dayBefore?.width ?? 0);
  const columns = ['holder', 'minute', ...minuteColumnsUpTo(dayWidth)].join(', ');
  const day_ =
    dayBefore === undefined
      ? fresh
      : `(${fresh}) UNION ALL BY NAME (SELECT * FROM read_parquet(${sqlText(join(folder, dayBefore.name))}) WHERE minute < ${hour} OR minute >= ${hour + hourMs})`;
  const source = `SELECT ${columns} FROM (${day_}) ORDER BY holder, minute`;
  const minutes = await write('minutes', day, dayWidth, source, minutesRowGroup);
  return [seconds, minutes];
}
