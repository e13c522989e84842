import { describe, expect, it } from 'vitest';
import { equationParts } from '../../../../frontend/src/text/equation-parts';

const printed = (formula: string): string =>
  equationParts(formula)
    .map(({ set, text }) => (set === 'line' ? text : `${set}[${text}]`))
    .join('');

describe('an equation as it is printed', () => {
  it('has its indices below the line, to the end of their word', () => {
    expect(printed('p_amb − max(p_anchor − ρ·g·(z − z_anchor))')).toBe(
      'psub[amb] − max(psub[anchor] − ρ·g·(z − zsub[anchor]))',
    );
    expect(printed('T_supply − T_facility,supply')).toBe('Tsub[supply] − Tsub[facility,supply]');
    expect(printed('e_w(T)')).toBe('esub[w](T)');
  });

  it('has its exponents above the line, a bracket without its own brackets', () => {
    expect(printed('q₀·(Δp/Δp₀)^(1/n)')).toBe('q₀·(Δp/Δp₀)sup[1/n]');
    expect(printed('r^((κ+1)/κ)')).toBe('rsup[(κ+1)/κ]');
    expect(printed('(q/q₀)^−n')).toBe('(q/q₀)sup[−n]');
  });

  it('stays as it is without either', () => {
    expect(equationParts('q = ΔV/Δt')).toEqual([{ set: 'line', text: 'q = ΔV/Δt' }]);
    expect(equationParts('')).toEqual([]);
  });
});
