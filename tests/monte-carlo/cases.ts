import { buildRichUnitM } from '../helpers/rich-unit-m';
import type { BuiltSite, SiteOptions } from '../helpers/compiled-site-builder';
import type { Case } from './coverage';

const root3 = Math.sqrt(3);
const thermometers = ['supply.temperature', 'return.temperature'] as const;

/** Standard uncertainties of a normal draw, the same as the sensors of the rich unit state as bands at these readings. */
type Sensors = readonly string[];

/** Unit M with true values changed; without the volumes that would bring the past into its heat. */
function unit(values: Readonly<Record<string, number>>, change: SiteOptions = {}): BuiltSite {
  const built = buildRichUnitM(change);
  for (const [point, value] of Object.entries(values)) built.set(point, value);
  return built;
}

const heatRows = ['massFlow', 'heatRemoved'];
const heatSensors: Sensors = [...thermometers, 'loop.flow'];
/** u(c_p)/c_p = 0.1 % of the heat. */
const ofHeatCapacity = (draw: () => number, value: number): number => 0.001 * draw() * value;

export const heat = (values: Readonly<Record<string, number>>, change: SiteOptions = {}): Case => ({
  built: unit(values, change),
  point: 'heatRemoved',
  rows: heatRows,
  sensors: heatSensors,
  figures: (draw, exact) => ofHeatCapacity(draw, exact('heatRemoved')),
});

export const capture = (values: Readonly<Record<string, number>>): Case => ({
  built: unit(values),
  point: 'capture',
  rows: [...heatRows, 'chipPower', 'capture'],
  sensors: [...heatSensors, 'branch.r1.power', 'branch.r2.power'],
  figures: (draw, exact) => ofHeatCapacity(draw, exact('capture')),
});

export const conductance = (values: Readonly<Record<string, number>>): Case => ({
  built: unit(values),
  point: 'ua',
  rows: [...heatRows, 'facilityHeat', 'ua'],
  sensors: [...heatSensors, 'facility.supply.temperature', 'facility.return.temperature', 'facility.flow'],
  figures: (draw, exact) => ofHeatCapacity(draw, exact('ua')),
});

/** Heights ± 5 cm, losses ± 10 %: what the site file's figures may be off. */
const ofElevation = (draw: () => number): number => ((990 * 9.80665 * 0.05) / root3) * draw();
const ofLoss = (draw: () => number, lossPa: number): number => ((0.1 * lossPa) / root3) * draw();

export const vacuumMargin = (values: Readonly<Record<string, number>>): Case => ({
  built: unit(values),
  point: 'vacuumMargin',
  rows: ['vacuumMargin'],
  sensors: ['ambient.pressure', 'supplyTank.pressure', 'loop.flow', 'supply.temperature'],
  figures: (draw) => ofElevation(draw) + ofLoss(draw, 800),
});

/** As after a pump trip: the column stands, without loss, from the tank whose foot is worse. */
export const vacuumMarginWorst = (values: Readonly<Record<string, number>>): Case => ({
  ...vacuumMargin(values),
  point: 'vacuumMarginWorst',
  rows: ['vacuumMarginWorst'],
  figures: ofElevation,
});

export const boilingMargin = (values: Readonly<Record<string, number>>): Case => ({
  built: unit(values),
  point: 'boilingMargin',
  rows: ['boilingMargin'],
  sensors: ['separator.pressure', 'return.temperature', 'loop.flow'],
  figures: (draw) => ofElevation(draw) + ofLoss(draw, 8_900),
});

/** The commissioned load ± 50 %: it moves with flow and level. */
export const inLeak = (values: Readonly<Record<string, number>>): Case => ({
  built: unit(values),
  point: 'inLeak',
  rows: ['gasAllowance', 'inLeak'],
  sensors: ['vacuum.exhaustFlow'],
  figures: (draw) => ((0.5 * 0.5) / 60_000 / root3) * draw(),
});

/** The curve ± 5 %. */
export const reserve = (values: Readonly<Record<string, number>>): Case => ({
  built: unit(values),
  point: 'vacuumReserve',
  rows: ['vacuumCapacity', 'vacuumReserve'],
  sensors: ['separator.pressure', 'return.temperature', 'vacuum.sealWater.temperature', 'vacuum.exhaustFlow'],
  figures: (draw, exact) => ((0.05 * exact('vacuumCapacity')) / root3) * draw(),
});

export const plateResistance = (values: Readonly<Record<string, number>>): Case => ({
  built: unit(values),
  point: 'plate.p1.resistance',
  rows: ['plate.<id>.resistance'],
  sensors: ['plate.p1.temperature', 'plate.p1.power', 'supply.temperature'],
});
