import { describe, expect, it } from 'vitest';
import {
  boilingMargin,
  capture,
  conductance,
  heat,
  inLeak,
  plateResistance,
  reserve,
  vacuumMargin,
  vacuumMarginWorst,
} from './cases';
import { coverageOf, largestPart, type Case } from './coverage';
import { seededDraws, shortestHalfWidth } from './draws';

const litre = 1 / 60_000;
const matched = { matchedPairs: [['supply.temperature', 'return.temperature', 0.8]] } as const;

/** Title, the case, and the rectangular input that makes the interval hold more than 96 %. */
type Row = readonly [title: string, make: () => Case, dominant: string | null];

const rows: readonly Row[] = [
  ['heat removed at a rise of 8.7 K', () => heat({}), 'return.temperature'],
  ['heat removed at a rise of 1.5 K', () => heat({ 'return.temperature': 37.8 }), 'return.temperature'],
  ['capture at a rise of 8.7 K', () => capture({}), 'return.temperature'],
  ['capture at a rise of 1.5 K', () => capture({ 'return.temperature': 37.8 }), 'return.temperature'],
  ['UA with ends of 6.3 K', () => conductance({}), 'facility.return.temperature'],
  [
    'UA with ends of 1.5 K',
    () => conductance({ 'facility.supply.temperature': 34.8, 'facility.return.temperature': 43.5 }),
    null,
  ],
  ['vacuum margin of 13 kPa', () => vacuumMargin({}), 'elevations.accuracy'],
  ['vacuum margin of 2 kPa', () => vacuumMargin({ 'supplyTank.pressure': 85_000 }), 'elevations.accuracy'],
  ['worse vacuum margin of 12 kPa', () => vacuumMarginWorst({}), 'elevations.accuracy'],
  ['worse vacuum margin of 2 kPa', () => vacuumMarginWorst({ 'supplyTank.pressure': 85_000 }), 'elevations.accuracy'],
  ['boiling margin of 23 kPa', () => boilingMargin({}), 'nodes.loss'],
  ['boiling margin of 3 kPa', () => boilingMargin({ 'separator.pressure': 12_000 }), 'nodes.loss'],
  ['in-leak of 30 free L/min', () => inLeak({ 'vacuum.exhaustFlow': 30 * litre }), 'vacuum.exhaustFlow'],
  ['in-leak of 1 free L/min', () => inLeak({ 'vacuum.exhaustFlow': 1.5 * litre }), 'commissioning.gasLoad'],
  ['reserve with little gas', () => reserve({ 'vacuum.exhaustFlow': 2 * litre }), 'vacuumSource.curve'],
  ['reserve with much gas', () => reserve({ 'vacuum.exhaustFlow': 250 * litre }), 'vacuumSource.curve'],
  ['plate resistance at 30 K', () => plateResistance({ 'plate.p1.temperature': 66.3 }), null],
  [
    'plate resistance at 2.2 K',
    () => plateResistance({ 'plate.p1.temperature': 38.5, 'plate.p1.power': 40 }),
    'plate.p1.temperature',
  ],
];

describe('the interval of two standard uncertainties', () => {
  it.for(
    rows.map(
      ([title, make, dominant]) =>
        [
          `${title}${dominant === null ? '' : `, more than 96 % as ${dominant} is rectangular`}`,
          make,
          dominant,
        ] as const,
    ),
  )('holds the true value at least 94 times in a hundred: %s', ([, make, dominant]) => {
    const one = make();
    const { covered, defined } = coverageOf(one, 'rectangular');
    expect(defined).toBeGreaterThan(0.99);
    expect(covered).toBeGreaterThanOrEqual(0.94);
    expect(covered > 0.96, `${covered}`).toBe(dominant !== null);
    if (dominant !== null) expect(largestPart(make())).toBe(dominant);
  });

  it.for([
    ...rows,
    ['heat removed of a matched pair at 8.7 K', () => heat({}, matched), null] as const,
    ['heat removed of a matched pair at 1.5 K', () => heat({ 'return.temperature': 37.8 }, matched), null] as const,
  ])('holds it 95.45 ± 0.5 times in a hundred where all inputs are normal: %s', ([, make]) => {
    const { covered } = coverageOf(make(), 'normal');
    expect(Math.abs(covered - 0.9545), `${covered}`).toBeLessThanOrEqual(0.005);
  });

  // JCGM 101:2008 9.2.3: four rectangular inputs of u = 1; shortest 95 % interval ± 3.88, as 2√3 (2 − (3/5)^(1/4)).
  it('is no longer than that of four rectangular inputs added up', () => {
    const { uniform } = seededDraws(1);
    const rectangular = (): number => Math.sqrt(3) * (2 * uniform() - 1);
    const sums = Float64Array.from(
      { length: 1_000_000 },
      () => rectangular() + rectangular() + rectangular() + rectangular(),
    );
    expect(shortestHalfWidth(sums.sort(), 0.95)).toBeCloseTo(3.88, 1);
  });
});
