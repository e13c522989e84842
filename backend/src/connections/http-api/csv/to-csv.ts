import { stringify } from 'csv-stringify/sync';

/** What a cell may hold; null, NaN and what is not finite are empty cells. */
export type CsvCell = string | number | boolean | null;

/**
 * A table as CSV by RFC 4180 (CRLF, a header line, quotes doubled), for spreadsheets that take a cell for a formula: a
 * text that begins like one gets a `'` before it, and every text is quoted, as OWASP advises against CSV injection.
 * Numbers stay numbers, negative ones too.
 */
export const toCsv = (header: readonly string[], rows: readonly (readonly CsvCell[])[]): string =>
  stringify([[...header], ...rows.map((row) => row.map(shown))], {
    record_delimiter: 'windows',
    quoted_string: true,
    quoted_empty: false,
    escape_formulas: true,
    cast: { boolean: String },
  });

/** The library does not look at a line feed in the first place, which OWASP names as well. */
function shown(cell: CsvCell): CsvCell {
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : null;
  return typeof cell === 'string' && cell.startsWith('\n') ? `'${cell}` : cell;
}

/** What answers of this form are sent with. */
export const csvContentType = 'text/csv; charset=utf-8; header=present';
