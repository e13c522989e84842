import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { HeardPlace } from '../../../../../backend/src/evaluation/mapping/heard-place';
import { rankPlace } from '../../../../../backend/src/evaluation/mapping/rank-place';
import { settleClaims } from '../../../../../backend/src/evaluation/mapping/settle-claims';
import { siteLine, type SiteLine } from '../../../../../backend/src/evaluation/mapping/site-line';
import { compiledOrThrow, smallSiteDocument } from '../../../../helpers/small-site';
import { heard, heardWords, siteWithNewUnits } from './plant-of-strangers';

const site = siteWithNewUnits();
const anyUnit = { unit: null, hall: null };
const lineOf = (place: HeardPlace): SiteLine => {
  const [best] = rankPlace(place, site, [], anyUnit);
  if (best === undefined) throw new Error('nothing was proposed');
  return siteLine(place, best);
};
const time = { path: ['ts'], form: 'epochSeconds' } as const;

describe('a line of the site file', () => {
  it.for<readonly [HeardPlace, string, readonly string[]]>([
    [
      { ...heard('works/m3', ['SupplyTemp_degC'], 31, 33), time },
      "supply.temperature: { topic: 'works/m3', path: ['SupplyTemp_degC'], unit: '°C', time: { path: ['ts'], form: epochSeconds } }",
      [],
    ],
    [
      heard("it's/m3/separator/pressure_mbarg", [], -610, -580),
      "separator.pressure: { topic: 'it''s/m3/separator/pressure_mbarg', unit: 'mbar', reference: gauge }",
      [],
    ],
    [
      heard('works/m3', ['FlowReturn_lpm'], 331, 350),
      "loop.flow: { topic: 'works/m3', path: ['FlowReturn_lpm'], unit: 'L/min', hose: return }",
      [],
    ],
    [
      heard('works/m3', ['LoopFlow_lpm'], 331, 350),
      "loop.flow: { topic: 'works/m3', path: ['LoopFlow_lpm'], unit: 'L/min' }",
      ['hose'],
    ],
    [
      heard('works/m3', ['supply_tank_level_pct'], 60, 62),
      "supplyTank.level: { topic: 'works/m3', path: ['supply_tank_level_pct'], unit: '%' }",
      ['span'],
    ],
    [
      heard('works/m3', ['VacSpeed_Hz'], 30, 44),
      "vacuum.speed: { topic: 'works/m3', path: ['VacSpeed_Hz'] }",
      ['span'],
    ],
    [
      heard('works/m3', ['SupplyTemp'], 31, 33),
      "supply.temperature: { topic: 'works/m3', path: ['SupplyTemp'], unit: '°C' }",
      ['unit'],
    ],
    [
      heardWords('works/m3', ['pumpRun'], ['ON', 'OFF']),
      "pump.running: { topic: 'works/m3', path: ['pumpRun'], words: { 'ON': 'yes', 'OFF': 'no' } }",
      [],
    ],
    [heardWords('works/m3', ['opMode'], ['RUN', 'HOLD']), "mode: { topic: 'works/m3', path: ['opMode'] }", ['words']],
  ])('of %o is written as %s, and says what is to be put in', ([place, text, needs]) => {
    const line = lineOf(place);
    expect(line.text).toBe(text);
    expect(line.needs.map((need) => need.split(':')[0])).toEqual(needs);
  });

  it.for(['a\nb', 'a\u2028b', 'tab\there', 'it\u2019s "so"\u200b\\', '\u{e0001}x', "it's: { [plain"])(
    'says a key of any signs on one line, as YAML reads it: %j',
    (key) => {
      const line = siteLine(
        { ...heard('works/m3', [key], 31, 33) },
        { point: 'supply.temperature', readAs: { unit: '°C', told: true, reference: null, referenceTold: true } },
      );
      expect(line.text).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}]/u);
      expect(parse(line.text)).toMatchObject({ 'supply.temperature': { topic: 'works/m3', path: [key] } });
    },
  );

  it('is taken by the site file, and the point then comes from where it was heard', () => {
    const line = lineOf({ ...heard('works/m3', ['SupplyTemp_degC'], 31, 33), time });
    const document = smallSiteDocument() as { units: Record<string, object> };
    document.units['m3'] = { name: 'Three', hall: 'north', template: 'typeM', points: parse(line.text) as object };
    const compiled = compiledOrThrow(document);
    const plan = compiled.topics.get('works/m3');
    expect(plan).toMatchObject({
      timePath: ['ts'],
      timeForm: 'epochSeconds',
      bindings: [{ path: ['SupplyTemp_degC'] }],
    });
  });
});

describe('two places that could be one point', () => {
  it("keep it from none that has it as the first, where it is another's second guess", () => {
    const names = ['SupplyTemp_degC', 'FWS_SupTemp'];
    const ranked = names.map((key) => {
      const place = heard('works/m1', [key], 18, 20);
      return { place, proposals: rankPlace(place, site, [], anyUnit) };
    });
    const [, facility] = settleClaims(ranked, ({ path }) => path.join('.'));
    expect(facility?.proposals[0]?.point).toBe('facility.supply.temperature');
    expect(facility?.proposals[0]?.reasons.map(({ text }) => text).join()).not.toContain('fits it better');
  });

  it('leave it to the one that fits it better, and the other says which that is', () => {
    const places = [heard('works/m3', ['SupT'], 31, 33), heard('works/m3', ['SupplyTemp_degC'], 31, 33)];
    const ranked = places.map((place) => ({ place, proposals: rankPlace(place, site, [], anyUnit) }));
    const [guess, told] = settleClaims(ranked, ({ path }) => path.join('.'));
    expect(told?.proposals[0]).toMatchObject({ point: 'supply.temperature', grade: 'likely' });
    const other = guess?.proposals.find(({ point }) => point === 'supply.temperature');
    expect(other?.grade).toBe('possible');
    expect(other?.reasons).toContainEqual({ speaks: 'against', text: 'SupplyTemp_degC fits it better' });
  });
});
