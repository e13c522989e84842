import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { EnergySumsFile, energySumsFileName } from '../../backend/src/connections/energy-sums/energy-sums-file';
import { stopAfterAll } from './stop-after';

const keep = stopAfterAll();

/** Where a file for sums of energy may be: in a folder of its own, removed after the tests of the file. */
export function keptSumsPath(): string {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-sums-'));
  keep({ stop: () => rmSync(folder, { recursive: true, force: true }) });
  return join(folder, energySumsFileName);
}

/** The real keeper of sums of energy on that file, by default an empty one of its own. */
export function keptSums(path = keptSumsPath(), source = 'embedded'): EnergySumsFile {
  const file = new EnergySumsFile(path, source);
  keep({ stop: () => file.close() });
  return file;
}
