import type { ChangeSettingsRequest, SettingChange } from '@ebbline/shared/contract/alarm-list';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { EntryId } from '../../evaluation/alarm-rules/entry-ids';
import { nameKey } from '../../access/name-key';
import { alarmClasses } from '../../evaluation/alarm-rules/rationale/alarm-classes';
import { rationaleTable } from '../../evaluation/alarm-rules/rationale/rationale-table';
import type { SettingRecord } from '../../evaluation/alarm-rules/settings/setting-record';
import type { SettingActionFault } from '../../ports/alarm-list';
import type { Actor } from '../../ports/identity';
import { toSettingChange } from './audit';
import { sameScope } from './same-scope';

/** Whether no one person alone changes it. */
export const isHighlyManaged = (entry: EntryId): boolean => alarmClasses[rationaleTable[entry].class].highlyManaged;

/** Changes that wait for a second person, those of before the start too. */
export class SettingProposals {
  private readonly waiting: Map<string, SettingRecord>;

  /** @param records that wait by the journal, oldest first */
  constructor(records: readonly SettingRecord[]) {
    this.waiting = new Map(records.map((record) => [record.id, record]));
  }

  /** Oldest first. */
  all(): readonly SettingRecord[] {
    return [...this.waiting.values()];
  }

  find(id: string): Result<SettingRecord, SettingActionFault> {
    const found = this.waiting.get(id);
    const message = `No change ${id} waits for approval: somebody has decided on it; propose it again where it is still wanted.`;
    return found === undefined ? fail({ code: 'SETTING_PROPOSAL_UNKNOWN', message }) : ok(found);
  }

  /** Why it may not be proposed so; null: it may. */
  fault(
    { entry, link, scope }: Pick<ChangeSettingsRequest, 'entry' | 'link' | 'scope'>,
    actor: Actor,
  ): SettingActionFault | null {
    if (link === '') {
      const message = `${entry} is of a highly managed class: say in link where the change was approved.`;
      return { code: 'SETTING_LINK', message };
    }
    if (actor.byToken === true) return byToken(entry);
    const before = this.all().find((one) => one.entry === entry && sameScope(one.scope, scope));
    if (before === undefined) return null;
    const message = `A change of ${entry} by ${before.operator} waits there for approval; approve or withdraw that one first.`;
    return { code: 'SETTING_PROPOSED', message };
  }

  /** One that no run of the program before this one gave, by the time. @param decided those that were approved */
  nextId(nowMs: number, decided: readonly SettingRecord[]): string {
    let n = Math.round(nowMs);
    const isTaken = (id: string): boolean => this.waiting.has(id) || decided.some(({ proposal }) => proposal === id);
    while (isTaken(`proposal-${n}`)) n += 1;
    return `proposal-${n}`;
  }

  add(record: SettingRecord): void {
    this.waiting.set(record.id, record);
  }

  remove(id: string): void {
    this.waiting.delete(id);
  }
}

/** Why somebody may not approve a proposal; null: may. */
export function secondFault(asked: SettingRecord, actor: Actor): SettingActionFault | null {
  if (actor.byToken === true) return byToken(asked.entry);
  if (nameKey(actor.name) !== nameKey(asked.operator)) return null;
  const message = `${asked.operator} asked for this change of ${asked.entry}: somebody else with the right to change limits has to approve it.`;
  return { code: 'SETTING_SECOND', message };
}

const byToken = (entry: string): SettingActionFault => ({
  code: 'SETTING_SECOND',
  message: `${entry} is of a highly managed class: two persons who have signed in change it, and no token is one of them; sign in yourself.`,
});

/** A change of which nothing is in force. */
export const held =
  (how: NonNullable<SettingChange['held']>) =>
  (record: SettingRecord): SettingChange => ({ ...toSettingChange(record), held: how });
