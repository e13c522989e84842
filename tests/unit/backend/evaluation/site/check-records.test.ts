import { describe, expect, it } from 'vitest';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../../../../backend/src/evaluation/site/compile-site';
import type { CompiledUnit } from '../../../../../backend/src/evaluation/site/compiled-site';
import { keyPath } from '../../../../../backend/src/evaluation/site/site-fault';
import { changed, type Change } from './change-document';

const typeM = (key: string, value: unknown): Change => [['templates', 'typeM', ...key.split('.')], value];
const found = (part: object): Change => typeM('commissioning', { by: 'commissioning team', on: '2026-03-14', ...part });
const exchanger = (...rows: readonly (readonly [loop: number, facility: number, ua: number])[]): Change =>
  found({
    exchanger: {
      records: rows.map(([loop, facility, ua]) => ({
        loopFlow: `${loop} kg/s`,
        facilityFlow: `${facility} kg/s`,
        ua: `${ua} W/K`,
      })),
    },
  });
const losses = (...rows: readonly (readonly [flow: number, loss: number])[]): Change =>
  found({ filter: { records: rows.map(([flow, loss]) => ({ flow: `${flow} L/min`, loss: `${loss} kPa` })) } });

function compiled(...changes: readonly Change[]): {
  readonly faults: readonly string[];
  readonly warnings: readonly string[];
  readonly unit: CompiledUnit | undefined;
} {
  const result = compileSite(changed(...changes), derivedPointIds);
  const say = (list: readonly { readonly path: readonly (string | number)[]; readonly message: string }[]) =>
    list.map(({ path, message }) => `${keyPath(path)}: ${message}`);
  return result.ok
    ? { faults: [], warnings: say(result.value.warnings), unit: result.value.site.units[0] }
    : { faults: say(result.fault), warnings: [], unit: undefined };
}

describe('records of the clean exchanger', () => {
  it('tell films and wall apart where there are three at flows that differ', () => {
    const { warnings, unit } = compiled(exchanger([5.74, 5.74, 48_000], [2.87, 5.74, 35_800], [5.74, 2.87, 35_800]));
    expect(warnings).toEqual([]);
    expect(unit?.design.commissioned.uaWPerK).toBeCloseTo(48_000, -2);
    expect(unit?.design.commissioned.uaFit?.shares.film1).toBeCloseTo(0.5, 1);
  });

  it('say what to do where they are two, or lie too near each other, and count the first one with equal shares', () => {
    const two = compiled(exchanger([5.74, 5.74, 48_000], [2.87, 5.74, 35_800]));
    expect(two.warnings).toEqual([expect.stringMatching(/exchanger\.records: two records.*add a third/)]);
    const near = compiled(exchanger([5.74, 5.74, 48_000], [5.7, 5.74, 47_900], [5.74, 5.7, 47_900]));
    expect(near.warnings).toEqual([expect.stringMatching(/too near each other.*changed by half/)]);
    for (const { unit } of [two, near]) {
      expect(unit?.design.commissioned.uaFit).toBeNull();
      expect(unit?.design.commissioned.uaWPerK).toBe(48_000);
    }
  });

  it('are refused where a film would have a resistance below 0', () => {
    const rows = exchanger([5.74, 5.74, 48_000], [2.87, 5.74, 90_000], [5.74, 2.87, 36_000], [2.87, 2.87, 60_000]);
    expect(compiled(rows).faults).toEqual([expect.stringMatching(/below 0, which none has; check them/)]);
  });

  it('are refused without a flow', () => {
    expect(compiled(exchanger([0, 5.74, 48_000])).faults.join('\n')).toMatch(/above 0 in every record/);
  });
});

describe('records of a loss', () => {
  it('give the exponent, and the loss at rated flow', () => {
    const { unit } = compiled(losses([346, 15], [277, 15 * 0.8006 ** 1.6], [208, 15 * 0.6012 ** 1.6]));
    expect(unit?.design.commissioned.filterExponent).toBeCloseTo(1.6, 2);
    expect(unit?.design.commissioned.filterLossPa).toBeCloseTo(15_000, -2);
  });

  it('give no exponent where the flows hardly differ, and say so', () => {
    const { unit, warnings } = compiled(losses([346, 15], [340, 14.5], [335, 14.1]));
    expect(warnings).toEqual([expect.stringMatching(/filter\.records: the flows differ by less than a fifth/)]);
    expect(unit?.design.commissioned.filterExponent).toBe(2);
  });

  it('are refused where the loss would fall with flow', () => {
    expect(compiled(losses([346, 15], [277, 16], [208, 17])).faults.join()).toMatch(
      /check the records for a mistyped flow/,
    );
  });
});

describe('what a unit says of pipes and plates', () => {
  it.each([
    ['mains without a bore', typeM('mains', { length: '30 m' }), /mains\.bore: is missing/],
    ['a wall rougher than its pipe', typeM('mains', { bore: '8 mm', roughness: '1 mm' }), /a twentieth of the bore/],
    [
      'both a table and a figure',
      typeM('permissibleVelocity', { table: 'copperBs6700', limit: '2 m/s' }),
      /one of both/,
    ],
    ['a chip of no area', typeM('chipArea', '0 cm2'), /chipArea: expected more than 0/],
    [
      'a plate without its flow',
      typeM('plateChannel', { wettedArea: '60 cm2' }),
      /plateChannel\.ratedFlow: is missing/,
    ],
    ['a pump without its speed', found({ pump: { rise: '100 kPa' } }), /pump\.speed: is missing/],
  ])('is refused for %s', (_, change, message) => {
    expect(compiled(change).faults.join('\n')).toMatch(message);
  });

  it('takes an area or a bore of the manifold, a branch before the fittings of all', () => {
    const { unit } = compiled(typeM('fittings', { manifoldBore: '50 mm' }), [
      ['templates', 'typeM', 'branches', 'r1', 'manifoldArea'],
      '58 cm2',
    ]);
    const [first, second] = unit?.branches ?? [];
    expect(first?.manifoldAreaM2).toBeCloseTo(0.0058, 9);
    expect(second?.manifoldAreaM2).toBeCloseTo(0.0019635, 6);
  });

  it('lets one plate say otherwise than its unit', () => {
    const { unit } = compiled(typeM('plateFullPower', '300 W'), typeM('plates', { p1: { fullPower: '1 kW' }, p2: {} }));
    expect(unit?.design.plateFullPowerW).toBe(300);
    expect(unit?.plates.map(({ fullPowerW }) => fullPowerW)).toEqual([1000, undefined]);
  });
});
