import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import { keyPath } from '../../../../../backend/src/evaluation/site/site-fault';
import { changed, type Change } from './change-document';

const entries = new Map([
  ['MARGIN-1', 'pressureDifference'],
  ['DEW-1', 'temperatureDifference'],
] as const);
const compile = (...changes: readonly Change[]) => compileSite(changed(...changes), derivedPointIds, entries);
const unitOf = (compiled: ReturnType<typeof compile>) => {
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.fault));
  return compiled.value.site.units[0];
};
const glycol = (more: object) => ({ kind: 'propyleneGlycol', ...more });

describe('the liquid of a site file', () => {
  it('is water on both sides where the file says nothing', () => {
    expect(unitOf(compile())).toMatchObject({ fluid: { kind: 'water' }, facilityFluid: { kind: 'water' } });
  });

  it('is glycol by the share and source that are stated', () => {
    const fluid = glycol({ source: 'ashrae', volumeFraction: '25 %' });
    expect(unitOf(compile([['templates', 'typeM', 'fluid'], fluid]))?.fluid).toEqual({
      kind: 'propyleneGlycol',
      source: 'ashrae',
      fraction: 0.25,
    });
  });

  // ASHRAE Handbook – Fundamentals (2001): 25 % by mass is 24.4 % by volume.
  it('turns a share by mass into one by volume where the source counts by volume', () => {
    const fluid = glycol({ source: 'ashrae', massFraction: '25 %' });
    const compiled = unitOf(compile([['templates', 'typeM', 'facilityFluid'], fluid]))?.facilityFluid;
    expect(compiled).toMatchObject({ source: 'ashrae' });
    expect(compiled !== undefined && 'fraction' in compiled ? compiled.fraction : Number.NaN).toBeCloseTo(0.244, 9);
  });

  it('is one for all units of a loop', () => {
    const compiled = compile(
      [['loops', 'shared'], { units: ['m1', 'm2'] }],
      [['units', 'm1', 'fluid'], glycol({ source: 'ashrae', volumeFraction: '25 %' })],
    );
    const faults = compiled.ok ? [] : compiled.fault.map(({ path, message }) => `${keyPath(path)}: ${message}`);
    expect(faults.join('\n')).toMatch(/loops.*units: its units state different fluids/);
  });
});
