import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldAt } from '../../../../../backend/src/evaluation/decode/field-at';
import { readValue, type ReadValue } from '../../../../../backend/src/evaluation/decode/read-value';
import { readSourceTime } from '../../../../../backend/src/evaluation/decode/source-time';

const words = new Map([
  ['ON', 1],
  ['OFF', 0],
  ['true', 1],
  ['2', 5],
]);
const read = (raw: unknown, withWords = false): ReadValue => {
  const into: ReadValue = { value: -1, refusal: null };
  readValue(raw, withWords ? words : null, into);
  return into;
};

describe('readValue', () => {
  it.each([
    [21.5, 21.5],
    ['21.5', 21.5],
    [' -1e3 ', -1000],
    ['+.5', 0.5],
    [0, 0],
  ])('reads %j as the number %d', (raw, value) => {
    expect(read(raw)).toEqual({ value, refusal: null });
  });

  it.each([
    [undefined, 'FIELD_MISSING'],
    [null, 'FIELD_MISSING'],
    [true, 'VALUE_NOT_NUMBER'],
    [{}, 'VALUE_NOT_NUMBER'],
    [[1], 'VALUE_NOT_NUMBER'],
    ['', 'VALUE_NOT_NUMBER'],
    ['21,5', 'VALUE_NOT_NUMBER'],
    ['0x1F', 'VALUE_NOT_NUMBER'],
    ['12 kPa', 'VALUE_NOT_NUMBER'],
    ['NaN', 'VALUE_NOT_FINITE'],
    ['-inf', 'VALUE_NOT_FINITE'],
    ['1e999', 'VALUE_NOT_FINITE'],
    [Number.POSITIVE_INFINITY, 'VALUE_NOT_FINITE'],
  ])('refuses %j: %s', (raw, refusal) => {
    expect(read(raw)).toEqual({ value: Number.NaN, refusal });
  });

  it.each([
    ['ON', 1],
    [' OFF ', 0],
    [true, 1],
    [2, 5],
  ])('means %j by its word', (raw, value) => {
    expect(read(raw, true)).toEqual({ value, refusal: null });
  });

  it.each(['on', 1, false, {}, 'NaN'])('refuses a word without meaning: %j', (raw) => {
    expect(read(raw, true).refusal).toBe('VALUE_WORD_UNKNOWN');
  });

  it('reads every finite number back, sent as number or as text', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        expect(read(number).value).toBe(number);
        expect(read(String(number)).value).toBeCloseTo(number, 12);
      }),
    );
  });
});

describe('fieldAt', () => {
  const document: unknown = JSON.parse('{"a":{"b.c":1,"list":[10,20]},"__proto__":{"x":5},"t":"text"}');
  it.each([
    [['a', 'b.c'], 1],
    [['a', 'list', '1'], 20],
    [['a', 'b', 'c'], undefined],
    [['t', 'length'], undefined],
    [['constructor'], undefined],
    [['a', 'toString'], undefined],
    [['__proto__', 'x'], 5],
  ])('finds %j', (path, value) => {
    expect(fieldAt(document, path)).toBe(value);
  });
});

describe('readSourceTime', () => {
  it.each([
    ['2026-01-01T00:00:00Z', 'iso', 1_767_225_600_000],
    [1_767_225_600, 'epochSeconds', 1_767_225_600_000],
    ['1767225600.25', 'epochSeconds', 1_767_225_600_250],
    [1_767_225_600_000, 'epochMilliseconds', 1_767_225_600_000],
  ] as const)('reads %j as %s', (raw, form, expected) => {
    expect(readSourceTime(raw, form)).toBe(expected);
  });

  it.each([
    [1_767_225_600, 'iso'],
    ['today', 'epochSeconds'],
    [1e300, 'epochSeconds'],
    [{}, 'epochMilliseconds'],
    [true, 'epochMilliseconds'],
  ] as const)('refuses %j as %s', (raw, form) => {
    expect(readSourceTime(raw, form)).toBeNaN();
  });
});
