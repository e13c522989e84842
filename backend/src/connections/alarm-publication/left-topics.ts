import type { RetainedHearer, RetainedTopics } from '../../ports/retained-topics';
import { alarmTopic, alarmTopics } from './alarm-topic';
import { publicationOf } from './publication-payload';

/**
 * Clears what an earlier run told under topics that are no longer ours, as another prefix was set since: it would stand there as if it
 * were so. Only what is in our own form, and at its place, is cleared; anybody may use these topics now.
 */
export class LeftTopics implements RetainedHearer {
  /** In this connection the broker was asked what it holds. */
  private answered = false;
  /** What it was told to clear in this connection; false: it may still hold that. */
  private clearing: Promise<boolean>[] = [];

  /** @param filter of the topics that were ours */
  constructor(
    private readonly filter: string,
    private readonly topics: RetainedTopics,
  ) {}

  start(): void {
    this.topics.start(this.filter, this);
  }

  connected(): void {
    this.answered = false;
    this.clearing = [];
  }

  asked(): void {
    this.answered = true;
  }

  lost(): void {
    // What was confirmed until then stays cleared; for the rest it is asked anew once the broker is back.
  }

  held(topic: string, payload: string): void {
    const told = publicationOf(payload);
    if (told === null) return;
    const [folder, place] = [alarmTopics('', told.site), alarmTopic('', told.site, told.alarm.id)];
    if (this.filter.endsWith(folder) && topic === this.filter.slice(0, -folder.length) + place)
      this.clearing.push(this.topics.put(topic, ''));
  }

  /** True where the broker said what it holds, and confirmed each of those that it was to clear. */
  async stop(): Promise<boolean> {
    await this.topics.stop();
    const cleared = await Promise.all(this.clearing);
    return this.answered && cleared.every((one) => one);
  }
}
