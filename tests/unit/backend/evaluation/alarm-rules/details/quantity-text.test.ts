import { describe, expect, it } from 'vitest';
import { percentText } from '../../../../../../backend/src/evaluation/alarm-rules/details/quantity-text';

describe('a share in the words of an alarm', () => {
  it('has no sign where it is nothing', () => {
    expect(percentText(-0.003)).toBe('0 %');
    expect(percentText(0)).toBe('0 %');
  });

  it('is rounded to whole percents, and keeps the sign of what is below nothing', () => {
    expect(percentText(0.905)).toBe('91 %');
    expect(percentText(-0.012)).toBe('-1 %');
  });
});
