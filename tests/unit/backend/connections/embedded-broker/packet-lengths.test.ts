import fc from 'fast-check';
import { generate } from 'mqtt-packet';
import { describe, expect, it } from 'vitest';
import { PacketLengths } from '../../../../../backend/src/connections/embedded-broker/packet-lengths';

const publish = (bytes: number): Buffer =>
  generate({ cmd: 'publish', topic: 'a/b', payload: Buffer.alloc(bytes), qos: 0, dup: false, retain: false });
/** The fixed header's other part: topic length, topic. */
const overhead = 5;

const passes = (stream: Buffer, cuts: readonly number[], longest: number): boolean => {
  const lengths = new PacketLengths(longest);
  const at = [...new Set(cuts.map((cut) => cut % (stream.length + 1)))].sort((a, b) => a - b);
  return [0, ...at].every((from, i) => lengths.allows(stream.subarray(from, at[i] ?? stream.length)));
};

describe('the lengths of packets', () => {
  it('are followed wherever the stream is cut, and only too long a packet is refused', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 40_000 }), { minLength: 1, maxLength: 8 }),
        fc.array(fc.nat(), { maxLength: 30 }),
        fc.integer({ min: 10, max: 40_000 }),
        (sizes, cuts, longest) => {
          const stream = Buffer.concat(sizes.map(publish));
          expect(passes(stream, cuts, longest)).toBe(sizes.every((size) => size + overhead <= longest));
        },
      ),
    );
  });

  it('pass packets without a body', () => {
    const pings = Buffer.concat([generate({ cmd: 'pingreq' }), generate({ cmd: 'pingreq' }), publish(10)]);
    expect(passes(pings, [1, 2, 3], 20)).toBe(true);
  });

  it.for([
    // MQTT 3.1.1, section 2.2.3, table 2.4: the smallest and largest value of each number of bytes.
    [[0x7f], 127],
    [[0x80, 0x01], 128],
    [[0xff, 0x7f], 16_383],
    [[0x80, 0x80, 0x01], 16_384],
    [[0xff, 0xff, 0x7f], 2_097_151],
    [[0x80, 0x80, 0x80, 0x01], 2_097_152],
    [[0xff, 0xff, 0xff, 0x7f], 268_435_455],
  ] as const)('%j means %i bytes', ([bytes, value]) => {
    expect(new PacketLengths(value).allows(Buffer.from([0x30, ...bytes]))).toBe(true);
    expect(new PacketLengths(value - 1).allows(Buffer.from([0x30, ...bytes]))).toBe(false);
  });

  it('may not take a fifth byte', () => {
    expect(new PacketLengths(1e9).allows(Buffer.from([0x30, 0x80, 0x80, 0x80, 0x80]))).toBe(false);
  });
});
