import type { Intake } from '@ebbline/shared/contract/http-api';
import type { RawMessage } from '../../evaluation/pipeline/inputs';
import type { Acceptance, RefusalCode } from '../../evaluation/sample/acceptance';
import { printableStart } from './printable-start';

interface TopicCount {
  messages: number;
  refused: number;
}

interface RefusalCount {
  count: number;
  readonly example: Intake['refusals'][number]['example'];
}

/** Topics counted by name; whatever comes on further ones is counted together, so memory has a bound. */
export const TOPICS_REMEMBERED = 1000;
/** A topic may be 65,535 bytes long [MQTT-1.5.3]; its start tells enough. */
const TOPIC_SHOWN = 200;

/** What has come in, by topic, and what was refused, by code with an example of each. */
export class IntakeCounts {
  private readonly topics = new Map<string, TopicCount>();
  private readonly others: TopicCount = { messages: 0, refused: 0 };
  private readonly refusals = new Map<RefusalCode, RefusalCount>();
  private messages = 0;
  private samples = 0;
  private late = 0;
  private repeated = 0;
  private retained = 0;

  count({ topic, payload, retained }: RawMessage, acceptance: Acceptance, wallMs: number): void {
    this.messages += 1;
    this.samples += acceptance.accepted;
    this.late += acceptance.late;
    this.repeated += acceptance.repeated;
    if (retained) this.retained += 1;
    const counted = this.countOf(topic);
    counted.messages += 1;
    if (acceptance.refusal === null) return;
    counted.refused += 1;
    const { code, message } = acceptance.refusal;
    const before = this.refusals.get(code);
    if (before !== undefined) before.count += 1;
    else this.refusals.set(code, { count: 1, example: exampleOf(topic, message, payload, wallMs) });
  }

  report(): Intake {
    return {
      messages: this.messages,
      samples: this.samples,
      late: this.late,
      repeated: this.repeated,
      retained: this.retained,
      topics: [...this.topics].map(([topic, counts]) => ({ topic, ...counts })),
      otherTopics: { ...this.others },
      refusals: [...this.refusals].map(([code, refusal]) => ({ code, ...refusal })),
    };
  }

  private countOf(topic: string): TopicCount {
    const known = this.topics.get(topic);
    if (known !== undefined) return known;
    if (this.topics.size >= TOPICS_REMEMBERED || topic.length > TOPIC_SHOWN) return this.others;
    const fresh = { messages: 0, refused: 0 };
    this.topics.set(topic, fresh);
    return fresh;
  }
}

const exampleOf = (topic: string, message: string, payload: Uint8Array, wallMs: number): RefusalCount['example'] => ({
  topic: printableStart(new TextEncoder().encode(topic.slice(0, TOPIC_SHOWN)), TOPIC_SHOWN),
  message,
  payloadStart: printableStart(payload),
  time: new Date(wallMs).toISOString(),
});
