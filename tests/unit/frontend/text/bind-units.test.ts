import { describe, expect, it } from 'vitest';
import { bindUnits } from '../../../../frontend/src/text/bind-units';

describe('a sentence with numbers', () => {
  it('keeps each number and its unit on one line', () => {
    expect(bindUnits('stored water 13 s; chips on fans alone at 61 °C; 5 kPa more; 3 % less; 96 L/min')).toBe(
      'stored water 13\u00a0s; chips on fans alone at 61\u00a0°C; 5\u00a0kPa more; 3\u00a0% less; 96\u00a0L/min',
    );
  });

  it('binds nothing else', () => {
    expect(bindUnits('Rack 5 probable. 2 with all sources, 0 more hoses')).toBe(
      'Rack 5 probable. 2 with all sources, 0 more hoses',
    );
  });
});
