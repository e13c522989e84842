import { describe, expect, it } from 'vitest';
import { mergeFaults } from '../../../../frontend/src/screens/setup/merge-faults';

const fault = (line: number, key: string, message: string) => ({ line, key, message });

describe('faults of a site file', () => {
  it('that say the same of several places become one, with all places', () => {
    const merged = mergeFaults([
      fault(241, 'templates.m.fittings.mainBore', 'an opening of 24.5 mm lets water down (above about 8.5 mm)'),
      fault(300, 'templates.m.name', 'has no name'),
      fault(412, 'templates.h.fittings.mainBore', 'an opening of 50.6 mm lets water down (above about 8.5 mm)'),
      fault(464, 'templates.b.fittings.mainBore', 'an opening of 25.3 mm lets water down (above about 8.5 mm)'),
    ]);
    expect(merged.map(({ message }) => message)).toEqual([
      'an opening of 24.5 to 50.6 mm lets water down (above about 8.5 mm)',
      'has no name',
    ]);
    expect(merged[0]?.places.map(({ line }) => line)).toEqual([241, 412, 464]);
  });

  it('stay apart where the key or a word differs', () => {
    const same = 'is not used';
    const merged = mergeFaults([fault(1, 'a.x', same), fault(2, 'a.y', same), fault(3, 'b.x', 'is not known')]);
    expect(merged).toHaveLength(3);
  });

  it('keep equal words as they are', () => {
    const merged = mergeFaults([fault(1, 'a.x', 'above 8 mm'), fault(2, 'b.x', 'above 8 mm')]);
    expect(merged.map(({ message }) => message)).toEqual(['above 8 mm']);
  });
});
