import type { BrokerLimits } from './broker-limits';

/** Keeps account of retained messages: which still find room, by number of topics and by bytes. */
export class RetainedRoom {
  private readonly bytesOf = new Map<string, number>();
  private bytes = 0;

  constructor(private readonly limits: Pick<BrokerLimits, 'retainedTopics' | 'retainedBytes'>) {}

  /** Whether this one may be kept. An empty payload frees its topic (MQTT 3.1.1, section 3.3.1.3). */
  takes(topic: string, payloadBytes: number): boolean {
    const before = this.bytesOf.get(topic);
    if (payloadBytes === 0) {
      this.bytesOf.delete(topic);
      this.bytes -= before ?? 0;
      return true;
    }
    // A topic of n characters takes 2n bytes at most.
    const needed = payloadBytes + 2 * topic.length;
    const free = this.limits.retainedBytes - this.bytes + (before ?? 0);
    if (needed > free || (before === undefined && this.bytesOf.size >= this.limits.retainedTopics)) return false;
    this.bytesOf.set(topic, needed);
    this.bytes += needed - (before ?? 0);
    return true;
  }
}
