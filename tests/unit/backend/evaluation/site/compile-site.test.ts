import { describe, expect, it } from 'vitest';
import { smallSite } from '../../../../helpers/small-site';

describe('compileSite', () => {
  it('compiles the small site', () => {
    const site = smallSite();
    expect(site.holders.map(({ id }) => id)).toEqual(['north', 'm1', 'm2']);
  });
});
