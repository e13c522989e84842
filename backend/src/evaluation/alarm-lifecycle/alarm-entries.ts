import type { AlarmIdentity } from './alarm-identity';
import { isKept, type AlarmRecord } from './alarm-record';

export interface AlarmEntry {
  readonly identity: AlarmIdentity;
  readonly record: AlarmRecord;
}

/** So many alarms that went back to normal are remembered, to tell a late second operator who was first. */
const rememberedClosed = 1000;

/**
 * Every alarm that stands or is set aside, by its place in the site's list of alarms (`index`). Records are replaced,
 * never changed.
 */
export class AlarmEntries {
  private readonly entries = new Map<number, AlarmEntry>();
  private readonly indexOf = new Map<string, number>();
  private readonly closed = new Map<string, AlarmRecord>();

  at(index: number): AlarmEntry | undefined {
    return this.entries.get(index);
  }

  /** The place of an alarm that is kept; undefined where none of that name is. */
  placeOf(alarm: string): number | undefined {
    const index = this.indexOf.get(alarm);
    return index !== undefined && this.entries.has(index) ? index : undefined;
  }

  indices(): IterableIterator<number> {
    return this.entries.keys();
  }

  records(): AlarmRecord[] {
    return [...this.entries.values()].map((entry) => entry.record);
  }

  /** As it was when it last went back to normal; null where that is not remembered. */
  closedOf(alarm: string): AlarmRecord | null {
    return this.closed.get(alarm) ?? null;
  }

  /** Puts the record in place of the one before; one that is not to be kept goes among the closed. */
  keep(index: number, identity: AlarmIdentity, record: AlarmRecord): void {
    this.closed.delete(identity.alarm);
    if (isKept(record)) {
      this.entries.set(index, { identity, record });
      this.indexOf.set(identity.alarm, index);
      return;
    }
    this.entries.delete(index);
    this.closed.set(identity.alarm, record);
    if (this.closed.size > rememberedClosed) {
      for (const oldest of this.closed.keys()) {
        this.closed.delete(oldest);
        break;
      }
    }
  }
}
