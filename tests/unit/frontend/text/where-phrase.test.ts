import { describe, expect, it } from 'vitest';
import { wherePhrase } from '../../../../frontend/src/text/where-phrase';

describe('where a value comes from', () => {
  it('is a place, or the way in which it was found', () => {
    expect(wherePhrase('Rack 3')).toBe('at Rack 3');
    expect(wherePhrase('by its exhaust meter')).toBe('by its exhaust meter');
  });
});
