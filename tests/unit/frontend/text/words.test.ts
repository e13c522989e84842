import { describe, expect, it } from 'vitest';
import { qualityReasons } from '@ebbline/shared/contract/reading';
import { cautionFor } from '../../../../frontend/src/text/cautions';
import { pointTitle } from '../../../../frontend/src/text/point-title';
import { sayReasons } from '../../../../frontend/src/text/words';
import { aSite } from '../../../screens/fixtures/builders';

describe('the words of the screens', () => {
  it('say every quality reason differently', () => {
    expect(new Set(qualityReasons.map((reason) => sayReasons([reason]))).size).toBe(qualityReasons.length);
  });

  it('carry a caution with every alarm that sends people to water, and defer to codes, maker and licence', () => {
    for (const entry of ['WATER-1', 'MARGIN-1', 'DEW-1', 'AIR-1', 'BOIL-1']) {
      expect(cautionFor(entry), entry).toMatch(/local codes.*maker.*licensed practice/);
    }
    expect(cautionFor('COM-1')).toBeNull();
  });

  it('name a branch’s point by the branch’s own name', () => {
    expect(pointTitle('branch.1.flow', aSite().units[0])).toBe('Branch flow, Rack 1');
    expect(pointTitle('branch.9.flow', undefined)).toBe('Branch flow, 9');
    expect(pointTitle('supply main low', undefined)).toBe('supply main low');
  });
});
