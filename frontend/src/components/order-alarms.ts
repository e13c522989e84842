import type { Alarm } from '@ebbline/shared/contract/alarm';
import { isGone, needsAcknowledgement } from './alarm-facts';

/** A first-out alarm with what follows from it. */
export interface AlarmGroup {
  readonly alarm: Alarm;
  readonly folded: readonly Alarm[];
}

function compare(one: Alarm, other: Alarm): number {
  return (
    one.priority - other.priority ||
    Number(isGone(one.state)) - Number(isGone(other.state)) ||
    Number(needsAcknowledgement(other.state)) - Number(needsAcknowledgement(one.state)) ||
    Date.parse(one.since) - Date.parse(other.since) ||
    one.id.localeCompare(other.id)
  );
}

const worstOf = ({ alarm, folded }: AlarmGroup): number =>
  Math.min(alarm.priority, ...folded.map((one) => one.priority));

/**
 * Worst first: priority, then what is still so, then who still waits for an answer, then the one that stands longest. What follows
 * from another alarm stands under it, and lends it its rank; a follower whose first-out is gone stands alone.
 */
export function orderAlarms(alarms: readonly Alarm[]): readonly AlarmGroup[] {
  const ids = new Set(alarms.map((alarm) => alarm.id));
  const isFolded = (alarm: Alarm): boolean =>
    alarm.foldedUnder !== null && alarm.foldedUnder !== alarm.id && ids.has(alarm.foldedUnder);
  const heads = alarms.filter((alarm) => !isFolded(alarm));
  const headIds = new Set(heads.map((alarm) => alarm.id));
  const headOf = (alarm: Alarm): string => {
    const seen = new Set<string>();
    let at: Alarm | undefined = alarm;
    while (at !== undefined && isFolded(at) && !seen.has(at.id)) {
      seen.add(at.id);
      const parent: string | null = at.foldedUnder;
      at = alarms.find((one) => one.id === parent);
    }
    return at !== undefined && headIds.has(at.id) ? at.id : '';
  };
  const followers = alarms.filter(isFolded);
  const groups = heads.map((alarm) => ({
    alarm,
    folded: followers.filter((one) => headOf(one) === alarm.id).sort(compare),
  }));
  const orphans = followers.filter((one) => headOf(one) === '').map((alarm) => ({ alarm, folded: [] }));
  return [...groups, ...orphans].sort((one, other) => worstOf(one) - worstOf(other) || compare(one.alarm, other.alarm));
}
