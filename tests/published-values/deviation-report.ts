import { checkIds } from './check-ids';
import { equationOf, toleranceOf } from './evaluate-row';
import type { PublishedTable } from './published-table';

/** How near the numbers of one field come to what is published. */
export interface FieldDeviation {
  readonly field: string;
  readonly checks: number;
  readonly walked: number;
  /** Largest |value − expected| ÷ tolerance of the equations, and by which row. */
  readonly worst: number;
  readonly worstRow: string;
}

/** Id of the check that a row belongs to. */
export const checkOf = (rowId: string): string => rowId.split(' ')[0] ?? '';

interface Deviation {
  readonly row: string;
  readonly share: number;
}

function deviationsOf(table: PublishedTable): readonly Deviation[] {
  const equation = equationOf(table);
  return table.rows.map((row) => ({
    row: row.id,
    share: Math.abs(table.evaluate(equation, row.inputs) - row.expected) / toleranceOf(row),
  }));
}

/** One line a field, in the order of `check-ids.ts`; last the rows that are none of those checks. */
export function deviationReport(tables: readonly PublishedTable[]): readonly FieldDeviation[] {
  const all = tables.flatMap(deviationsOf);
  const known = new Set(Object.values(checkIds).flat());
  const fields = Object.entries(checkIds).map(([field, ids]) =>
    lineOf(
      field,
      ids.length,
      all.filter(({ row }) => ids.includes(checkOf(row))),
    ),
  );
  const others = all.filter(({ row }) => !known.has(checkOf(row)));
  return [...fields, lineOf('beside the checks', 0, others)];
}

function lineOf(field: string, checks: number, deviations: readonly Deviation[]): FieldDeviation {
  const worst = deviations.reduce((a, b) => (b.share > a.share ? b : a), { row: 'none', share: 0 });
  const walked = new Set(deviations.map(({ row }) => (checks > 0 ? checkOf(row) : row))).size;
  return { field, checks, walked, worst: worst.share, worstRow: worst.row };
}

/** As lines of text. */
export const reportText = (report: readonly FieldDeviation[]): string =>
  report
    .map(
      ({ field, checks, walked, worst, worstRow }) =>
        `${field.padEnd(26)} ${String(walked).padStart(4)} of ${String(checks).padStart(3)}  worst ${worst.toFixed(3)} of its tolerance (${worstRow})`,
    )
    .join('\n');
