export type CsvCell = string | number | null;

/** With these a spreadsheet takes a cell for a formula (OWASP, CSV injection). */
const formulaStart = /^[=+\-@\t\r\n]/;

/**
 * A table as CSV by RFC 4180 (CRLF, a header line, quotes doubled). Every text is quoted, and one that begins like a formula gets a `'` before
 * it; numbers stay numbers, negative ones too. Null and what is not finite are empty cells.
 */
export const csvTable = (header: readonly string[], rows: readonly (readonly CsvCell[])[]): string =>
  [header, ...rows].map((row) => `${row.map(shown).join(',')}\r\n`).join('');

function shown(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const safe = formulaStart.test(cell) ? `'${cell}` : cell;
  return `"${safe.replaceAll('"', '""')}"`;
}
