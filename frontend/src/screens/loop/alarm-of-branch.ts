import type { Alarm, Priority } from '@ebbline/shared/contract/alarm';

/** Priority of the worst alarm that names this branch as its place; null where none does. */
export function alarmOfBranch(
  alarms: readonly Pick<Alarm, 'where' | 'priority'>[],
  branch: { id: string; name: string },
): Priority | null {
  const named = alarms.filter(
    (alarm) => alarm.where === branch.id || alarm.where === branch.name || alarm.where === `branch.${branch.id}`,
  );
  return named.reduce<Priority | null>(
    (worst, { priority }) => (worst === null || priority < worst ? priority : worst),
    null,
  );
}
