import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { AlarmPublication } from '@ebbline/shared/contract/alarm-publication';

/** One alarm after a change of it, in the words of the contract. */
export interface AlarmNews {
  /** `recorded: false` where the journal refuses the change for now; told again once it is recorded. */
  readonly alarm: Alarm;
  /** Null: in service. */
  readonly setAside: AlarmPublication['setAside'];
  /** Null: no change of its own, such as one that has come to stand under another alarm. */
  readonly change: AlarmPublication['change'];
}

/**
 * Takes what becomes of alarms out of the program: over MQTT; later by mail, webhook, or to the next in line. Each change is
 * told once it is recorded, in the order in which they happened.
 */
export interface AlarmNotice {
  /** Must not throw and not wait: the judge calls it between two slices. */
  tell(news: readonly AlarmNews[]): void;
}

/** Several takers, each told everything. */
export const noticeToAll = (takers: readonly AlarmNotice[]): AlarmNotice => ({
  tell(news) {
    for (const taker of takers) taker.tell(news);
  },
});
