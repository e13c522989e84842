import { escape } from 'influx';
import type { HistorySeconds } from '../../../ports/history-store';
import { hourMs, type SecondsPlan } from '../history-query';
import { SecondColumns } from '../second-columns';
import type { InfluxRows, InfluxServer } from './influx-server';
import { fieldOf, secondsPolicy } from './to-points';

/** An answer is one text: hour by hour it stays small. */
const pieceMs = hourMs;

/** So many holders a request: some megabytes of an answer at most where minutes are asked for. */
const holdersAtOnce = 20;

/**
 * Columns of holders as they were written. Values and marks stand in two measurements; a mark of less than good that came without a
 * value after a good one of the same second says nothing of that value, which counts as good.
 * @param plans of the same period
 */
export async function readSeconds(
  server: InfluxServer,
  plans: readonly SecondsPlan[],
  minutesBeforeMs: number,
): Promise<HistorySeconds[]> {
  const read = plans.map((plan) => ({ plan, columns: new SecondColumns(plan) }));
  const asked = read.filter(({ plan }) => plan.columns.length > 0);
  for (let at = 0; at < asked.length; at += holdersAtOnce) {
    const some = asked.slice(at, at + holdersAtOnce);
    const [{ fromMs, toMs }] = [some[0]?.plan ?? { fromMs: 0, toMs: 0 }];
    for (let pieceFromMs = fromMs; pieceFromMs < toMs; pieceFromMs += pieceMs) {
      const pieceToMs = Math.min(pieceFromMs + pieceMs, toMs);
      const rows = await server.query(some.flatMap(({ plan }) => statementsOf(plan, pieceFromMs, pieceToMs)));
      some.forEach(({ columns, plan }, i) => put(columns, plan, rows[2 * i] ?? [], rows[2 * i + 1] ?? []));
    }
  }
  return read.map(({ columns }) => columns.seconds(minutesBeforeMs));
}

function statementsOf({ columns, holder }: SecondsPlan, fromMs: number, toMs: number): string[] {
  const fields = columns.map((column) => escape.quoted(fieldOf(column))).join(', ');
  const where = `WHERE holder = ${escape.stringLit(holder)} AND time >= ${fromMs}ms AND time < ${toMs}ms`;
  return ['second', 'quality'].map(
    (measurement) => `SELECT ${fields} FROM ${escape.quoted(secondsPolicy)}.${measurement} ${where}`,
  );
}

function put(columns: SecondColumns, plan: SecondsPlan, values: InfluxRows, marks: InfluxRows): void {
  const markAt = new Map(marks.map((row) => [row[0], row] as const));
  const putRow = (row: InfluxRows[number], valueOf: (column: number) => unknown): void => {
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
  for (const row of values) putRow(row, (column) => row[column + 1]);
  for (const row of marks) putRow(row, () => null);
}

const bad = 3;
