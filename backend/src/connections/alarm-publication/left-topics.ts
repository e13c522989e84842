import type { RetainedHearer, RetainedTopics } from '../../ports/retained-topics';
import { alarmTopic, alarmTopics } from './alarm-topic';
import { publicationOf } from './publication-payload';

/**
 * Clears what an earlier run told under topics that are no longer ours, as another prefix was set since: it would stand there as if it
 * were so. Only what is in our own form, and at its place, is cleared; anybody may use these topics now.
 */
export class LeftTopics implements RetainedHearer {
  private reached = false;

  /** @param filter of the topics that were ours */
  constructor(
    private readonly filter: string,
    private readonly topics: RetainedTopics,
  ) {}

  start(): void {
    this.topics.start(this.filter, this);
  }

  connected(): void {
    this.reached = true;
  }

  lost(): void {
    // It is asked anew once the broker is back.
  }

  held(topic: string, payload: string): void {
    const told = publicationOf(payload);
    if (told === null) return;
    const [folder, place] = [alarmTopics('', told.site), alarmTopic('', told.site, told.alarm.id)];
    if (this.filter.endsWith(folder) && topic === this.filter.slice(0, -folder.length) + place)
      void this.topics.put(topic, '');
  }

  /** True where the broker was reached, so that what it held is cleared. */
  async stop(): Promise<boolean> {
    await this.topics.stop();
    return this.reached;
  }
}
