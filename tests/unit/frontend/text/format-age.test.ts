import { describe, expect, it } from 'vitest';
import { formatAge, formatDuration } from '../../../../frontend/src/text/format-age';

describe('an age in words', () => {
  it.each([
    [0, '< 3\u00a0s'],
    [2.9, '< 3\u00a0s'],
    [3, '3\u00a0s'],
    [119.9, '119\u00a0s'],
    [120, '2\u00a0min'],
    [7_200, '2\u00a0h'],
    [172_800, '2\u00a0d'],
  ])('of %d s reads %s', (seconds, words) => {
    expect(formatAge(seconds)).toBe(words);
  });

  it('that is not known says so', () => {
    expect(formatAge(null)).toBe('age not known');
  });

  it('never grows younger in a longer time', () => {
    expect(formatDuration(-5)).toBe('0\u00a0s');
  });
});
