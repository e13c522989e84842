import type { DuckDBConnection } from '@duckdb/node-api';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { SealedFile } from './manifest';
import { minuteColumns, pathsOf } from './sealed-sql';

/** What to tell about a read that failed: which of its sealed files cannot be read, or else what the engine said. `note` is told the files. */
export async function readFault(
  connection: DuckDBConnection,
  folder: string,
  files: readonly SealedFile[],
  position: number,
  cause: unknown,
  note: (damaged: readonly string[]) => void,
): Promise<CodedError> {
  const damaged: string[] = [];
  for (const file of files) {
    const column = file.kind === 'seconds' ? `p${position}` : (minuteColumns(position)[1] ?? '');
    if (!(await canBeRead(connection, folder, file, column))) damaged.push(file.name);
  }
  note(damaged);
  if (damaged.length > 0) return damagedFault(damaged, cause);
  const said = cause instanceof Error ? (cause.message.split('\n')[0] ?? '') : String(cause);
  const what = `history could not be read: ${said.replaceAll(folder, '').slice(0, 300)}; try again, and look at memory and disk`;
  return new CodedError('HISTORY_READ_FAILED', what, { cause });
}

export const damagedFault = (names: readonly string[], cause?: unknown): CodedError =>
  new CodedError(
    'HISTORY_READ_FAILED',
    `history file ${names.join(', ')} is damaged or missing; periods outside it can still be read; put it back from a backup`,
    { cause },
  );

const everyColumn = { seconds: 'sum(COLUMNS(* EXCLUDE (quality)))', minutes: 'sum(COLUMNS(*))' } as const;

/** Every row group of some columns (`*`: of all) of a sealed file is read once. */
export async function canBeRead(
  connection: DuckDBConnection,
  folder: string,
  file: SealedFile,
  columns: string,
): Promise<boolean> {
  const summed = columns === '*' ? everyColumn[file.kind] : `sum(${columns})`;
  return connection.run(`SELECT ${summed} FROM read_parquet(${pathsOf(folder, [file])})`).then(
    () => true,
    () => false,
  );
}
