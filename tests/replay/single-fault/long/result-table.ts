import type { ToldLater } from './run-on';

export interface ResultRow {
  readonly fault: string;
  readonly told: readonly ToldLater[];
}

const minutes = (seconds: number): string => `${(seconds / 60).toFixed(seconds < 600 ? 1 : 0)} min`;
const named = ({ as, entry }: ToldLater): string => (as === 'alert' ? `${entry} (alert)` : entry);

/** A line a fault: what was told first, after how long, and what else within ten minutes of it. */
export function resultTable(rows: readonly ResultRow[]): string {
  const lines = rows.map(({ fault, told }) => {
    const [first, ...rest] = told;
    if (first === undefined) return [fault, 'nothing', '', ''];
    return [fault, named(first), minutes(first.afterS), [...new Set(rest.map(named))].join(', ')];
  });
  const all = [['fault', 'told first', 'after', 'beside it'], ...lines];
  const widths = [0, 1, 2].map((column) => Math.max(...all.map((line) => line[column]?.length ?? 0)));
  return all
    .map((line) =>
      line
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
