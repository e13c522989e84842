import type { AlarmNews, AlarmNotice } from '../../ports/notice';
import type { RetainedHearer, RetainedTopics } from '../../ports/retained-topics';
import { alarmTopic, alarmTopics } from './alarm-topic';
import { gonePayload, publicationPayload } from './publication-payload';
import { PublicationQueue, type WaitingState } from './publication-queue';

export interface PublicationSettings {
  /** First levels of the topics. */
  readonly prefix: string;
  readonly site: string;
  /** Every alarm that has a topic now: those that stand, and those that are set aside. */
  readonly standing: () => readonly AlarmNews[];
}

/** States that wait at most: more alarms than a site has at once, by far. */
const WAITING = 10_000;
/** Messages that the broker has not confirmed yet, at most: what may be told twice after a broken connection. */
const UNDER_WAY = 50;
/** At the end so long is waited for what is still to be told, ms. */
const ENDING_MS = 2000;

/** Whether an alarm has no topic any more: it does not stand, is not set aside, and the journal has it so. */
const hasEnded = ({ alarm, setAside }: AlarmNews): boolean =>
  alarm.state === 'normal' && setAside === null && alarm.recorded !== false;

/**
 * Tells every change of an alarm over MQTT and leaves its state with the broker until it has gone. After each connection all
 * that stands is told again and what the broker holds besides is cleared, so that nothing needs to be known of the time before.
 */
export class AlarmPublication implements AlarmNotice, RetainedHearer {
  private readonly queue: PublicationQueue;
  private readonly stands = new Set<string>();
  /** What is to be told as it stands once nothing newer waits. */
  private readonly again = new Map<string, AlarmNews>();
  /** Gone, and not told so for want of room: what the broker holds of them is cleared. */
  private readonly cleared = new Set<string>();
  private online = false;
  private underWay = 0;
  private idle: (() => void) | null = null;

  constructor(
    private readonly settings: PublicationSettings,
    private readonly topics: RetainedTopics,
    waiting = WAITING,
  ) {
    this.queue = new PublicationQueue(waiting);
  }

  start(): void {
    this.topics.start(alarmTopics(this.settings.prefix, this.settings.site), this);
  }

  tell(news: readonly AlarmNews[]): void {
    for (const one of news) this.put(one);
    this.send();
  }

  connected(): void {
    this.online = true;
    this.tellAll();
    this.send();
  }

  lost(): void {
    this.online = false;
    this.queue.keepNewest();
    this.idle?.();
  }

  held(topic: string, payload: string): void {
    if (payload === '') return;
    const gone = gonePayload(this.settings.site, payload);
    if (gone !== null && this.topicOf(gone.alarm) === topic) {
      if (this.stands.has(gone.alarm)) return;
      this.queue.put({ ...gone, ends: true });
      this.send();
      return;
    }
    // Nothing that we wrote. Where an alarm of this topic stands, ours has come or is about to come in its place.
    if (![...this.stands].some((alarm) => this.topicOf(alarm) === topic)) void this.topics.put(topic, '');
  }

  /** Waits a little for what is still to be told, then ends. What stands stays with the broker. */
  async stop(): Promise<void> {
    if (this.online && this.waits()) {
      const told = new Promise<void>((resolve) => (this.idle = resolve));
      const timer = setTimeout(() => this.idle?.(), ENDING_MS);
      await told;
      clearTimeout(timer);
    }
    await this.topics.stop();
  }

  private put(news: AlarmNews): void {
    const { id } = news.alarm;
    const ends = hasEnded(news);
    if (ends) this.stands.delete(id);
    else this.stands.add(id);
    this.again.delete(id);
    this.cleared.delete(id);
    this.queue.put({ alarm: id, payload: publicationPayload(this.settings.site, news), ends });
  }

  /** What waits is newer than what stands was when it was put there; the rest is told as it stands. */
  private tellAll(): void {
    this.queue.keepNewest();
    this.queue.lost = false;
    const waiting = this.queue.alarms();
    this.stands.clear();
    this.again.clear();
    for (const id of this.queue.endsLost) if (!waiting.has(id)) this.cleared.add(id);
    this.queue.endsLost.clear();
    for (const news of this.settings.standing()) {
      const { id } = news.alarm;
      this.stands.add(id);
      this.cleared.delete(id);
      if (!waiting.has(id)) this.again.set(id, news);
    }
  }

  private next(): WaitingState | null {
    const state = this.queue.take();
    if (state !== null) return state;
    for (const [id, news] of this.again) {
      this.again.delete(id);
      return { alarm: id, payload: publicationPayload(this.settings.site, news), ends: false };
    }
    for (const id of this.cleared) {
      this.cleared.delete(id);
      return { alarm: id, payload: '', ends: false };
    }
    return null;
  }

  private waits(): boolean {
    return this.queue.length + this.again.size + this.cleared.size + this.underWay > 0;
  }

  private send(): void {
    while (this.online && this.underWay < UNDER_WAY) {
      const state = this.next();
      if (state === null) break;
      void this.hand(state);
    }
    if (!this.waits()) this.idle?.();
  }

  private async hand({ alarm, payload, ends }: WaitingState): Promise<void> {
    this.underWay += 1;
    const topic = this.topicOf(alarm);
    const told = [this.topics.put(topic, payload), ...(ends ? [this.topics.put(topic, '')] : [])];
    await Promise.all(told);
    this.underWay -= 1;
    if (this.queue.lost && this.queue.length === 0) this.tellAll();
    this.send();
  }

  private topicOf(alarm: string): string {
    return alarmTopic(this.settings.prefix, this.settings.site, alarm);
  }
}
