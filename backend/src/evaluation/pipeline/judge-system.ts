import { systemEntries } from '../alarm-rules/catalogue/catalogue';
import type { SystemEntry } from '../alarm-rules/entry';
import { systemEntryIds } from '../alarm-rules/entry-ids';
import { clearFinding, createFinding } from '../alarm-rules/finding';
import { priorityOf } from '../alarm-rules/priority';
import type { SystemState } from '../alarm-rules/system-state';
import type { PipelineState } from './pipeline-state';
import { raiseAndClear } from './raise-and-clear';

/** The place that alarms about the program itself name. */
const where = 'this program';

const late = systemEntryIds.indexOf('SYS-1');
const slow = systemEntryIds.indexOf('SYS-5');

const finding = createFinding();

/** Everything about the program itself, once a second, whatever the plant is; nothing before the program has told of itself. */
export function judgeSystem(pipeline: PipelineState, nowMs: number): void {
  const { system } = pipeline;
  if (system === null) return;
  systemEntries.forEach((entry, place) => {
    if (judgeOne(pipeline, entry, place, system, nowMs) && place === late) refoldSystem(pipeline);
  });
}

/** True where it went in or out of alarm. */
function judgeOne(
  pipeline: PipelineState,
  entry: SystemEntry,
  place: number,
  system: SystemState,
  nowMs: number,
): boolean {
  const alarm = pipeline.index.ofSystem(place);
  clearFinding(finding);
  finding.where = where;
  entry.judge(system, entry.defaults, pipeline.delays.active[alarm] === 1, finding);
  const rated = finding.worse && entry.worse !== null ? entry.worse : entry;
  const judged = {
    alarm,
    onDelayMs: entry.defaults.onDelayMs,
    offDelayMs: entry.defaults.offDelayMs,
    unitOfMeasure: null,
    priority: priorityOf(rated.severity, rated.timeToRespondS),
    enabled: true,
    detail: () => entry.detail(system),
  };
  return raiseAndClear(pipeline, judged, finding, () => (place === slow ? lateAlarm(pipeline) : null), nowMs);
}

/** A thread that is late makes evaluation late: told once, by what follows for the plant. */
function lateAlarm({ book, index }: PipelineState): string | null {
  const record = book.told(index.ofSystem(late));
  return record?.active === true ? record.alarm : null;
}

/** What follows from late evaluation folds under it, or comes out again. */
export function refoldSystem(pipeline: PipelineState): void {
  pipeline.book.fold(pipeline.index.ofSystem(slow), lateAlarm(pipeline));
}
