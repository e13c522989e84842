import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { velocityLimitSource } from '../../../../../backend/src/evaluation/derive/pipe-plan';
import type { CompiledUnit } from '../../../../../backend/src/evaluation/site/compiled-site';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import type { BuiltSite, SiteOptions } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM } from '../../../../helpers/rich-unit-m';

function derived(values: Readonly<Record<string, number>>, change: SiteOptions = {}): BuiltSite {
  const built = buildRichUnitM(change);
  for (const [point, value] of Object.entries(values)) built.set(point, value);
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built;
}

function unitOf({ site }: BuiltSite): CompiledUnit {
  const [unit] = site.units;
  if (unit === undefined) throw new Error('no unit');
  return unit;
}

const exchangerPoints = ['ua', 'uaRatio', 'foulingResistance', 'foulingFactor'] as const;

describe('an exchanger whose sensors contradict each other', () => {
  it('is no fouled one: water that crosses is a sensor’s fault', () => {
    const built = derived({ 'facility.return.temperature': 47 });
    for (const point of [...exchangerPoints, 'lmtd', 'effectiveness', 'ntu'])
      expect(built.reasons(point), point).toBe(reasonBit.contradicted);
  });

  it('is no fouled one where the two sides do not carry the same heat', () => {
    const built = derived({ 'facility.flow': 8 / 995 });
    for (const point of exchangerPoints) {
      expect(built.reasons(point), point).toBe(reasonBit.contradicted);
      expect(built.value(point), point).toBeNaN();
    }
  });

  it('has no figure where the ends of both waters are nearer than their thermometers tell', () => {
    const built = derived({ 'facility.return.temperature': 44.9 });
    for (const point of exchangerPoints) expect(built.reasons(point), point).toBe(reasonBit.undefined);
  });

  it('says nothing below 30 % of a commissioned flow', () => {
    const commissioned = { ...unitOf(buildRichUnitM()).design.commissioned, uaLoopMassFlowKgPerS: 25 };
    const built = derived({}, { design: { commissioned } });
    for (const point of ['uaRatio', 'foulingResistance', 'foulingFactor'])
      expect(built.reasons(point), point).toBe(reasonBit.undefined);
    expect(built.reasons('ua')).toBe(0);
  });
});

describe('fouling', () => {
  it('is 0 within its uncertainty where the exchanger is clean, and above it where a quarter of UA is gone', () => {
    const clean = derived({});
    const ua = clean.value('ua');
    const { commissioned } = unitOf(buildRichUnitM()).design;
    const again = (uaWPerK: number): BuiltSite =>
      derived({}, { design: { commissioned: { ...commissioned, uaWPerK } } });
    expect(Math.abs(again(ua).value('foulingResistance'))).toBeLessThan(
      again(ua).expandedUncertainty('foulingResistance'),
    );
    const dirty = again(ua / 0.6);
    expect(dirty.value('foulingResistance')).toBeGreaterThan(dirty.expandedUncertainty('foulingResistance'));
  });

  it('is told by the films that records found: less facility water is less of it where the film stands there', () => {
    const { commissioned } = unitOf(buildRichUnitM()).design;
    const covariance = [1e-4, 1e-4, 0, 0, 0, 0] as const;
    const of = (film2: number): number =>
      derived(
        {},
        {
          design: {
            commissioned: {
              ...commissioned,
              uaFacilityMassFlowKgPerS: 2 * 5.74,
              uaFit: {
                shares: { film1: 1 - film2, film2, wall: 0 },
                covariance,
                excessVariance: 0,
                degreesOfFreedom: 0,
              },
            },
          },
        },
      ).value('uaRatio');
    expect(of(0.8)).toBeGreaterThan(of(0.2));
  });
});

describe('a rack of 500 kW on a manifold about 3 inches square', () => {
  const values = { 'branch.r1.flow': 722.2 / 60_000, 'supply.temperature': 35, 'branch.r1.return.temperature': 45 };
  const on = (table: 'copperHandbook' | 'copperBs6700'): BuiltSite =>
    derived(values, { branchParts: { manifoldAreaM2: 0.0762 ** 2 }, design: { permissibleVelocity: { table } } });

  it('is faster than copper bears by the handbook, beyond any doubt, and says which table says so', () => {
    const built = on('copperHandbook');
    const share = built.value('branch.r1.manifoldVelocityShare');
    // Common practice, no source, for the rack: 12.04 L/s through 58.06 cm² is 2.07 m/s, and hot water may do 1.5.
    expect(built.value('branch.r1.manifoldVelocity')).toBeCloseTo(2.07, 2);
    expect(share).toBeCloseTo(2.07 / 1.5, 2);
    expect(share - built.expandedUncertainty('branch.r1.manifoldVelocityShare')).toBeGreaterThan(1);
    expect(velocityLimitSource(unitOf(built))).toMatch(/copper, by Copper Development Association/);
  });

  it('is not by BS 6700: the site chooses', () => {
    expect(on('copperBs6700').value('branch.r1.manifoldVelocityShare')).toBeCloseTo(2.07 / 3, 2);
  });

  it('is told its velocity and judged by nothing where the site chooses no table', () => {
    const built = derived(values, { design: { permissibleVelocity: null } });
    expect(built.reasons('branch.r1.manifoldVelocity')).toBe(0);
    expect(built.reasons('branch.r1.manifoldVelocityShare')).toBe(reasonBit.notApplicable);
  });
});

describe('what rests on a flow or a power', () => {
  it('says undefined, never infinity, at hardly any flow', () => {
    const built = derived({ 'loop.flow': 1e-6, 'branch.r1.flow': 1e-7, 'transfer.flow': 1e-7 });
    for (const point of [
      'mainFrictionLoss',
      'branch.r1.resistanceRatio',
      'plate.p1.filmCoefficient',
      'plate.p1.channelReynolds',
    ])
      expect(built.reasons(point) & reasonBit.undefined, point).toBe(reasonBit.undefined);
  });

  it('says undefined of the temperature at full power of a chip that idles at its water’s temperature', () => {
    const built = derived({ 'plate.p1.temperature': 36.4, 'plate.p1.power': 8 });
    expect(built.reasons('plate.p1.temperatureAtFullPower')).toBe(reasonBit.undefined);
    expect(built.reasons('plate.p1.heatFlux')).toBe(0);
  });

  it('is less sure of full power the further from it a chip runs', () => {
    const at = (power: number): number =>
      derived({ 'plate.p1.power': power, 'plate.p1.temperature': 36.3 + 0.06 * power }).expandedUncertainty(
        'plate.p1.temperatureAtFullPower',
      );
    expect(at(100)).toBeGreaterThan(1.8 * at(300));
  });

  it('does not compare a pump at another flow over speed', () => {
    const built = derived({ 'pump.speed': 0.8 });
    for (const point of ['pumpHeadRatio', 'pumpEfficiencyRatio'])
      expect(built.reasons(point), point).toBe(reasonBit.notApplicable);
    expect(built.reasons('pumpHydraulicPower')).toBe(0);
  });

  it('does not tell the resistance of an isolated branch', () => {
    expect(derived({ 'branch.r1.isolated': 1 }).reasons('branch.r1.resistanceRatio')).toBe(reasonBit.notApplicable);
  });

  it('takes a bad input for what it is', () => {
    const built = buildRichUnitM();
    built.mark('branch.r1.flow', reasonBit.stale);
    deriveUnit(built.site, built.state, 0, 0, false);
    for (const point of ['branch.r1.manifoldVelocity', 'branch.r1.manifoldVelocityShare', 'branch.r1.resistanceRatio'])
      expect(built.reasons(point), point).toBe(reasonBit.inputBad);
  });

  it('is told of the water’s warmth in a filter whose loss is not turbulent: warm water hides dirt', () => {
    const { commissioned } = unitOf(buildRichUnitM()).design;
    const of = (returnC: number): number =>
      derived(
        { 'return.temperature': returnC },
        { design: { commissioned: { ...commissioned, filterExponent: 1, filterTemperatureC: 20 } } },
      ).value('filterResistance');
    // Viscosity of water falls from 1.0016 to 0.5465 mPa s from 20 to 50 °C (IAPWS R12-08).
    expect(of(50) / of(20)).toBeCloseTo(1.0016 / 0.5465, 2);
  });
});
