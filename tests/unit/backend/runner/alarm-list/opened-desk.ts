import type { ChangeSettingsRequest } from '@ebbline/shared/contract/alarm-list';
import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { SettingRecord } from '../../../../../backend/src/evaluation/alarm-rules/settings/setting-record';
import { noAuthorisedList } from '../../../../../backend/src/ports/authorised-list';
import { RunnerAlarmListDesk } from '../../../../../backend/src/runner/alarm-list/alarm-list-desk';
import { RefusedChanges } from '../../../../../backend/src/runner/alarm-list/refused-changes';
import { SettingsInForce } from '../../../../../backend/src/runner/alarm-list/settings-in-force';
import { smallSite } from '../../../../helpers/small-site';

export const m1: SettingScope = { kind: 'unit', id: 'm1' };
export const m2: SettingScope = { kind: 'unit', id: 'm2' };
export const startMs = Date.UTC(2031, 4, 6, 7);

/** A desk over the small site, whose journal may be stopped. */
export function opened(records: readonly SettingRecord[] = [], waiting: readonly SettingRecord[] = []) {
  let nowMs = startMs;
  const settings = new SettingsInForce(smallSite(), records);
  const told: string[] = [];
  const journal: string[] = [];
  let takes = true;
  const refused = new RefusedChanges({
    settings,
    record(cause, reason) {
      if (takes) told.push(`${cause}: ${reason}`);
      return takes;
    },
  });
  const desk = new RunnerAlarmListDesk({
    settings,
    authorised: noAuthorisedList,
    waiting,
    record: (change, step) => {
      if (takes) journal.push(`${step} by ${change.operator}`);
      return takes;
    },
    relimit: () => refused.look(),
    nowMs: () => (nowMs += 60_000),
  });
  const propose = (name: string, asked: Partial<ChangeSettingsRequest>, byToken?: true) =>
    desk.change(
      { operator: name, entry: 'MARGIN-1', scope: m1, set: {}, reason: `asked by ${name}`, link: 'order 1', ...asked },
      { name, station: 'desk', ...(byToken === undefined ? {} : { byToken }) },
    );
  /** Asked for, and approved by a second person. */
  const ask = (name: string, asked: Partial<ChangeSettingsRequest>) => {
    const done = propose(name, asked);
    return done.ok && done.value.held === 'awaitsSecond'
      ? desk.decide(done.value.id, 'approve', { name: 'Mara', station: 'desk' })
      : done;
  };
  return {
    settings,
    refused,
    told,
    journal,
    desk,
    ask,
    propose,
    stop: () => (takes = false),
    goOn: () => (takes = true),
  };
}
