import { DuckDBInstance } from '@duckdb/node-api';
import { CodedError } from '@ebbline/shared/errors/coded-error';

export interface DuckDbLimits {
  readonly threads: number;
  readonly memoryMb: number;
}

/**
 * Opens the file with bounds on threads and memory, and with nothing fetched from a network.
 * The log is folded into the file each 128 MB: at the default of 16 MB and 400,000 samples a second the folding
 * cost more than the commits themselves (tests/bench/history-tail.bench.mjs).
 * `parquet_metadata_cache` stays off: what it keeps of each file ever read is counted as a seventh of what it takes, and stays after the
 * file is gone, so that memory grew for weeks to several times the bound. A day of one point of 15 units is read in 29 ms, again in 18.
 */
export async function openDuckDb(path: string, spillFolder: string, limits: DuckDbLimits): Promise<DuckDBInstance> {
  try {
    return await DuckDBInstance.create(path, {
      threads: String(limits.threads),
      memory_limit: `${limits.memoryMb}MB`,
      temp_directory: spillFolder,
      checkpoint_threshold: '128MB',
      autoinstall_known_extensions: 'false',
      autoload_known_extensions: 'false',
    });
  } catch (cause) {
    const what = `cannot open ${path}; check that the folder is writable and no other Ebbline runs on it`;
    throw new CodedError('HISTORY_OPEN_FAILED', what, { cause });
  }
}
