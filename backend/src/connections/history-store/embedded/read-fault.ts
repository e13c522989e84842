import type { DuckDBConnection } from '@duckdb/node-api';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { SealedFile } from './manifest';
import { minuteColumns, pathsOf } from './sealed-sql';

/** What to tell about a read that failed: which of its sealed files cannot be read, or else what the engine said. */
export async function readFault(
  connection: DuckDBConnection,
  folder: string,
  files: readonly SealedFile[],
  position: number,
  cause: unknown,
): Promise<CodedError> {
  const damaged: string[] = [];
  for (const file of files) {
    const column = file.kind === 'seconds' ? `p${position}` : minuteColumns(position)[1];
    const whole = `SELECT sum(${column}) FROM read_parquet(${pathsOf(folder, [file])})`;
    await connection.run(whole).catch(() => damaged.push(file.name));
  }
  const said = cause instanceof Error ? (cause.message.split('\n')[0] ?? '') : String(cause);
  const what =
    damaged.length === 0
      ? `history could not be read: ${said.replaceAll(folder, '').slice(0, 300)}; try again, and look at memory and disk`
      : `history file ${damaged.join(', ')} is damaged or missing; periods outside it can still be read; put it back from a backup`;
  return new CodedError('HISTORY_READ_FAILED', what, { cause });
}
