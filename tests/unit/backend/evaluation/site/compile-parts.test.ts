import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import { keyPath } from '../../../../../backend/src/evaluation/site/site-fault';
import { compiledOrThrow, slotOf } from '../../../../helpers/small-site';
import { changed, type Change } from './change-document';

const typeM = (key: string, value: unknown): Change => [['templates', 'typeM', ...key.split('.')], value];

function warningsOf(...changes: readonly Change[]): readonly string[] {
  const compiled = compileSite(changed(...changes), derivedPointIds);
  if (!compiled.ok)
    throw new Error(compiled.fault.map(({ path, message }) => `${keyPath(path)}: ${message}`).join('\n'));
  return compiled.value.warnings.map(({ path, message }) => `${keyPath(path)}: ${message}`);
}

describe('parts of a unit', () => {
  it('gives branches the common fittings, and their own where they have some', () => {
    const [unit] = compiledOrThrow(
      changed(
        typeM('fittings', { mainBore: '25 mm', restrictorBore: '3 mm', outletBore: '5 mm', checkValve: true }),
        typeM('branches.r2.outletBore', '4 mm'),
        typeM('branches.r2.checkValve', false),
      ),
    ).units;
    expect(unit?.branches.map(({ mainBoreM, fittings }) => [mainBoreM, fittings])).toEqual([
      [0.025, { restrictorBoreM: 0.003, outletBoreM: 0.005, inletCheckValve: true }],
      [0.025, { restrictorBoreM: 0.003, outletBoreM: 0.004, inletCheckValve: false }],
    ]);
  });

  it('puts a plate on the branch of its server, and fans to it unless it has none', () => {
    const site = compiledOrThrow(
      changed(
        typeM('fanPath', { resistance: '0.167 K/W' }),
        typeM('servers', { s1: { branch: 'r2', name: 'Server 1' } }),
        typeM('plates', { p1: { server: 's1' }, p2: { branch: 'r1', fans: false } }),
      ),
    );
    const unit = site.units[0];
    expect(unit?.servers).toMatchObject([{ id: 's1', name: 'Server 1', branch: 1 }]);
    expect(unit?.plates).toMatchObject([
      { server: 0, branch: 1, fanPath: { resistanceKPerW: 0.167 } },
      { server: -1, branch: 0, fanPath: null },
    ]);
    const { places } = site.holders[unit?.holder ?? -1] ?? { places: [] };
    expect(places.slice(4, 9)).toEqual(['Rack 1', 'Rack 2', 'Server 1', 'p1', 'p2']);
    expect(places.at(-1)).toBe('pump inlet');
    expect([...(unit?.servers ?? []), ...(unit?.plates ?? [])].map(({ place }) => places[place])).toEqual([
      'Server 1',
      'p1',
      'p2',
    ]);
  });

  it('gives the points of `server.*` and `tank.*` to every server and tank', () => {
    const site = compiledOrThrow(
      changed(
        typeM('shape', 'b'),
        typeM('tanks', { named: { left: { area: '0.2 m2' }, right: { name: 'Right tank' } } }),
        typeM('servers', { s1: {}, s2: {} }),
        [['units', 'm1', 'points', 'tank.*.level'], { path: 'tanks.{tank}.l', unit: 'cm' }],
        [['units', 'm1', 'points', 'server.*.fanSpeed'], { topic: 'fans/{unit}/{server}', unit: '%' }],
      ),
    );
    const [unit, other] = site.units;
    expect(unit?.tanks).toMatchObject([
      { id: 'left', name: 'left', areaM2: 0.2, slot: { level: slotOf(site, 'm1', 'tank.left.level'), pressure: -1 } },
      { id: 'right', name: 'Right tank', areaM2: null },
    ]);
    expect(other?.tanks.map(({ slot }) => slot.level)).toEqual([-1, -1]);
    expect(site.topics.get('fans/m1/s2')?.bindings[0]?.slot).toBe(unit?.servers[1]?.slot.fanSpeed);
    const right = slotOf(site, 'm1', 'tank.right.level');
    const binding = site.topics.get('small/m1/telemetry')?.bindings.find(({ slot }) => slot === right);
    expect(binding?.path).toEqual(['tanks', 'right', 'l']);
  });

  it('reads volumes, levels and the commissioning record as SI', () => {
    const [unit] = compiledOrThrow(
      changed(
        typeM('volumes', { supplyToReturn: '280 L', separatorGas: '0.51 m3' }),
        typeM('tanks', { separatorUsualLevel: '45 cm' }),
        typeM('commissioning', {
          by: 'Commissioning',
          on: '2028-02-29',
          loop: { loss: '40.2 kPa', exponent: 1.9 },
          exchanger: { ua: '48000 W/K', loopFlow: '5.74 kg/s', facilityFlow: '20664 kg/h' },
          gasLoad: '1.5 free L/min',
          pumpEfficiency: '45 %',
        }),
        typeM('plateHeatCapacity', '0.35 kJ/K'),
      ),
    ).units;
    const { volumes, commissioned, plateHeatCapacityJPerK } = unit?.design ?? {};
    expect(volumes).toMatchObject({
      supplyToReturnM3: 0.28,
      separatorGasM3: 0.51,
      separatorUsualLevelM: 0.45,
      waterM3: null,
    });
    expect(commissioned).toMatchObject({
      on: '2028-02-29',
      loopLossPa: 40_200,
      loopExponent: 1.9,
      filterLossPa: null,
      filterExponent: 2,
      uaWPerK: 48_000,
      pumpEfficiency: 0.45,
    });
    expect(commissioned?.uaFacilityMassFlowKgPerS).toBeCloseTo(5.74, 9);
    expect(commissioned?.gasLoadM3PerS).toBeCloseTo(1.5 / 60_000, 12);
    expect(plateHeatCapacityJPerK).toBe(350);
  });

  it('judges the pressure window by the commissioned loss where pressureWindow gives none', () => {
    const document = changed(
      [['site', 'altitude'], '1200 m'],
      typeM('pressureWindow.loopLoss', undefined),
      typeM('commissioning', { by: 'Commissioning', on: '2026-03-14', loop: { loss: '40.2 kPa' } }),
    );
    const compiled = compileSite(document, derivedPointIds);
    expect(!compiled.ok && compiled.fault.map(({ message }) => message).join()).toMatch(/no pressure window at 1200 m/);
  });
});

describe('what an engineer is warned of', () => {
  it('is a restrictor without a check valve: it limits, only the valve stops', () => {
    const without = warningsOf(typeM('fittings', { restrictorBore: '3.6 mm' }));
    expect(without.join('\n')).toMatch(/^templates.typeM.fittings.restrictorBore: .*only a check valve stops it/);
    expect(without).toHaveLength(1);
    expect(warningsOf(typeM('fittings', { restrictorBore: '3.6 mm', checkValve: true }))).toEqual([]);
  });

  // B. Lautrup, Physics of Continuous Matter: about 8.5 mm for water and air.
  it('is an opening through which water comes down whatever the pressure', () => {
    expect(warningsOf(typeM('hoseBore', '8.5 mm'))).toEqual([]);
    expect(warningsOf(typeM('hoseBore', '8.6 mm')).join()).toMatch(/hoseBore: through an opening of 8.6 mm.*spill/);
    expect(warningsOf(typeM('fittings', { outletBore: '9 mm' })).join()).toMatch(/fittings.outletBore: .*9 mm/);
    // Every rack's own hose is wider: nobody could mend that.
    expect(warningsOf(typeM('fittings', { mainBore: '25 mm' }))).toEqual([]);
  });

  it('is alternating tanks that are not listed, and a single one is a fault', () => {
    expect(warningsOf(typeM('shape', 'b')).join()).toMatch(/late and failed transfers are not seen/);
    const one = compileSite(changed(typeM('shape', 'b'), typeM('tanks', { named: { a: {} } })), derivedPointIds);
    expect(!one.ok && one.fault.map(({ message }) => message)).toEqual([expect.stringMatching(/at least two/)]);
  });

  it('is a vacuum source at constant speed that no flow meter watches', () => {
    const [warning] = warningsOf(typeM('vacuumSource.control', 'constant'));
    expect(warning).toMatch(/vacuumSource.control: .*gas load stays unknown/);
  });

  it('is branches that carry more than the unit', () => {
    expect(warningsOf(typeM('branches.r1.ratedFlow', '400 L/min')).join()).toMatch(/128 % of ratedFlow/);
  });

  it('is alternating tanks of which two racks do not tell their return pressure, or whose hose is not known', () => {
    const tank: Change = typeM('tanks', { named: { a: {}, b: {} } });
    const of = (...ids: readonly string[]): Change[] =>
      ids.map((id) => [
        ['templates', 'typeM', 'points', id],
        { topic: `racks/{unit}/${id.replace('*', '{branch}')}`, unit: 'kPa', reference: 'absolute' },
      ]);
    const untold = (...changes: readonly Change[]): boolean =>
      /AIR-1.*never raised/.test(warningsOf(typeM('shape', 'b'), tank, ...changes).join());
    const hose = typeM('hoseBore', '8 mm');
    expect(untold(hose, ...of('branch.*.return.pressure'))).toBe(false);
    expect(untold(hose, ...of('branch.r1.return.pressure', 'branch.r2.return.pressure'))).toBe(false);
    expect(untold(hose, ...of('branch.r1.return.pressure'))).toBe(true);
    expect(untold(typeM('hoseBore', undefined), ...of('branch.*.return.pressure'))).toBe(true);
  });

  it('is a loop with units of several shapes', () => {
    const loop: Change = [['loops', 'both'], { units: ['m1', 'm2'] }];
    const tanks = { named: { a: {}, b: {} } };
    expect(warningsOf(loop, [['units', 'm2', 'shape'], 'b'], [['units', 'm2', 'tanks'], tanks]).join()).toMatch(
      /several plant shapes \(a, b\)/,
    );
  });
});

describe('plates and servers that contradict each other', () => {
  it('are refused with the branch of the server', () => {
    const document = changed(
      typeM('servers', { s1: { branch: 'r2' } }),
      typeM('plates', { p1: { server: 's1', branch: 'r1' } }),
    );
    const compiled = compileSite(document, derivedPointIds);
    expect(!compiled.ok && compiled.fault.map(({ path, message }) => [keyPath(path), message])).toEqual([
      ['templates.typeM.plates.p1.branch', expect.stringMatching(/"s1" is on branch "r2"/)],
    ]);
  });
});
