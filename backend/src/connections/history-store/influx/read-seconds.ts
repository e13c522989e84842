import { escape } from 'influx';
import type { HistorySeconds } from '../../../ports/history-store';
import { hourMs, type SecondsPlan } from '../history-query';
import { SecondColumns } from '../second-columns';
import type { InfluxServer } from './influx-server';
import { fieldOf, secondsPolicy } from './to-points';

/** An answer is one text: hour by hour it stays small. */
const pieceMs = hourMs;

/**
 * Columns of a holder as they were written. Values and marks stand in two measurements; a mark of less than good that came without a
 * value after a good one of the same second says nothing of that value, which counts as good.
 */
export async function readSeconds(
  server: InfluxServer,
  plan: SecondsPlan,
  minutesBeforeMs: number,
): Promise<HistorySeconds> {
  const columns = new SecondColumns(plan);
  if (plan.columns.length === 0) return columns.seconds(minutesBeforeMs);
  const fields = plan.columns.map((column) => escape.quoted(fieldOf(column))).join(', ');
  for (let fromMs = plan.fromMs; fromMs < plan.toMs; fromMs += pieceMs) {
    const toMs = Math.min(fromMs + pieceMs, plan.toMs);
    const where = `WHERE holder = ${escape.stringLit(plan.holder)} AND time >= ${fromMs}ms AND time < ${toMs}ms`;
    const from = (measurement: string): string =>
      `SELECT ${fields} FROM ${escape.quoted(secondsPolicy)}.${measurement} ${where}`;
    const [values = [], marks = []] = await server.query([from('second'), from('quality')]);
    const markAt = new Map(marks.map((row) => [row[0], row] as const));
    const put = (row: (typeof values)[number], valueOf: (column: number) => unknown): void => {
      const place = columns.placeOf(Number(row[0]));
      const marked = markAt.get(row[0] ?? null);
      plan.columns.forEach((_, column) => {
        const value = valueOf(column);
        const mark = marked?.[column + 1];
        const isThere = typeof value === 'number';
        const told = typeof mark === 'number' ? mark : -1;
        columns.put(column, place, isThere ? value : NaN, isThere && told === bad ? -1 : told);
      });
    };
    for (const row of values) put(row, (column) => row[column + 1]);
    for (const row of marks) put(row, () => null);
  }
  return columns.seconds(minutesBeforeMs);
}

const bad = 3;
