import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RetainedRoom } from '../../../../../backend/src/connections/embedded-broker/retained-room';

describe('room for retained messages', () => {
  it('is bounded by topics; a topic that is known may change, and an empty payload frees it', () => {
    const room = new RetainedRoom({ retainedTopics: 2, retainedBytes: 1000 });
    expect(['a', 'b', 'c', 'a'].map((topic) => room.takes(topic, 10))).toEqual([true, true, false, true]);
    expect(room.takes('a', 0)).toBe(true);
    expect(room.takes('c', 10)).toBe(true);
  });

  it('never holds more bytes or topics than it may, whatever comes', () => {
    const message = fc.record({ topic: fc.constantFrom('a', 'b', 'c', 'd', 'e'), bytes: fc.nat(60) });
    fc.assert(
      fc.property(fc.array(message, { maxLength: 200 }), (messages) => {
        const room = new RetainedRoom({ retainedTopics: 3, retainedBytes: 100 });
        const held = new Map<string, number>();
        for (const { topic, bytes } of messages) {
          if (room.takes(topic, bytes)) held.set(topic, bytes);
          if (bytes === 0) held.delete(topic);
          expect(held.size).toBeLessThanOrEqual(3);
          expect([...held].reduce((sum, [name, size]) => sum + size + 2 * name.length, 0)).toBeLessThanOrEqual(100);
        }
      }),
    );
  });
});
