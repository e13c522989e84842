import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** One line of a CSV file by the names of its columns, as text: what a cell means is for the reader to say. */
export type Row = Readonly<Record<string, string>>;

export function readRows(path: string, delimiter = ','): readonly Row[] {
  const rows: unknown = parse(readFileSync(path), { columns: true, delimiter, bom: true });
  return rows as readonly Row[];
}

/** A cell as a gateway would write it in JSON: a number where it is one, else its text. */
export function told(cell: string): number | string {
  const number = Number(cell);
  return cell.trim() !== '' && Number.isFinite(number) && !cell.startsWith('0x') ? number : cell;
}

/** `2025-06-03 00:01:04` without a zone is UTC. */
export const utcMs = (text: string): number => Date.parse(`${text.replace(' ', 'T')}Z`);
