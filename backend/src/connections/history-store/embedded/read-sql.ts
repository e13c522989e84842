import { dayMs, hourMs, minuteMs, type BucketPlan } from '../history-query';
import { minutesOfDay, outsideOf } from './fold-day';
import type { Manifest, SealedFile } from './manifest';
import { groupOf, minuteColumns, pathsOf } from './sealed-sql';
import { tailValue, writtenOrder, type TailTable } from './tail-tables';

export interface ReadSql {
  /** Rows (bucket, min, sum, max, count). */
  readonly sql: string;
  readonly usesMinutes: boolean;
  /** Sealed files that it reads. */
  readonly files: readonly SealedFile[];
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
  const files = manifest.kept.filter(
    ({ group, width, startMs, spanMs }) =>
      (group === null || group === groupOf(holder)) && position < width && overlaps(startMs, spanMs),
  );
  const isDirty = ({ startMs }: SealedFile): boolean => dirty.has(startMs - (startMs % hourMs));
  const seconds = files.filter((file) => file.kind === 'seconds');
  const merged = seconds.filter(isDirty);
  const clean = plan.byMinute ? [] : seconds.filter((file) => !isDirty(file));
  const minutesBefore = plan.byMinute ? Infinity : manifest.retiredBeforeMs;
  const minutes = files.filter((file) => file.kind === 'minutes' && file.startMs < minutesBefore);

  const where = `holder = ${holder} AND second >= ${first} AND second < ${end}`;
  const raw: string[] = [];
  if (clean.length > 0)
    raw.push(`SELECT second, p${position} AS v FROM read_parquet(${pathsOf(folder, clean)}) WHERE ${where}`);
  const unmerged = tails.map(
    (table) =>
      `SELECT second, ${tailValue(position)} AS v, ${writtenOrder(table)} AS w FROM ${table.name} WHERE ${where}`,
  );
  if (merged.length > 0)
    unmerged.push(
      `SELECT second, p${position} AS v, 0::BIGINT AS w FROM read_parquet(${pathsOf(folder, merged)}) WHERE ${where}`,
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
    const figures = `${min} AS lo, ${mean} * ${count} AS s, ${max} AS hi, ${count} AS n`;
    const from = minuteSources(minutes, manifest).map(
      ({ files: of, where: only }) =>
        `SELECT minute, ${figures} FROM read_parquet(${pathsOf(folder, of)}) WHERE ${[...kept, only].join(' AND ')} AND ${count} > 0`,
    );
    cells.push(
      `SELECT ${bucket(plan, 'minute')} AS b, min(lo) AS lo, sum(s) AS s, max(hi) AS hi, sum(n)::BIGINT AS n FROM (${from.join(' UNION ALL ')}) GROUP BY b`,
    );
  }
  if (cells.length === 0) return null;
  const read = [...clean, ...merged, ...minutes];
  return { sql: cells.join(' UNION ALL '), usesMinutes: minutes.length > 0, files: read };
}

/** Slices as they are; of a whole day what no slice of it takes the place of. */
export function minuteSources(
  minutes: readonly SealedFile[],
  manifest: Manifest,
): { files: SealedFile[]; where: string }[] {
  const whole = minutes.filter((file) => file.spanMs === dayMs);
  const later = whole.filter((file) => minutesOfDay(manifest, file.startMs).slices.length > 0);
  const plain = minutes.filter((file) => !later.includes(file));
  const corrected = later.map((file) => ({
    files: [file],
    where: outsideOf(minutesOfDay(manifest, file.startMs).slices),
  }));
  return plain.length === 0 ? corrected : [{ files: plain, where: 'true' }, ...corrected];
}

const ceilTo = (ms: number, step: number): number => Math.ceil(ms / step) * step;

const bucket = (plan: BucketPlan, time: string): string => `(${time} - ${plan.fromMs}) // ${plan.bucketMs}`;
