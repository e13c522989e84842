import type { ListedAlarm, SettingChange, SettingsAudit } from '@ebbline/shared/contract/alarm-list';
import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { ChangeFault } from '../../evaluation/alarm-rules/settings/check-change';
import type { SettingMember } from '../../evaluation/alarm-rules/settings/to-settings';
import type { SettingRecord } from '../../evaluation/alarm-rules/settings/setting-record';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { sameScope } from './same-scope';

type Finding = SettingsAudit['findings'][number];

/** Where what runs is not what was authorised, and by which change, with who, when and why. */
export const findingsOf = (
  entries: readonly ListedAlarm[],
  records: readonly SettingRecord[],
  site: CompiledSite,
): Finding[] =>
  entries.flatMap(({ entry, unit_of_measure, settings }) =>
    settings.flatMap(({ scope, authorised, running, differs }) =>
      (differs as SettingMember[]).map((member): Finding => {
        const change = changeBehind(records, entry, scope, member, site);
        const isNumberOfEntry = member === 'limit' || member === 'low' || member === 'deadband';
        return {
          entry,
          scope,
          member,
          authorised: authorised[member],
          running: running[member],
          unit_of_measure: isNumberOfEntry ? unit_of_measure : wordMembers.has(member) ? null : 's',
          by: change === null ? 'siteFile' : 'change',
          change: change === null ? null : toSettingChange(change),
        };
      }),
    ),
  );

const wordMembers: ReadonlySet<SettingMember> = new Set(['enabled', 'action']);

/** The last change that set a member at the place itself, else at what it lies in. */
export function changeBehind(
  records: readonly SettingRecord[],
  entry: string,
  scope: SettingScope,
  member: SettingMember,
  site: CompiledSite,
): SettingRecord | null {
  const hall =
    scope.kind === 'unit' ? site.halls[site.units.find(({ id }) => id === scope.id)?.hall ?? -1]?.id : undefined;
  const around: readonly SettingScope[] = [
    scope,
    ...(hall === undefined ? [] : [{ kind: 'hall', id: hall } as const]),
    { kind: 'site' },
  ];
  for (const place of around) {
    const found = [...records]
      .reverse()
      .find((one) => one.entry === entry && sameScope(one.scope, place) && one.set[member] !== undefined);
    if (found !== undefined) return found;
  }
  return null;
}

/** As people are told of it; a record of before a member could be set has none of it. */
export const toSettingChange = (record: SettingRecord, fault?: ChangeFault): SettingChange => ({
  id: record.id,
  time: new Date(record.atMs).toISOString(),
  actor: record.operator,
  entry: record.entry,
  scope: record.scope,
  old: { ...notYet, ...record.old },
  new: { ...notYet, ...record.new },
  reason: record.reason,
  link: record.link,
  ...(record.approvedBy === undefined ? {} : { approvedBy: record.approvedBy }),
  ...(fault === undefined ? {} : { refused: { code: fault.code, message: fault.message } }),
});

const notYet = { reAlarmAfterSeconds: null, action: null } as const;
