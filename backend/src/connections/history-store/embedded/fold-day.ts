import { failpoint } from '../../../ports/failpoint';
import { dayMs } from '../history-query';
import type { Manifest, SealedFile } from './manifest';
import { groupOf, inGroup, inSpan, minuteColumnsUpTo, pathsOf } from './sealed-sql';
import { expectUnchanged } from './unchanged-files';
import { writeSealed, type Sealed, type Sealing } from './write-sealed';

/** Minutes of one day: whole-day files, and the slices made since, which take the place of the day's rows in their span. */
export interface DayOfMinutes {
  readonly whole: readonly SealedFile[];
  readonly slices: readonly SealedFile[];
}

export function minutesOfDay(manifest: Manifest, day: number): DayOfMinutes {
  const files = manifest.within('minutes', day, day + dayMs);
  return {
    whole: files.filter((file) => file.spanMs === dayMs),
    slices: files.filter((file) => file.spanMs < dayMs),
  };
}

/** Rows of whole-day files that no slice takes the place of. */
export const outsideOf = (slices: readonly SealedFile[]): string =>
  ['true', ...slices.map((slice) => `NOT (${inSpan('minute', slice)})`)].join(' AND ');

/**
 * Writes a day's minutes as one file a group of holders in place of a file a slice, so that a year is read from
 * hundreds of files and not from tens of thousands, and each minute is written twice, not once an hour.
 */
export async function foldDay(sealing: Sealing, day: number): Promise<Sealed> {
  const { whole, slices } = minutesOfDay(sealing.manifest, day);
  const written: Sealed['written'][number][] = [];
  await expectUnchanged(sealing.folder, [...whole, ...slices]);
  const fresh = `read_parquet(${pathsOf(sealing.folder, slices)}, union_by_name = true)`;
  for (const group of await groupsIn(sealing, fresh, whole)) {
    const before = whole.filter((file) => file.group === group);
    const width = Math.max(...[...before, ...slices].map((file) => file.width));
    const columns = ['holder', 'minute', ...minuteColumnsUpTo(width)].join(', ');
    const sources = [`SELECT * FROM ${fresh} WHERE ${inGroup(group)}`];
    if (before.length > 0) {
      const old = `read_parquet(${pathsOf(sealing.folder, before)}, union_by_name = true)`;
      sources.push(`SELECT * FROM ${old} WHERE ${outsideOf(slices)}`);
    }
    const source = `SELECT ${columns} FROM (${sources.join(' UNION ALL BY NAME ')}) ORDER BY holder, minute`;
    written.push(await writeSealed(sealing, { kind: 'minutes', startMs: day, spanMs: dayMs, group, width }, source));
    failpoint('fold-mid-day');
  }
  return { written, replaced: [...whole, ...slices] };
}

async function groupsIn({ connection }: Sealing, fresh: string, whole: readonly SealedFile[]): Promise<number[]> {
  const found = await connection.runAndReadAll(`SELECT DISTINCT holder FROM ${fresh}`);
  const groups = new Set(found.getRows().map(([holder]) => groupOf(Number(holder))));
  for (const { group } of whole) if (group !== null) groups.add(group);
  return [...groups].sort((a, b) => a - b);
}
