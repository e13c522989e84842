import { describe, expect, it } from 'vitest';
import { lengthOf, tonePatterns } from '../../../../frontend/src/state/tone-pattern';

const all = [tonePatterns[1], tonePatterns[2], tonePatterns[3]];

describe('the patterns of tones', () => {
  it('differ in number and in length of their tones, so that pitch is not needed to tell them apart', () => {
    expect(new Set(all.map(({ tones }) => tones.length)).size).toBe(3);
    expect(new Set(all.map(({ tones }) => tones[0]?.lengthS)).size).toBe(3);
  });

  it('come the more often the more urgent they are, and are over before they come again', () => {
    const [first, second, third] = all.map(({ everyS }) => everyS);
    expect(first).toBeLessThan(second ?? 0);
    expect(second).toBeLessThan(third ?? 0);
    for (const pattern of all) expect(lengthOf(pattern)).toBeLessThan(pattern.everyS / 2);
  });
});
