import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodePayload, type DecodedPayload } from '../../../../../backend/src/evaluation/decode/decode-payload';
import { isDeeperThan } from '../../../../../backend/src/evaluation/decode/json-depth';
import type { TopicPlan } from '../../../../../backend/src/evaluation/site/compiled-site';

const decode = (bytes: Uint8Array | string, format: TopicPlan['format'], maximum = 1000): DecodedPayload => {
  const into: DecodedPayload = { document: 'left over', refusal: 'PAYLOAD_EMPTY' };
  decodePayload(typeof bytes === 'string' ? Buffer.from(bytes) : bytes, format, maximum, into);
  return into;
};

describe('decodePayload', () => {
  it.each([
    ['', 'json', 'PAYLOAD_EMPTY'],
    ['  ', 'number', 'PAYLOAD_EMPTY'],
    ['{"a":', 'json', 'PAYLOAD_NOT_JSON'],
    ['{"a":NaN}', 'json', 'PAYLOAD_NOT_JSON'],
    ['[1]', 'json', 'PAYLOAD_NOT_OBJECT'],
    ['null', 'json', 'PAYLOAD_NOT_OBJECT'],
    ['7', 'json', 'PAYLOAD_NOT_OBJECT'],
    ['['.repeat(17), 'json', 'PAYLOAD_TOO_DEEP'],
    [`${'['.repeat(16)}${']'.repeat(16)}`, 'json', 'PAYLOAD_NOT_OBJECT'],
  ] as const)('refuses %j as %s: %s', (text, format, code) => {
    expect(decode(text, format)).toEqual({
      document: code === 'PAYLOAD_EMPTY' && text !== '' ? '' : undefined,
      refusal: code,
    });
  });

  it('looks at the size before anything else, and takes what just fits', () => {
    expect(decode(Buffer.alloc(11, 0xff), 'json', 10).refusal).toBe('PAYLOAD_TOO_LARGE');
    expect(decode('{"a":  1 }', 'json', 10).document).toEqual({ a: 1 });
  });

  it.each([
    // RFC 3629: overlong form of "/", a lone surrogate, a byte above F4, a cut sequence.
    [[0xc0, 0xaf]],
    [[0xed, 0xa0, 0x80]],
    [[0xf5, 0x80, 0x80, 0x80]],
    [[0xe2, 0x82]],
  ])('refuses bytes that are not UTF-8: %j', (bytes) => {
    expect(decode(Uint8Array.from(bytes), 'number').refusal).toBe('PAYLOAD_NOT_UTF8');
  });

  it('leaves a byte order mark out', () => {
    expect(decode('\uFEFF{"a":1}', 'json').document).toEqual({ a: 1 });
  });

  it('gives back every JSON object that it is sent', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 4 })), (object) => {
        const text = JSON.stringify(object);
        expect(decode(text, 'json', 1e6).document).toEqual(JSON.parse(text));
      }),
    );
  });

  it('never throws, whatever the bytes are', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), fc.constantFrom('json', 'number', 'status'), (bytes, format) => {
        const { document, refusal } = decode(bytes, format);
        expect(refusal === null ? document !== undefined : true).toBe(true);
      }),
    );
  });
});

describe('isDeeperThan', () => {
  it('counts as a parser would, brackets inside texts left out', () => {
    const depthOf = (value: unknown): number =>
      typeof value === 'object' && value !== null
        ? 1 + Math.max(0, ...Object.entries(value).map(([, inner]) => depthOf(inner)))
        : 0;
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), fc.integer({ min: 0, max: 6 }), (value, limit) => {
        const text = JSON.stringify(value);
        expect(isDeeperThan(Buffer.from(text), text, limit)).toBe(depthOf(value) > limit);
      }),
    );
  });
});
