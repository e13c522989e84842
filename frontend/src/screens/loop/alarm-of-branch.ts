import type { Alarm, Priority } from '@ebbline/shared/contract/alarm';

/** Priority of the worst alarm that names this branch as its place; null where none does. */
export function alarmOfBranch(
  alarms: readonly Pick<Alarm, 'where' | 'priority' | 'unit'>[],
  branch: { id: string; name: string },
): Priority | null {
  const named = alarms.filter(
    // What is of a gateway or a loop of several units may bear the name of a branch, and is not of it.
    ({ unit, where }) =>
      unit !== null && (where === branch.id || where === branch.name || where === `branch.${branch.id}`),
  );
  return named.reduce<Priority | null>(
    (worst, { priority }) => (worst === null || priority < worst ? priority : worst),
    null,
  );
}
