/** The 40 points of a unit of the bench site: key in the payload, and how the site file describes it. */
export interface BenchPoint {
  readonly id: string;
  readonly describe: string;
  /** A value of a sound loop, in the payload's unit of measure. */
  readonly value: number;
  /** How far it wanders to both sides. */
  readonly wander: number;
}

const point = (id: string, describe: string, value: number, wander: number): BenchPoint => ({
  id,
  describe,
  value,
  wander,
});
const celsius = 'unit: °C, accuracy: Pt100 A';
const absolute = 'unit: kPa, reference: absolute, accuracy: ±0.4 kPa';
const litres = 'unit: L/min, accuracy: 0.5 % of reading';

const ofUnit: readonly BenchPoint[] = [
  point('supply.temperature', celsius, 35, 0.1),
  point('return.temperature', celsius, 43.7, 0.1),
  point('facility.supply.temperature', celsius, 30, 0.1),
  point('facility.return.temperature', celsius, 35, 0.1),
  point('supply.pressure', absolute, 74, 0.05),
  point('return.pressure', absolute, 33, 0.05),
  point('supplyTank.pressure', absolute, 74, 0.05),
  point('separator.pressure', absolute, 32, 0.05),
  point('pump.inlet.pressure', absolute, 33.5, 0.05),
  point('loop.flow', `${litres}, hose: supply`, 346, 1.4),
  point('facility.flow', litres, 612, 1.4),
  point('supplyTank.level', 'unit: m', 0.5, 0.0005),
  point('separator.level', 'unit: m', 0.4, 0.0005),
  point('filter.pressureDrop', 'unit: kPa', 15, 0.05),
  point('pump.speed', "unit: '%'", 94, 0.1),
  point('pump.power', 'unit: W', 1200, 5),
  point('pump.running', '', 1, 0),
  point('vacuum.speed', "unit: '%'", 40, 0.2),
  point('vacuum.running', '', 1, 0),
  point('vacuum.exhaustFlow', 'unit: free L/min', 3, 0.03),
  point('valve.command', "unit: '%'", 50, 0.1),
  point('valve.position', "unit: '%'", 50, 0.1),
  point('unit.power', 'unit: W', 2600, 5),
  point('water.found', '', 0, 0),
];

export const branches = ['r1', 'r2', 'r3', 'r4'] as const;
export const plates = ['p1', 'p2', 'p3', 'p4'] as const;

export const benchPoints: readonly BenchPoint[] = [
  ...ofUnit,
  ...branches.flatMap((id) => [
    point(`branch.${id}.flow`, litres, 86, 0.4),
    point(`branch.${id}.return.temperature`, celsius, 43.7, 0.1),
    point(`branch.${id}.power`, 'unit: kW', 52, 0.2),
  ]),
  ...plates.map((id) => point(`plate.${id}.temperature`, 'unit: °C', 51, 0.5)),
];

export const pointsInAll = benchPoints.length;
