import { describe, expect, it } from 'vitest';
import { firstSentence } from '../../../../frontend/src/text/first-sentence';

describe('first sentence', () => {
  it('ends at the first full stop that a new sentence follows', () => {
    expect(firstSentence('Isolate the rack; keep 1.5 kPa. Do not drain it.')).toBe('Isolate the rack; keep 1.5 kPa.');
  });

  it('is the whole text where there is only one', () => {
    expect(firstSentence('Lower the set pressure.')).toBe('Lower the set pressure.');
    expect(firstSentence('Lower the set pressure')).toBe('Lower the set pressure');
    expect(firstSentence('')).toBe('');
  });
});
