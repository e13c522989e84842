import { glycolByMass, glycolByVolume } from '@ebbline/shared/fluid-properties/glycol-fluid';
import { celsius, massFraction, volumeFraction } from '@ebbline/shared/units/quantity';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

/** Property with the key of its rows; of viscosity the tolerance is relative. */
const properties = [
  ['density', 'rho', 'kg/m³'],
  ['heatCapacity', 'cp', 'J/(kg K)'],
  ['thermalConductivity', 'lambda', 'W/(m K)'],
  ['viscosity', 'mu', 'Pa s'],
] as const;
type Key = (typeof properties)[number][1];
type Row = readonly [id: string, x: number, t: number, values: Readonly<Record<Key, readonly [number, number]>>];

const rowsOf = (rows: readonly Row[], key: Key, source: string): PublishedRow[] =>
  rows.map(([id, x, t, values]) => ({
    id: `${id} ${key}`,
    status: 'published',
    source,
    inputs: { x, t },
    expected: values[key][0],
    tolerance: key === 'mu' ? relative(values[key][1]) : absolute(values[key][1]),
  }));

const ofVolume = ([property, key, unit]: (typeof properties)[number]): PublishedTable => ({
  title: `${property} of propylene glycol by volume, ${unit}`,
  subject: { equation: (x: number, t: number) => glycolByVolume(volumeFraction(x))[property](celsius(t)) },
  evaluate: (equation, { x = 0, t = 0 }) => equation(x / 100, t),
  rows: rowsOf(
    byVolume,
    key,
    'ASHRAE Handbook – Fundamentals (2001), Physical properties of secondary coolants, propylene glycol tables by volume fraction',
  ),
});

const ofMass = ([property, key, unit]: (typeof properties)[number]): PublishedTable => ({
  title: `${property} of propylene glycol by mass, ${unit}`,
  subject: { equation: (x: number, t: number) => glycolByMass(massFraction(x))[property](celsius(t)) },
  evaluate: (equation, { x = 0, t = 0 }) => equation(x / 100, t),
  rows: rowsOf(
    byMass,
    key,
    'Melinder, Properties of Secondary Working Fluids for Indirect Systems (IIR 2010), polynomial by mass fraction',
  ),
});

/** Handbook rows, and those of 25 % worked out between the rows of 20 and 30 %. */
const byVolume: readonly Row[] = [
  ['pg-20vol-30C', 20, 30, { rho: [1014.84, 0.3], cp: [3994, 4], lambda: [0.503, 0.002], mu: [0.00152, 0.02] }],
  ['pg-30vol-30C', 30, 30, { rho: [1023.64, 0.3], cp: [3875, 4], lambda: [0.454, 0.002], mu: [0.00218, 0.02] }],
  ['pg-30vol-40C', 30, 40, { rho: [1018.42, 0.3], cp: [3903, 4], lambda: [0.462, 0.002], mu: [0.00163, 0.02] }],
  ['pg-30vol-50C', 30, 50, { rho: [1012.69, 0.3], cp: [3930, 4], lambda: [0.469, 0.002], mu: [0.00126, 0.02] }],
  ['pg-30vol-60C', 30, 60, { rho: [1006.44, 0.3], cp: [3958, 4], lambda: [0.475, 0.002], mu: [0.00101, 0.02] }],
  ['pg25vol-20C', 25, 20, { rho: [1023.7, 0.8], cp: [3910.0, 12], lambda: [0.4685, 0.004], mu: [0.00249, 0.03] }],
  ['pg25vol-30C', 25, 30, { rho: [1019.2, 0.8], cp: [3934.0, 12], lambda: [0.4785, 0.004], mu: [0.00182, 0.03] }],
  ['pg25vol-40C', 25, 40, { rho: [1014.3, 0.8], cp: [3960.0, 12], lambda: [0.4875, 0.004], mu: [0.00139, 0.03] }],
  ['pg25vol-50C', 25, 50, { rho: [1008.8, 0.8], cp: [3984.0, 12], lambda: [0.4955, 0.004], mu: [0.00109, 0.03] }],
];

const byMass: readonly Row[] = [
  [
    'pg25mass-melinder-30C',
    25,
    30,
    { rho: [1015.19, 0.01], cp: [3980.2, 0.1], lambda: [0.4773, 0.0001], mu: [0.001831, 0.001] },
  ],
  [
    'pg25mass-melinder-40C',
    25,
    40,
    { rho: [1010.29, 0.01], cp: [3992.2, 0.1], lambda: [0.4867, 0.0001], mu: [0.00137, 0.001] },
  ],
];

const [density, heatCapacity, conductivity, viscosity] = properties;

export const glycolDensityByVolumeTable = ofVolume(density);
export const glycolDensityByMassTable = ofMass(density);
export const glycolHeatCapacityByVolumeTable = ofVolume(heatCapacity);
export const glycolHeatCapacityByMassTable = ofMass(heatCapacity);
export const glycolConductivityByVolumeTable = ofVolume(conductivity);
export const glycolConductivityByMassTable = ofMass(conductivity);
export const glycolViscosityByVolumeTable = ofVolume(viscosity);
export const glycolViscosityByMassTable = ofMass(viscosity);
