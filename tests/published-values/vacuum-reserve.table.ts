import { freeAirK, freeAirPa } from '@ebbline/shared/fluid-properties/air';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import type { SiteOptions } from '../helpers/compiled-site-builder';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

/** Pa m³/s of a free-air flow, for gas of t °C. */
const throughput = (freeAir: number, t: number): number => freeAir * freeAirPa * ((t + 273.15) / freeAirK);
/** Free m³/s of a throughput in Pa L/s, of gas of t °C. */
const freeAir = (pascalLitres: number, t: number): number =>
  (pascalLitres / 1000 / freeAirPa) * (freeAirK / (t + 273.15));

/** The balance of a source of S L/s that holds p kPa over water at t °C against Q Pa L/s. */
const balance: PublishedRow = {
  id: 'pumpdown-ultimate turned round',
  status: 'computed',
  source: 'throughput balance + Dalton (computed)',
  inputs: { p: 4.4967, S: 2, t: 30, Q: 500 },
  expected: 500,
  tolerance: relative(0.004),
};

function onSite(point: string): (inputs: PublishedRow['inputs']) => number {
  return ({ p = Number.NaN, S = Number.NaN, t = Number.NaN, Q = Number.NaN }) => {
    const change: SiteOptions = {
      vacuumSource: {
        count: 2,
        control: 'speed',
        sealWaterC: null,
        pressurePa: [1_000, 10_000],
        suctionM3PerS: [S / 1000, S / 1000],
      },
    };
    const values = { 'separator.pressure': p * 1000, 'return.temperature': t, 'vacuum.exhaustFlow': freeAir(Q, t) };
    return throughput(onRichUnit(point, values, change), t) * 1000;
  };
}

const capacityOf = (S: number, p: number, t: number): number =>
  freeAir(S * (p * 1000 - saturationPressure(celsius(t))), t);

export const vacuumCapacityTable: PublishedTable = {
  title: 'capacity of one source as throughput, Pa L/s',
  subject: { point: 'vacuumCapacity' },
  evaluate: (equation, { p = Number.NaN, S = Number.NaN, t = Number.NaN }) =>
    throughput(equation(1, S / 1000, p * 1000, saturationPressure(celsius(t)), t), t) * 1000,
  onSite: { point: 'vacuumCapacity', evaluate: onSite('vacuumCapacity') },
  rows: [balance],
};

/** At the pressure where a source just carries its load nothing is left of it; a second one is left whole. */
export const vacuumReserveTable: PublishedTable = {
  title: 'reserve of one source at its equilibrium pressure, Pa L/s',
  subject: { point: 'vacuumReserve' },
  evaluate: (equation, { p = Number.NaN, S = Number.NaN, t = Number.NaN, Q = Number.NaN }) =>
    throughput(equation(capacityOf(S, p, t), freeAir(Q, t)), t) * 1000,
  onSite: { point: 'vacuumReserve', evaluate: onSite('vacuumReserve') },
  rows: [{ ...balance, expected: 0, tolerance: absolute(2) }],
};

export const vacuumReserveAllTable: PublishedTable = {
  title: 'reserve of two sources at the equilibrium pressure of one, Pa L/s',
  subject: { point: 'vacuumReserveAll' },
  evaluate: (equation, { p = Number.NaN, S = Number.NaN, t = Number.NaN, Q = Number.NaN }) =>
    throughput(equation(2 * capacityOf(S, p, t), freeAir(Q, t)), t) * 1000,
  onSite: { point: 'vacuumReserveAll', evaluate: onSite('vacuumReserveAll') },
  rows: [balance],
};
