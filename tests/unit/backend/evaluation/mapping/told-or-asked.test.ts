import { describe, expect, it } from 'vitest';
import type { HeardPlace } from '../../../../../backend/src/evaluation/mapping/heard-place';
import { rankPlace, type Proposal } from '../../../../../backend/src/evaluation/mapping/rank-place';
import { siteLine } from '../../../../../backend/src/evaluation/mapping/site-line';
import { heard, heardWords, siteWithNewUnits } from './plant-of-strangers';

const site = siteWithNewUnits();
const bestOf = (place: HeardPlace): Proposal => {
  const [best] = rankPlace(place, site, [], { unit: null, hall: null });
  if (best === undefined) throw new Error('nothing was proposed');
  return best;
};
const lineOf = (place: HeardPlace) => siteLine(place, bestOf(place));

describe('the reference of a pressure', () => {
  it.for([
    [heard('works/m3/supply_tank/vacuum_kpa', [], 33, 37), 'supplyTank.pressure', 'vacuum'],
    [heard('works/m3/supply_tank/pressure_kpa', [], 33, 37), 'supplyTank.pressure', 'absolute'],
    [heard('works/m3/separator/pressure_kpa', [], 40, 45), 'separator.pressure', 'absolute'],
    // Zero and below now and then: gauge or vacuum, both near ambient.
    [heard('works/m3/supply_tank/pressure_kpa', [], -0.2, 0.4), 'supplyTank.pressure', 'gauge'],
  ] as const)('is asked for where nothing tells it, however well one would fit: %o', ([place, point, likely]) => {
    const best = bestOf(place);
    const { text, needs } = siteLine(place, best);
    expect(best).toMatchObject({ point, readAs: { reference: likely } });
    expect(text).not.toContain('reference');
    expect(needs).toEqual(['reference: absolute, gauge or vacuum, as the sensor tells it']);
    expect(best.reasons.map((one) => one.text).join()).toContain(`kPa if ${likely} `);
  });

  it.for([
    [heard('works/m3/supply_tank/pressure_kpaa', [], 74, 75), 'absolute'],
    [heard('works/m3/supply_tank/pressure_kpav', [], 26, 28), 'vacuum'],
    // No absolute pressure is negative, and no vacuum that is one.
    [heard('works/m3/supply_tank/pressure_kpa', [], -28, -26), 'gauge'],
    [heard('works/north/barometer_hPa', [], 1002, 1004), 'absolute'],
  ] as const)('is written where it is told: %o', ([place, reference]) => {
    const { text, needs } = lineOf(place);
    expect(text).toContain(`reference: ${reference}`);
    expect(needs).toEqual([]);
  });
});

describe('words for yes and no', () => {
  it.for([
    ['works/m3/rack/r2/isolation', ['open', 'closed'], 'branch.r2.isolated', "{ 'open': 'no', 'closed': 'yes' }"],
    ['works/m3/vacuum/available', ['ok', 'alarm'], 'vacuum.available', "{ 'ok': 'yes', 'alarm': 'no' }"],
    ['works/m3/pump/healthy', ['Normal', 'Alarm'], 'pump.available', "{ 'Normal': 'yes', 'Alarm': 'no' }"],
    ['works/m3/leak_rope', ['ok', 'alarm'], 'water.found', "{ 'ok': 'no', 'alarm': 'yes' }"],
    ['works/m3/leak_rope', ['dry', 'wet'], 'water.found', "{ 'dry': 'no', 'wet': 'yes' }"],
    ['works/m3/pump/run', ['stopped', 'running'], 'pump.running', "{ 'stopped': 'no', 'running': 'yes' }"],
    ['works/m3/pump/available', ['yes', 'no'], 'pump.available', "{ 'yes': 'yes', 'no': 'no' }"],
  ] as const)('mean of %s what the point asks: %s', ([topic, words, point, meanings]) => {
    const place = heardWords(topic, [], words);
    expect(bestOf(place).point).toBe(point);
    const { text, needs } = lineOf(place);
    expect(text).toContain(`words: ${meanings}`);
    expect(needs).toEqual([]);
  });

  it.for([
    ['works/m3/pump/run', ['open', 'closed'], 'pump.running'],
    ['works/m3/control/bypass', ['open', 'closed'], 'control.manual'],
    ['works/m3/vacuum/available', ['running', 'stopped'], 'vacuum.available'],
  ] as const)('are asked for where the point can be told by them either way: %s', ([topic, words, point]) => {
    const place = heardWords(topic, [], words);
    expect(bestOf(place).point).toBe(point);
    const { text, needs } = lineOf(place);
    expect(text).not.toContain('words');
    expect(needs).toEqual(['words: what each word means']);
  });
});
