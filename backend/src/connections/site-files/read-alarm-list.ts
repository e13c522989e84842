import { readFile, stat } from 'node:fs/promises';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { compileAuthorisedList } from '../../evaluation/alarm-rules/settings/compile-authorised-list';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { keyPath } from '../../evaluation/site/site-fault';
import type { AuthorisedList } from '../../ports/authorised-list';
import { catalogueEntries } from './catalogue-entries';
import type { LineFault } from './line-fault';
import { readYaml } from './read-yaml';

const largestBytes = 4_000_000;

/** The text of a list of authorised alarms, YAML or JSON (which YAML 1.2 takes in) → the list, or every fault with line, column and key. */
export function alarmListFromText(
  text: string,
  file: string,
  site: CompiledSite,
): Result<AuthorisedList, readonly LineFault[]> {
  const yaml = readYaml(text);
  if (!yaml.ok) return yaml;
  const { value, placeOf } = yaml.value;
  const compiled = compileAuthorisedList(value, site, catalogueEntries);
  if (compiled.ok) return ok({ ...compiled.value, file });
  return fail(
    compiled.fault
      .map(({ path, message }) => ({ ...placeOf(path), key: keyPath(path), message }))
      .sort((a, b) => a.line - b.line || a.column - b.column),
  );
}

/** Reads a list from the disk; one that cannot be read is a fault like another. */
export async function readAlarmList(
  path: string,
  shown: string,
  site: CompiledSite,
): Promise<Result<AuthorisedList, readonly LineFault[]>> {
  const refuse = (message: string): Result<never, readonly LineFault[]> => fail([{ line: 1, key: '', message }]);
  try {
    if ((await stat(path)).size > largestBytes) return refuse(`the file is larger than ${largestBytes} bytes`);
    return alarmListFromText(await readFile(path, 'utf8'), shown, site);
  } catch (cause) {
    if (!(cause instanceof Error && 'code' in cause)) throw cause;
    return refuse(`the file cannot be read (${String(cause.code)}); check its name and who may read it`);
  }
}
