import { escape } from 'influx';
import type { HistoryMinute, MinuteQuery } from '../../../ports/history-store';
import { emptyMinute } from '../empty-minute';
import type { InfluxServer } from './influx-server';
import { fieldOf, minutesPolicy } from './to-points';

/** So many holders a request. */
const holdersAtOnce = 50;
const figures = ['min', 'mean', 'max', 'count'] as const;

/** One minute of holders, from what the server keeps by the minute. */
export async function readMinute(server: InfluxServer, { holders, minuteMs }: MinuteQuery): Promise<HistoryMinute[]> {
  const minutes = holders.map(({ columns }) => emptyMinute(columns.length));
  const asked = holders.flatMap((holder, at) => (holder.columns.length === 0 ? [] : [{ ...holder, at }]));
  for (let from = 0; from < asked.length; from += holdersAtOnce) {
    const some = asked.slice(from, from + holdersAtOnce);
    const answers = await server.query(
      some.map(({ columns, holder }) => {
        const fields = columns.flatMap((column) =>
          figures.map((figure) => escape.quoted(`${figure}_${fieldOf(column)}`)),
        );
        return `SELECT ${fields.join(', ')} FROM ${escape.quoted(minutesPolicy)}.minute WHERE holder = ${escape.stringLit(holder)} AND time = ${minuteMs}ms`;
      }),
    );
    some.forEach(({ at, columns }, i) => {
      const [row] = answers[i] ?? [];
      const minute = minutes[at];
      if (row === undefined || minute === undefined) return;
      columns.forEach((_, column) =>
        figures.forEach((figure, place) => {
          const value = row[1 + figures.length * column + place];
          if (typeof value === 'number') minute[figure][column] = value;
        }),
      );
    });
  }
  return minutes;
}
