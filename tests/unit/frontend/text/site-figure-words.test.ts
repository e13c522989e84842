import { describe, expect, it } from 'vitest';
import { siteFigures } from '../../../../backend/src/evaluation/derive/site-figures';
import { budgetTitle } from '../../../../frontend/src/text/budget-title';
import { siteFigureWords } from '../../../../frontend/src/text/site-figure-words';

describe('figures of the site file in an opened value', () => {
  it.each(Object.keys(siteFigures))('has words for %s', (key) => {
    expect(siteFigureWords(key)).not.toBeNull();
  });
});

describe('a part of an uncertainty budget in words', () => {
  it('names points, figures, models and units', () => {
    const title = (from: string): string => budgetTitle(from, 'branch.r1.flowShare', undefined, []);
    expect(title('elevations.accuracy')).toBe('Accuracy of the heights');
    expect(title('branch.<id>.flow')).toContain('r1');
    expect(title('gas not quite saturated')).toBe('Gas not quite saturated');
    expect(title('N3:heatRemoved')).toBe('N3, heat removed');
  });
});
