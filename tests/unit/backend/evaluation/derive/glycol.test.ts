import { describe, expect, it } from 'vitest';
import { massFraction, volumeFraction } from '@ebbline/shared/units/quantity';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import type { CompiledFluid } from '../../../../../backend/src/evaluation/site/compiled-fluid';
import { explainPoint } from '../../../../../backend/src/evaluation/derive/explain-point';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const pg25: CompiledFluid = { kind: 'propyleneGlycol', source: 'ashrae', fraction: volumeFraction(0.25) };
const facility = ['facility.return.temperature', 'facility.flow'];

function derived(options: SiteOptions, returnC?: number) {
  const built = buildSite({ ...options, also: facility });
  runUnitM(built);
  if (returnC !== undefined) built.set('return.temperature', returnC);
  built.set('facility.supply.temperature', 27);
  built.set('facility.return.temperature', 37);
  built.set('facility.flow', 0.005);
  deriveHall(built.site, built.state, 0, 1_000);
  deriveUnit(built.site, built.state, 0, 1_000, false);
  return built;
}

const water = derived({});
const glycol = derived({ fluids: { fluid: pg25 } });

describe('a unit whose loop holds propylene glycol', () => {
  // ASHRAE Fundamentals (2001) and IAPWS SR6-08: PG25 needs 3.3 % more volume flow at 40 °C for the same heat and difference; here 36 to 45 °C.
  it('takes up 3.3 % less heat at equal flow and difference', () => {
    expect(Math.abs(water.value('heatRemoved') / glycol.value('heatRemoved') - 1.033)).toBeLessThan(0.003);
  });

  // ASHRAE Fundamentals (2001), 25 % by volume: 1014.3 kg/m³ at 40 °C against 992.2 kg/m³ of water.
  it('moves more mass, and its standing columns weigh more', () => {
    expect(glycol.value('massFlow') / water.value('massFlow')).toBeGreaterThan(1.02);
    expect(glycol.value('vacuumMargin')).not.toBe(water.value('vacuumMargin'));
  });

  it('tells its heat less surely: 1 % of heat capacity stands in the budget', () => {
    const relative = (built: typeof water): number =>
      built.expandedUncertainty('heatRemoved') / built.value('heatRemoved');
    expect(relative(glycol)).toBeGreaterThan(0.02);
    expect(relative(glycol) ** 2 - relative(water) ** 2).toBeCloseTo(4 * (0.01 ** 2 - 0.001 ** 2), 5);
  });

  it('keeps the vapour pressure of water, which is an upper bound, and says so', () => {
    const sourceOf = (built: typeof water, id: string): string | null =>
      explainPoint(built.site, built.state, 0, built.slot(id), false).source;
    expect(sourceOf(glycol, 'boilingMargin')).toContain('upper bound');
    expect(sourceOf(glycol, 'gasLoad')).toContain('dry gas too small');
    expect(sourceOf(water, 'boilingMargin')).not.toContain('upper bound');
  });

  it('leaves the facility side what it is', () => {
    expect(glycol.value('facilityHeat')).toBe(water.value('facilityHeat'));
  });

  it('has no heat, and the reason, beyond the temperatures of its source', () => {
    const cold: CompiledFluid = { kind: 'propyleneGlycol', source: 'melinder2010', fraction: 0.25 as never };
    const beyond = derived({ fluids: { fluid: cold } });
    expect(beyond.value('heatRemoved')).toBeNaN();
    expect(beyond.reasons('heatRemoved') & reasonBit.outOfRange).not.toBe(0);
  });

  it('keeps its margins, its walls and its expected flow while a hot return is beyond those temperatures', () => {
    const lost = ['vacuumMargin', 'vacuumMarginWorst', 'boilingMargin', 'lowerWallMargin', 'npshAvailable'] as const;
    const byMass: CompiledFluid = { kind: 'propyleneGlycol', source: 'melinder2010', fraction: massFraction(0.25) };
    const [within, beyond] = [39.9, 46].map((returnC) => derived({ fluids: { fluid: byMass } }, returnC));
    for (const id of [...lost, 'drivingPressure'])
      expect([id, beyond?.reasons(id), Number.isNaN(beyond?.value(id))]).toEqual([id, within?.reasons(id), false]);
    // The other source reaches there: what is held is 0.3 % of 1.5 m of column, 50 Pa.
    const known = derived({ fluids: { fluid: { ...pg25, fraction: volumeFraction(0.244) } } }, 46);
    for (const id of ['vacuumMargin', 'boilingMargin', 'drivingPressure'])
      expect(Math.abs((beyond?.value(id) ?? Number.NaN) - known.value(id))).toBeLessThan(150);
    expect(beyond?.value('heatRemoved')).toBeNaN();
  });
});

describe('a unit whose facility side holds propylene glycol', () => {
  it('counts the facility heat by it and leaves the loop what it is', () => {
    const built = derived({ fluids: { facilityFluid: pg25 } });
    expect(built.value('facilityHeat')).toBeLessThan(0.975 * water.value('facilityHeat'));
    expect(built.value('heatRemoved')).toBe(water.value('heatRemoved'));
  });
});
