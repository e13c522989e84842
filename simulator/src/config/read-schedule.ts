import { fail, ok, type Failure, type Result } from '@ebbline/shared/errors/result';
import { isMap, isScalar, isSeq, LineCounter, parseDocument, type YAMLMap } from 'yaml';
import { readCommand, type Commandable } from '../scenario/command';
import type { ScheduledCommand } from '../scenario/schedule';

export type ScheduleFault = Failure<'SCHEDULE'> & { readonly line: number };

const example = "- { at: '00:02:00', fault: slowInLeak, unit: N3 }";

/**
 * A schedule file: a YAML list, each row a command with `at`, the time from the start as hours:minutes:seconds.
 * All faults at once, each with its line.
 */
export function readSchedule(
  text: string,
  there: Commandable,
): Result<readonly ScheduledCommand[], readonly ScheduleFault[]> {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  const faults: ScheduleFault[] = document.errors.map((error) =>
    faultAt(lines.linePos(error.pos[0]).line, `this is not YAML: ${error.message}`),
  );
  if (faults.length > 0) return fail(faults);
  const { contents } = document;
  if (!isSeq(contents)) return fail([faultAt(1, `expected a list of rows such as ${example}`)]);
  const rows: ScheduledCommand[] = [];
  for (const item of contents.items) {
    const line = isMap(item) || isScalar(item) || isSeq(item) ? lines.linePos(item.range?.[0] ?? 0).line : 1;
    const row = isMap(item) ? readRow(item, there) : fail(`expected a row such as ${example}`);
    if (row.ok) rows.push(row.value);
    else faults.push(faultAt(line, row.fault));
  }
  return faults.length > 0 ? fail(faults) : ok(rows);
}

function readRow(item: YAMLMap, there: Commandable): Result<ScheduledCommand, string> {
  const { at, ...command } = item.toJSON() as Record<string, unknown>;
  const time = typeof at === 'string' ? /^(\d{1,3}):([0-5]\d):([0-5]\d)$/.exec(at) : null;
  if (!time) return fail(`at: expected hours:minutes:seconds from the start, such as 00:02:00`);
  const read = readCommand(JSON.stringify(command), there);
  if (!read.ok) return fail(read.fault.message);
  return ok({ atS: Number(time[1]) * 3600 + Number(time[2]) * 60 + Number(time[3]), command });
}

const faultAt = (line: number, message: string): ScheduleFault => ({
  code: 'SCHEDULE',
  line,
  message: `line ${line}: ${message}`,
});
