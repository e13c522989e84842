import { describe, expect, it } from 'vitest';
import { modes } from '@ebbline/shared/contract/http-api';
import { decimalsOfStep } from '../../../../frontend/src/charts/chart-options';
import { chartScale } from '../../../../frontend/src/charts/chart-scale';

const plain = { unit: '', factor: 1, decimals: 0 };

describe('the scale of a chart', () => {
  it('writes numbers with their unit and one digit more than the table', () => {
    const scale = chartScale('pressureDifference', { unit: 'kPa', factor: 1e-3, decimals: 1 });
    expect(scale.say(13.517)).toBe('13.52\u00a0kPa');
    expect(scale.words).toBeNull();
  });

  it('writes yes and no as words, and their mean as a share of the time', () => {
    const scale = chartScale('yesNo', plain);
    expect([0, 1, 0.25].map(scale.say)).toEqual(['no', 'yes', 'yes 25 % of the time']);
  });

  it('names every mode, and does not name a mean of two', () => {
    const scale = chartScale('mode', plain);
    expect(scale.words).toHaveLength(modes.length);
    expect(scale.say(6)).toBe('running');
    expect(scale.say(6.5)).toBe('several');
  });

  it.each([
    [5, 0],
    [0.5, 1],
    [0.25, 2],
    [0.025, 3],
    [20, 0],
  ])('prints the steps of its axis, %d, with %d decimals', (step, decimals) => {
    expect(decimalsOfStep(step)).toBe(decimals);
  });
});
