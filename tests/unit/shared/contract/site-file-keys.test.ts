import { describe, expect, it } from 'vitest';
import { knownKeysAt, siteFileKeys } from '@ebbline/shared/contract/site-file-keys';

describe('siteFileKeys', () => {
  it('describes every key', () => {
    expect(siteFileKeys().filter(({ description }) => description.length < 10)).toEqual([]);
  });

  it('names each key once', () => {
    const paths = siteFileKeys().map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
    expect(paths.length).toBeGreaterThan(100);
  });

  it('knows the keys at a place, through ids and lists', () => {
    expect(knownKeysAt(['site'])).toEqual(['id', 'name', 'timeZone', 'altitude', 'demo']);
    expect(knownKeysAt(['templates', 'any', 'vacuumSource', 'curve', 3])).toEqual(['pressure', 'suction']);
    expect(knownKeysAt(['units', 'any', 'points', 'loop.flow'])).toContain('reference');
    expect(knownKeysAt(['nowhere', 'at', 'all'])).toEqual([]);
  });
});
