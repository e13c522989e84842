import { expect, it } from 'vitest';
import { saySpan } from '../../../../frontend/src/text/say-span';

it.each([
  [0, '0 s'],
  [1.5, '1.5 s'],
  [9, '9 s'],
  [119, '119 s'],
  [120, '2 min'],
  [3725, '62 min 5 s'],
  [7200, '2 h'],
  [7260, '2 h 1 min'],
  [172_800, '2 d'],
  [180_000, '2 d 2 h'],
])('%d s is said as %s', (seconds, said) => {
  expect(saySpan(seconds).replaceAll('\u00a0', ' ')).toBe(said);
});
