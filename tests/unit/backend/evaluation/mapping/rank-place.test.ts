import { describe, expect, it } from 'vitest';
import type { HeardPlace } from '../../../../../backend/src/evaluation/mapping/heard-place';
import { rankPlace } from '../../../../../backend/src/evaluation/mapping/rank-place';
import { heard, heardWords, siteWithNewUnits } from './plant-of-strangers';

const site = siteWithNewUnits();
const anyUnit: Parameters<typeof rankPlace>[3] = { unit: null, hall: null };
const first = (place: HeardPlace, options = anyUnit) => rankPlace(place, site, [], options)[0];
const said = (place: HeardPlace): string => {
  const best = first(place);
  return best === undefined
    ? 'not known'
    : `${best.holder} ${best.point} ${best.readAs.unit ?? ''} ${best.readAs.reference ?? ''}`.trim();
};

const keys = (...path: readonly string[]) => path;
const t = 'works/bay1/cdu-m3/status';

describe('what arrives under names of its own', () => {
  it.for<readonly [HeardPlace, string]>([
    // One object a unit, names in words and endings.
    [heard(t, keys('SupplyTemp_degC'), 31, 33), 'm3 supply.temperature degC'],
    [heard(t, keys('ReturnTemp_degC'), 40, 44), 'm3 return.temperature degC'],
    [heard(t, keys('FWS_SupTemp'), 18, 20), 'm3 facility.supply.temperature degC'],
    [heard(t, keys('prim', 'rtn', 'tmp'), 25, 27), 'm3 facility.return.temperature degC'],
    [heard(t, keys('SupplyTankPress_kPaA'), 84, 86), 'm3 supplyTank.pressure kPa absolute'],
    [heard(t, keys('SepPress_mbarg'), -610, -580), 'm3 separator.pressure mbar gauge'],
    [heard(t, keys('pump_suction_press'), 38, 41), 'm3 pump.inlet.pressure kPa absolute'],
    [heard(t, keys('LoopFlow_lpm'), 330, 350), 'm3 loop.flow L/min'],
    [heard(t, keys('primaryFlow_m3h'), 18, 19), 'm3 facility.flow m3/h'],
    [heard(t, keys('supply_tank_lvl_pct'), 60, 62), 'm3 supplyTank.level %'],
    [heard(t, keys('SepLevel'), 42, 47), 'm3 separator.level cm'],
    [heard(t, keys('FilterDP_kPa'), 11, 12), 'm3 filter.pressureDrop kPa'],
    [heard(t, keys('PumpSpd'), 71, 78), 'm3 pump.speed %'],
    [heard(t, keys('pump', 'kw'), 1.9, 2.2), 'm3 pump.power kW'],
    [heard(t, keys('VacPumpSpeed_Hz'), 30, 44), 'm3 vacuum.speed Hz'],
    [heard(t, keys('ValveCmd_pct'), 30, 40), 'm3 valve.command %'],
    [heard(t, keys('valve', 'feedback'), 30, 40), 'm3 valve.position %'],
    [heard(t, keys('SupplyTempSP'), 32), 'm3 supply.setPoint degC'],
    [heard(t, keys('cond_uScm'), 12, 13), 'm3 water.conductivity uS/cm'],
    [heard(t, keys('water_pH'), 8.2, 8.3), 'm3 water.ph 1'],
    [heardWords(t, keys('pumpRun'), ['ON', 'OFF']), 'm3 pump.running'],
    [heardWords(t, keys('leak_rope'), ['dry']), 'm3 water.found'],
    [heardWords(t, keys('opMode'), ['RUN', 'HOLD']), 'm3 mode'],
    // Racks and chips by number or name.
    [heard(t, keys('racks', '2', 'flow_lpm'), 41, 44), 'm3 branch.r2.flow L/min'],
    [heard(t, keys('Rack1_RetTemp'), 41, 44), 'm3 branch.r1.return.temperature degC'],
    [heard(t, keys('chip', 'p1', 'temp'), 61, 70), 'm3 plate.p1.temperature degC'],
    // A topic a value, as instruments are tagged.
    [heard('works/m4/supply/TT-101', [], 31, 33), 'm4 supply.temperature degC'],
    [heard('works/m4/separator/PT-204', [], 38, 41), 'm4 separator.pressure kPa absolute'],
    [heard('works/m4/supply/temperature', [], 88, 92), 'm4 supply.temperature degF'],
    [{ ...heard('works/m4/loop/ft-1', keys('value'), 91, 93), unitBeside: 'gpm' }, 'm4 loop.flow gpm(US)'],
  ])('%o is proposed as %s', ([place, expected]) => {
    expect(said(place)).toBe(expected);
  });

  it('is proposed for the hall where only a hall has such a point', () => {
    expect(said(heard('works/north/barometer_hPa', [], 1002, 1004))).toBe('north ambient.pressure hPa absolute');
  });

  it.for([
    heard('works/cdu-m3/status', keys('serial'), 88_213),
    heardWords('works/cdu-m3/status', keys('firmware'), ['2.14-b']),
    heard('works/cdu-m3/status', keys('uptime'), 10_000, 20_000),
    heard('works/lift/door', keys('count'), 3, 9),
  ])('is not known where nothing speaks for a point: %o', (place) => {
    expect(said(place)).toBe('not known');
  });

  it('is no part that the unit has not, though it had but one', () => {
    const only = {
      ...site,
      holders: site.holders.map((one) => ({ ...one, parts: { branch: [{ id: 'r1', name: 'Rack 1' }] } })),
    };
    const points = (key: string) =>
      rankPlace(heard(t, keys('racks', key, 'RetTemp'), 41, 44), only, [], anyUnit).map(({ point }) => point);
    expect(points('1')[0]).toBe('branch.r1.return.temperature');
    expect(points('2')).not.toContain('branch.r1.return.temperature');
  });

  it('is no point of another quantity than its unit of measure', () => {
    const best = rankPlace(heard(t, keys('SupplyTemp_kPa'), 31, 33), site, [], anyUnit);
    expect(best.filter(({ point }) => point.includes('temperature'))).toEqual([]);
  });

  it('is said with reasons for and against, and less of it where the unit of measure is a guess', () => {
    const told = first(heard(t, keys('SupplyTemp_degC'), 31, 33));
    expect(told?.grade).toBe('likely');
    expect(told?.reasons.map(({ speaks, text }) => `${speaks}: ${text}`)).toEqual([
      'for: its name speaks of supply and temperature',
      'for: its unit of measure is told: °C',
      'for: 31 to 33 °C is what it has in such a plant',
      'for: its topic or key names m3',
      'for: m3 has no such point yet',
    ]);
    const guessed = first(heard(t, keys('SupplyTemp'), 31, 33));
    expect(guessed?.score).toBeLessThan(told?.score ?? 0);
    expect([guessed?.readAs.told, told?.readAs.told]).toEqual([false, true]);
    const hot = first(heard(t, keys('SupplyTemp_degC'), 31, 140));
    expect(hot?.reasons).toContainEqual({ speaks: 'against', text: '31 to 140 °C is hardly what it has' });
  });

  it('is proposed for the unit that was chosen, and there said where it arrives already', () => {
    const place = heard('works/bay/one', keys('SupplyTemp_degC'), 31, 33);
    expect(first(place, { unit: 'm4', hall: 'north' })?.holder).toBe('m4');
    const again = first(place, { unit: 'm1', hall: 'north' });
    const text = 'm1 has it already, from small/m1/telemetry';
    expect(again?.reasons).toContainEqual({ speaks: 'against', text });
    expect(again?.grade).toBe('possible');
  });
});
