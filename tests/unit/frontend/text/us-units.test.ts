import { pointPattern, pointTable } from '@ebbline/shared/contract/point-table';
import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { differenceUnit, displayUnitOf, freeAirState, heightUnit } from '../../../../frontend/src/text/display-unit';
import { formatByUnit, formatQuantity, inWords } from '../../../../frontend/src/text/format-quantity';
import { formatSiteFigure } from '../../../../frontend/src/text/format-site-figure';
import { metricByPoint, metricByQuantity } from '../../../../frontend/src/text/metric-units';
import { inUnit, outOfUnit, spreadInUnit } from '../../../../frontend/src/text/shown-unit';
import { usByPoint, usByQuantity, usOfWritten } from '../../../../frontend/src/text/us-units';
import { readIn } from '../../../helpers/read-in';

beforeEach(() => readIn('us'));
afterEach(() => readIn('metric'));

const quantities = Object.keys(metricByQuantity) as readonly QuantityKind[];
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

/** NIST SP 811 (2008), appendix B.8: so many SI units in one of them, as printed, to seven digits (from memory). */
const published: readonly (readonly [QuantityKind, unit: string, si: number])[] = [
  ['absolutePressure', 'psia', 6.894757e3],
  ['pressureDifference', 'psi', 6.894757e3],
  ['volumeFlow', 'gpm', 6.30902e-5],
  // One cubic foot is 2.831685E-02 m³, one hour 3600 s.
  ['freeAirFlow', 'ft³/h free air', 2.831685e-2 / 3600],
  ['massFlow', 'lb/s', 4.535924e-1],
  ['level', 'in', 2.54e-2],
  ['temperatureDifference', '°F', 5.555556e-1],
  ['velocity', 'ft/s', 3.048e-1],
  ['filmCoefficient', 'BTU/(h·ft²·°F)', 5.678263],
  ['foulingFactor', 'h·ft²·°F/BTU', 1.761102e-1],
  ['volume', 'gal', 3.785412e-3],
];

describe('US units', () => {
  it.each(published)('count %s in %s by the published factor', (quantity, unit, si) => {
    const display = displayUnitOf(quantity, 0);
    expect(display.unit).toBe(unit);
    expect(1 / display.factor / si).toBeCloseTo(1, 6);
  });

  it('have a published factor for each quantity that they read otherwise, but for those made of two others', () => {
    const made: readonly string[] = ['temperature', 'thermalConductance', 'thermalResistance'];
    const known = new Set([...published.map(([quantity]) => quantity as string), ...made]);
    expect(Object.keys(usByQuantity).filter((one) => !known.has(one))).toEqual([]);
  });

  // Fixed points of the Fahrenheit scale: SP 811, t/°C = (t/°F − 32)/1.8.
  it.each([
    [-40, '−40.0 °F'],
    [0, '32.0 °F'],
    [37, '98.6 °F'],
    [100, '212.0 °F'],
  ])('read %s °C as %s', (celsius, said) => {
    expect(plain(inWords(formatQuantity(celsius, 'temperature')))).toBe(said);
  });

  it('give a difference of temperatures no nought of the scale', () => {
    expect(plain(inWords(formatQuantity(10, 'temperatureDifference')))).toBe('18.0 °F');
    expect(inUnit(0, differenceUnit('temperature', 0))).toBe(0);
  });

  it('give the uncertainty of a temperature none either', () => {
    expect(plain(inWords(formatQuantity(20, 'temperature', { uncertainty: 0.5 })))).toBe('68.0 ± 0.9 °F');
  });

  it('say psia of an absolute pressure and psi of a difference', () => {
    expect(plain(inWords(formatQuantity(101_325, 'absolutePressure')))).toBe('14.70 psia');
    expect(plain(inWords(formatQuantity(6_894.757, 'pressureDifference')))).toBe('1.00 psi');
    expect(differenceUnit('absolutePressure', 0).unit).toBe('psi');
  });

  it('leave power in kW, with which the heat is compared', () => {
    expect(plain(inWords(formatQuantity(412_000, 'power')))).toBe('412 kW');
  });

  it('name the state of free air in both alike', () => {
    const us = freeAirState();
    readIn('metric');
    // 68 °F is 20 °C by the definition of the scale, 14.696 psia is 101.325 kPa (SP 811).
    expect(plain(`${us}; ${freeAirState()}`)).toBe('68 °F and 14.7 psia; 20 °C and 101.3 kPa');
  });

  it('count heights of a plant in feet', () => {
    expect(inUnit(3.048, heightUnit())).toBeCloseTo(10, 12);
    expect(plain(formatSiteFigure(3.048, 'm'))).toBe('10 ft');
    expect(plain(formatSiteFigure(0.0254, 'm'))).toBe('1 in');
    expect(plain(formatSiteFigure(25, 'Cel'))).toBe('77 °F');
    expect(plain(formatByUnit(0.1, 'K/s').number)).toBe('10.8');
  });
});

describe('every quantity', () => {
  it.each(quantities)('comes back as it was: %s', (quantity) => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), (value) => {
        const display = displayUnitOf(quantity, value);
        const back = outOfUnit(inUnit(value, display), display);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      }),
    );
  });

  it.each(quantities)('rises where it rises, and its spread is that of two values: %s', (quantity) => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -1e4, max: 1e4 }),
        fc.double({ noNaN: true, min: 1e-3, max: 1e3 }),
        (value, spread) => {
          const display = displayUnitOf(quantity, value);
          const apart = inUnit(value + spread, display) - inUnit(value, display);
          expect(apart).toBeGreaterThan(0);
          expect(Math.abs(spreadInUnit(spread, display) - apart)).toBeLessThan(1e-6 * Math.abs(inUnit(1e4, display)));
        },
      ),
    );
  });

  it.each(quantities)('is nought in both where it is nought, but for a temperature: %s', (quantity) => {
    expect(inUnit(0, displayUnitOf(quantity, 0))).toBe(quantity === 'temperature' ? 32 : 0);
  });

  it.each(quantities)('keeps about as fine a last digit in US units: %s', (quantity) => {
    const step = ({ factor, decimals }: { factor: number; decimals: number }): number => 10 ** -decimals / factor;
    const us = usByQuantity[quantity] ?? metricByQuantity[quantity];
    const ratio = step(us) / step(metricByQuantity[quantity]);
    expect(ratio).toBeLessThan(6);
    expect(ratio).toBeGreaterThan(1 / 12);
  });
});

describe('points that are read otherwise than their kind', () => {
  const patterns = new Set(pointTable.map(({ id }) => pointPattern(id)));

  it('are points that there are', () => {
    expect([...Object.keys(usByPoint), ...Object.keys(metricByPoint)].filter((one) => !patterns.has(one))).toEqual([]);
  });

  it('have a US unit wherever their metric one is made of litres, millimetres or kelvin', () => {
    const metric = Object.entries(metricByPoint).filter(([, { unit }]) =>
      /(^|[^A-Za-z])(L|mm|K)([^A-Za-z]|$)/.test(unit),
    );
    expect(metric.length).toBeGreaterThan(5);
    expect(metric.map(([point]) => point).filter((point) => usByPoint[point] === undefined)).toEqual([]);
  });

  it('name the same measure in both', () => {
    for (const [point, us] of Object.entries(usByPoint)) {
      const metric = metricByPoint[point];
      // Of the head of a pump the metric row is that of its kind: 1 m = 3.280840 ft.
      if (metric === undefined) {
        expect(us.factor, point).toBeCloseTo(3.28084, 5);
        continue;
      }
      // 1 L = 0.2641720 gal, 1 mm = 0.03937008 in, 1 K = 1.8 °F (SP 811, appendix B.8).
      const one = metric.unit.startsWith('L') ? 0.264172 : metric.unit === 'mm' ? 0.03937008 : 1.8;
      expect(us.factor / metric.factor / one, point).toBeCloseTo(1, 5);
    }
  });
});

describe('a unit that comes in words', () => {
  it.each(Object.keys(usOfWritten))('is the one that the screens show in its place: %s', (written) => {
    const us = usOfWritten[written];
    const metric = Object.entries(metricByQuantity).find(([, { unit }]) => unit === written);
    const smaller: { readonly [name: string]: readonly [QuantityKind, si: number] } = {
      'free L/min': ['freeAirFlow', 1 / 60_000],
      litres: ['volume', 1e-3],
      mm: ['level', 1e-3],
    };
    const [kind, si] = smaller[written] ?? [metric?.[0] as QuantityKind, 1 / (metric?.[1].factor ?? Number.NaN)];
    const shown = displayUnitOf(kind, 0);
    expect(us?.unit).toBe(shown.unit);
    expect(inUnit(7, us ?? { factor: Number.NaN })).toBeCloseTo(inUnit(7 * si, shown), 9);
  });
});
