import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { SystemEntryId } from '../../evaluation/alarm-rules/entry-ids';
import type { Pipeline } from '../../evaluation/pipeline/pipeline';

/** Alarms and alerts about the program itself that health tells of too; journal and history have reasons of their own. */
const codes: Readonly<Partial<Record<SystemEntryId, HealthFinding['code']>>> = {
  'SYS-1': 'EVALUATION_LATE',
  'SYS-4': 'DISK_FILLING',
  'SYS-5': 'ANSWERS_LATE',
};

/** Why the program is unwell by what the judge says of it, be it that a person has set the alarm aside. */
export function systemReasons(pipeline: Pipeline): readonly HealthFinding[] {
  const told = [
    ...[...pipeline.standing(), ...pipeline.setAside()].filter(({ active }) => active),
    ...pipeline.alerts(),
  ];
  return told.flatMap(({ entry, detail }) => {
    const code = codes[entry as SystemEntryId];
    return code === undefined ? [] : [{ code, message: detail ?? `Alarm ${entry} stands.` }];
  });
}
