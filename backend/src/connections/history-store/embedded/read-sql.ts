import { join } from 'node:path';
import { hourMs, minuteMs, type BucketPlan } from '../history-query';
import type { Manifest } from './manifest';
import { groupOf, minuteColumns, sqlText } from './sealed-sql';
import { tailValue, writtenOrder, type TailTable } from './tail-tables';

export interface ReadSql {
  /** Rows (bucket, min, sum, max, count). */
  readonly sql: string;
  readonly usesMinutes: boolean;
}

/** What there is to read from, as one moment shows it. */
export interface ReadSources {
  readonly folder: string;
  readonly manifest: Manifest;
  readonly tails: readonly TailTable[];
}

/**
 * One statement for one query. An hour with a tail (not yet sealed, or written to after its seal) is read from its
 * seconds, file and tails merged; other hours from minutes where the plan goes by minute, else from sealed seconds
 * as far as these are kept and from minutes before that.
 */
export function readSql(plan: BucketPlan, holder: number, position: number, sources: ReadSources): ReadSql | null {
  const { manifest, folder } = sources;
  const { fromMs, toMs } = plan;
  // By minute, the seconds of the minute in which `to` lies belong to it when it begins before `to`.
  const [first, end] = plan.byMinute ? [ceilTo(fromMs, minuteMs), ceilTo(toMs, minuteMs)] : [fromMs, toMs];
  const overlaps = (startMs: number, lengthMs: number): boolean => startMs < end && startMs + lengthMs > first;
  const tails = sources.tails.filter((table) => position < table.width && overlaps(table.hourMs, hourMs));
  const dirty = new Set(sources.tails.filter((table) => overlaps(table.hourMs, hourMs)).map((table) => table.hourMs));
  const files = manifest.kept.filter((file) => file.group === groupOf(holder) && position < file.width);
  const pathsOf = (names: readonly { name: string }[]): string =>
    `[${names.map(({ name }) => sqlText(join(folder, name))).join(', ')}]`;

  const seconds = files.filter((file) => file.kind === 'seconds' && overlaps(file.startMs, hourMs));
  const merged = seconds.filter((file) => dirty.has(file.startMs));
  const clean = plan.byMinute ? [] : seconds.filter((file) => !dirty.has(file.startMs));
  const minutesBefore = plan.byMinute ? Infinity : manifest.retiredBeforeMs;
  const minutes = files.filter(
    (file) => file.kind === 'minutes' && file.startMs < minutesBefore && overlaps(file.startMs, 24 * hourMs),
  );

  const where = `holder = ${holder} AND second >= ${first} AND second < ${end}`;
  const raw: string[] = [];
  if (clean.length > 0)
    raw.push(`SELECT second, p${position} AS v FROM read_parquet(${pathsOf(clean)}) WHERE ${where}`);
  const unmerged = tails.map(
    (table) =>
      `SELECT second, ${tailValue(position)} AS v, ${writtenOrder(table)} AS w FROM ${table.name} WHERE ${where}`,
  );
  if (merged.length > 0)
    unmerged.push(
      `SELECT second, p${position} AS v, 0::BIGINT AS w FROM read_parquet(${pathsOf(merged)}) WHERE ${where}`,
    );
  if (unmerged.length > 0)
    raw.push(
      `SELECT second, arg_max(v, w) AS v FROM (${unmerged.join(' UNION ALL ')}) WHERE v IS NOT NULL GROUP BY second`,
    );

  const cells: string[] = [];
  if (raw.length > 0) {
    const start = plan.byMinute ? `second - second % ${minuteMs}` : 'second';
    cells.push(
      `SELECT ${bucket(plan, start)} AS b, min(v) AS lo, sum(v) AS s, max(v) AS hi, count(v) AS n FROM (${raw.join(' UNION ALL ')}) WHERE v IS NOT NULL GROUP BY b`,
    );
  }
  if (minutes.length > 0) {
    const [min, mean, max, count] = minuteColumns(position);
    const kept = [
      `holder = ${holder}`,
      `minute >= ${ceilTo(fromMs, minuteMs)}`,
      `minute < ${Math.min(toMs, minutesBefore)}`,
    ];
    if (dirty.size > 0) kept.push(`minute - minute % ${hourMs} NOT IN (${[...dirty].join(', ')})`);
    cells.push(
      `SELECT ${bucket(plan, 'minute')} AS b, min(${min}) AS lo, sum(${mean} * ${count}) AS s, max(${max}) AS hi, sum(${count})::BIGINT AS n FROM read_parquet(${pathsOf(minutes)}) WHERE ${kept.join(' AND ')} AND ${count} > 0 GROUP BY b`,
    );
  }
  if (cells.length === 0) return null;
  return { sql: cells.join(' UNION ALL '), usesMinutes: minutes.length > 0 };
}

const ceilTo = (ms: number, step: number): number => Math.ceil(ms / step) * step;

const bucket = (plan: BucketPlan, time: string): string => `(${time} - ${plan.fromMs}) // ${plan.bucketMs}`;
