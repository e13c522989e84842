import { describe, expect, it } from 'vitest';
import { IntakeCounts, TOPICS_REMEMBERED } from '../../../../../backend/src/connections/mqtt-intake/intake-counts';
import type { RawMessage } from '../../../../../backend/src/evaluation/pipeline/inputs';
import type { Acceptance } from '../../../../../backend/src/evaluation/sample/acceptance';

const good: Acceptance = { accepted: 2, late: 0, repeated: 0, newestSourceMs: 0, refusal: null, refused: 0 };
const unknown: Acceptance = {
  ...good,
  accepted: 0,
  refusal: { code: 'TOPIC_UNKNOWN', message: 'no such topic' },
  refused: 1,
};
const bytes = new TextEncoder().encode('21.5');
const live = (topic: string, payload: Uint8Array = bytes): RawMessage => ({ topic, payload, retained: false });

describe('counts of what comes in', () => {
  it('keep messages and refusals by topic, and the first example of each code', () => {
    const counts = new IntakeCounts();
    counts.count(live('a'), good, 0);
    counts.count(live('a'), unknown, Date.UTC(2031, 0, 1));
    counts.count(live('b', new Uint8Array([1, 0x41, 0xff])), unknown, Date.UTC(2031, 0, 2));
    expect(counts.report()).toEqual({
      messages: 3,
      samples: 2,
      late: 0,
      repeated: 0,
      retained: 0,
      topics: [
        { topic: 'a', messages: 2, refused: 1 },
        { topic: 'b', messages: 1, refused: 1 },
      ],
      otherTopics: { messages: 0, refused: 0 },
      refusals: [
        {
          code: 'TOPIC_UNKNOWN',
          count: 2,
          example: { topic: 'a', message: 'no such topic', payloadStart: '21.5', time: '2031-01-01T00:00:00.000Z' },
        },
      ],
    });
  });

  it('keep late and repeated samples apart from accepted ones, and messages that the broker had kept', () => {
    const counts = new IntakeCounts();
    counts.count(live('a'), { ...good, late: 3 }, 0);
    counts.count(live('a'), { ...good, accepted: 0, late: 1, repeated: 5 }, 0);
    counts.count({ ...live('a'), retained: true }, { ...good, repeated: 2 }, 0);
    counts.count({ ...live('b'), retained: true }, unknown, 0);
    expect(counts.report()).toMatchObject({ messages: 4, samples: 4, late: 4, repeated: 7, retained: 2 });
  });

  it('remember a thousand topics and count the rest together, losing none', () => {
    const counts = new IntakeCounts();
    for (let i = 0; i < TOPICS_REMEMBERED + 500; i++) counts.count(live(`t/${i}`), i % 2 === 0 ? good : unknown, 0);
    counts.count(live('t/0'), good, 0);
    const report = counts.report();
    expect(report.topics).toHaveLength(1000);
    expect(report.topics[0]).toEqual({ topic: 't/0', messages: 2, refused: 0 });
    expect(report.otherTopics).toEqual({ messages: 500, refused: 250 });
  });

  it('show the start of a payload, of a topic and of a message as printable text of bounded length', () => {
    const counts = new IntakeCounts();
    const topic = `x\u0001${'ü'.repeat(300)}`;
    counts.count(live(topic, new Uint8Array(5000).fill(0x0a)), unknown, 0);
    const [refusal] = counts.report().refusals;
    expect(refusal?.example.payloadStart).toBe(`${'.'.repeat(80)}…`);
    expect(refusal?.example.topic).toMatch(/^[\x20-\x7e]{1,200}…?$/);
    expect(counts.report().otherTopics.messages).toBe(1);
  });

  it('grow by less than 30 MB for a million distinct topics', () => {
    const collect = (globalThis as { gc?: () => void }).gc;
    if (collect === undefined) throw new Error('the unit tests run with --expose-gc');
    const counts = new IntakeCounts();
    const topics = (from: number, to: number) => {
      for (let i = from; i < to; i++)
        counts.count(live(`site/${i}/a-long-enough-topic-to-be-seen-in-memory/${i}`), unknown, 0);
    };
    topics(0, 2000);
    collect();
    const before = process.memoryUsage().heapUsed;
    topics(2000, 1_000_000);
    collect();
    expect(process.memoryUsage().heapUsed - before).toBeLessThan(30e6);
    expect(counts.report().messages).toBe(1_000_000);
  });
});
