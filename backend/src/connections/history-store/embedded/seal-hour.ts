import { join } from 'node:path';
import { failpoint } from '../../../ports/failpoint';
import { hourMs, minuteMs } from '../history-query';
import type { SealedFile } from './manifest';
import { mergeDuplicates } from './merge-duplicates';
import { fileRows, inSpan, minuteColumnsUpTo, minutesOf, sqlText, tailRows, type Span } from './sealed-sql';
import type { TailTable } from './tail-tables';
import { expectUnchanged } from './unchanged-files';
import { writeSealed, type Sealed, type Sealing } from './write-sealed';

/** Slices are whole minutes, so that no minute is made of two. */
const minutesASlice = [60, 30, 20, 15, 12, 10, 6, 5, 4, 3, 2, 1];

/**
 * Writes the rows of an hour's closed tails as Parquet files in unit order, and the minutes made of them, merged with
 * what was sealed of that hour before. Nothing is in force until the manifest says so.
 *
 * A tail lies in the order of time. So the hour is cut into slices of time, each small enough to be ordered in memory,
 * and each row is read once: ordering the hour at once goes by way of the disk, and ordering it by groups of holders
 * reads the whole tail for each group.
 */
export async function sealHour(sealing: Sealing, hour: number, tails: readonly TailTable[]): Promise<Sealed> {
  const written: Sealed['written'][number][] = [];
  const replaced: SealedFile[] = [];
  const before = sealing.manifest.within('seconds', hour, hour + hourMs);
  const spanMs = before[0]?.spanMs ?? (await sliceSpan(sealing, tails));
  for (const startMs of await slicesWithRows(sealing, tails, spanMs)) {
    const slice = await sealSlice(sealing, { startMs, spanMs }, tails);
    written.push(...slice.written);
    replaced.push(...slice.replaced);
  }
  return { written, replaced };
}

async function sliceSpan({ connection, valuesAtOnce }: Sealing, tails: readonly TailTable[]): Promise<number> {
  let values = 0;
  for (const { name, width } of tails) {
    const rows = await connection.runAndReadAll(`SELECT count(*) FROM ${name}`);
    values += Number(rows.getRows()[0]?.[0]) * width;
  }
  const fits = (minutes: number): boolean => (values * minutes) / 60 <= valuesAtOnce;
  return (minutesASlice.find(fits) ?? 1) * minuteMs;
}

async function slicesWithRows({ connection }: Sealing, tails: readonly TailTable[], spanMs: number): Promise<number[]> {
  const starts = tails.map(({ name }) => `SELECT DISTINCT second - second % ${spanMs} AS start FROM ${name}`);
  const found = await connection.runAndReadAll(`SELECT DISTINCT start FROM (${starts.join(' UNION ALL ')}) ORDER BY 1`);
  return found.getRows().map(([start]) => Number(start));
}

async function sealSlice(sealing: Sealing, slice: Span, tails: readonly TailTable[]): Promise<Sealed> {
  const { connection, folder, manifest } = sealing;
  const replacedOf = (kind: 'seconds' | 'minutes') =>
    manifest.within(kind, slice.startMs, slice.startMs + slice.spanMs);
  const before = replacedOf('seconds');
  const width = Math.max(...[...before, ...tails].map((part) => part.width));
  const what = { ...slice, group: null, width };
  await expectUnchanged(folder, before);

  const fresh = tails.map((table) => `${tailRows(table, width)} WHERE ${inSpan('second', slice)}`);
  const sealed = before.map((file) => fileRows(join(folder, file.name), file, width));
  const merged = await mergeDuplicates(connection, [...fresh, ...sealed].join(' UNION ALL '), width);
  const seconds = await writeSealed(sealing, { ...what, kind: 'seconds' }, `${merged} ORDER BY holder, second`);
  failpoint('seal-mid-hour');

  const figures = minutesOf(`SELECT * FROM read_parquet(${sqlText(join(folder, seconds.name))})`, width);
  const columns = ['holder', 'minute', ...minuteColumnsUpTo(width)].join(', ');
  const ordered = `SELECT ${columns} FROM (${figures}) ORDER BY holder, minute`;
  const minutes = await writeSealed(sealing, { ...what, kind: 'minutes' }, ordered);
  return { written: [seconds, minutes], replaced: [...before, ...replacedOf('minutes')] };
}
