import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { trendPoints } from '../../../../../backend/src/evaluation/derive/tables/trend-points';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM, runRichUnitM } from '../../../../helpers/rich-unit-m';

const points = derivedPointIds.unit.map((id) =>
  id.replace('branch.<id>', 'branch.r1').replace('plate.<id>', 'plate.p1').replace('node.<id>', 'node.floorSupply'),
);

/** Trends of hours and days, and what is held against a period of hours. */
const slow = ['loopWaterTrend', 'waterBalance', 'waterBalanceSignificance', ...trendPoints.map(({ id }) => id)];

/** Uncertainties that history keeps: they have none of their own. */
const uncertainties = ['heatRemovedUncertainty', 'facilityHeatUncertainty', 'chipPowerUncertainty'];

/** Seconds of unit M in which water leaves the supply tank and comes into the separator. */
function watched(built: BuiltSite, seconds: number): BuiltSite {
  for (let s = 1; s <= seconds; s += 1) {
    runRichUnitM(built, s * 1000);
    built.set('supplyTank.level', 0.5 - s * 1e-4, s * 1000);
    built.set('separator.level', 0.6 + s * 1e-4, s * 1000);
    deriveHall(built.site, built.state, 0, s * 1000);
    deriveUnit(built.site, built.state, 0, s * 1000, false);
  }
  return built;
}

describe('a unit with every sensor and its commissioning figures', () => {
  it('has every derived point, good, once it was watched for some minutes', () => {
    const built = watched(buildRichUnitM(), 130);
    for (const point of points) {
      // Fans hold every plate below its limit, so that clock does not run.
      const expected =
        point === 'rideThroughFans' ? reasonBit.notApplicable : slow.includes(point) ? reasonBit.warming : 0;
      expect(built.reasons(point), point).toBe(expected);
    }
  });

  it('has each of them with an uncertainty, but for what rests on a level, counter or meter without stated accuracy', () => {
    const unstated = [
      'waterVolume',
      'loopWaterVolume',
      'topUpRate',
      'timeToEmpty',
      'timeToFull',
      'filterResistance',
      'pumpHeadRatio',
      'rideThroughFlow',
      'conductivity25',
      'ph',
    ];
    const built = watched(buildRichUnitM(), 130);
    const without = points.filter((point) => Number.isNaN(built.expandedUncertainty(point)));
    expect(without.sort()).toEqual([...unstated, ...uncertainties, ...slow, 'rideThroughFans'].sort());
    const stated = watched(
      buildRichUnitM({
        accuracy: {
          'supplyTank.level': [0.003, Number.NaN],
          'separator.level': [0.003, Number.NaN],
          'filter.pressureDrop': [200, Number.NaN],
          'pump.speed': [0.005, Number.NaN],
          'water.conductivity': [Number.NaN, 0.03],
          'water.ph': [0.1, Number.NaN],
          'topUp.volume': [Number.NaN, 0.02],
          'branch.r1.return.pressure': [300, Number.NaN],
        },
      }),
      130,
    );
    const still = points.filter((point) => Number.isNaN(stated.expandedUncertainty(point)));
    expect(still.sort()).toEqual(['rideThroughFans', ...uncertainties, ...slow].sort());
  });

  it('says warming, not bad, of what was not watched long enough', () => {
    const built = watched(buildRichUnitM(), 5);
    for (const point of ['supplyTankRate', 'separatorRate', 'loopWaterRate', 'topUpRate', 'timeToEmpty', 'timeToFull'])
      expect(built.reasons(point), point).toBe(reasonBit.warming);
  });

  it('starts its windows anew over a gap, as seconds that were not seen are not comparable', () => {
    const built = watched(buildRichUnitM(), 130);
    deriveUnit(built.site, built.state, 0, 140_000, false);
    expect(built.reasons('supplyTankRate')).toBe(reasonBit.warming);
  });

  it('takes one sample for each time, however often it is derived', () => {
    const once = watched(buildRichUnitM(), 130);
    const often = buildRichUnitM();
    for (let s = 1; s <= 130; s += 1) {
      runRichUnitM(often, s * 1000);
      often.set('supplyTank.level', 0.5 - s * 1e-4, s * 1000);
      often.set('separator.level', 0.6 + s * 1e-4, s * 1000);
      deriveHall(often.site, often.state, 0, s * 1000);
      for (let i = 0; i < 3; i += 1) deriveUnit(often.site, often.state, 0, s * 1000, false);
    }
    for (const point of points) expect(often.value(point), point).toEqual(once.value(point));
  });
});

describe('a unit that lacks what a point is worked out from', () => {
  it('says not applicable of it, and leaves the rest alone', () => {
    const built = buildSite();
    runUnitM(built);
    deriveUnit(built.site, built.state, 0, 0, false);
    for (const point of [
      'facilityHeat',
      'ua',
      'vacuumReserve',
      'inLeak',
      'timeToEmpty',
      'filterResistance',
      'conductivity25',
    ])
      expect(built.reasons(point), point).toBe(reasonBit.notApplicable);
    expect(built.reasons('heatRemoved')).toBe(0);
  });
});
