import type { QuantityKind } from '../contract/point-table';

/**
 * The units of measure that a site file may name. `SI or °C = number × factor + offset`.
 *
 * - Pressures: the rows are scale only. Whether the number is absolute, gauge or vacuum is said by the
 *   separate key `reference`; `pressure-reference.ts` does the step to absolute.
 * - A level in per cent (of a float or a transmitter) needs the site file's `span`: metres at 0 % and at 100 %.
 *   The same for a speed in Hz or 1/min. So no row stands here for them.
 * - `free` gas flows are counted at 20 °C and 101.325 kPa. A bare L/min for gas is not accepted.
 * - "ppm" is not accepted for concentrations: it is read as mg/L by some and as mg/kg by others.
 */
export interface UnitOfMeasure {
  /** As written in the site file. */
  readonly id: string;
  readonly quantities: readonly QuantityKind[];
  readonly factor: number;
  readonly offset: number;
  readonly source: string;
}

type Row = readonly [id: string, factor: number, offset: number, source: string];

const si = 'SI brochure, 9th edition (BIPM 2019)';
const siTable8 = 'SI brochure, 9th edition (BIPM 2019), table 8';
const sp811 = 'NIST SP 811 (2008), appendix B.8';
const definition = 'definition';

const inchM = 0.0254;
const poundForceN = 0.45359237 * 9.80665;
const conventionalMercuryPaPerM = 13_595.1 * 9.80665;
/** R·T·ln 10 ÷ F at 25 °C, mV, of the exact constants of the SI brochure, 9th edition. */
const electrodeSlopeMv25 = (1000 * 8.314462618 * 298.15 * Math.LN10) / 96_485.33212;

const gallonM3 = 231 * inchM ** 3;

const rowsByQuantity: readonly (readonly [quantities: readonly QuantityKind[], rows: readonly Row[]])[] = [
  [
    ['temperature'],
    [
      ['degC', 1, 0, `${si}, 2.3.1`],
      ['degF', 5 / 9, -160 / 9, sp811],
      ['K', 1, -273.15, `${si}, 2.3.1`],
    ],
  ],
  [
    ['temperatureDifference'],
    [
      ['K', 1, 0, si],
      ['degC', 1, 0, `${si}, 2.3.1: a difference in °C is the same number in K`],
      ['degF', 5 / 9, 0, sp811],
    ],
  ],
  [
    ['absolutePressure', 'pressureDifference'],
    [
      ['Pa', 1, 0, si],
      ['hPa', 100, 0, si],
      ['kPa', 1000, 0, si],
      ['mbar', 100, 0, `${siTable8}, bar`],
      ['bar', 100_000, 0, `${siTable8}, bar`],
      ['psi', poundForceN / inchM ** 2, 0, `${sp811} (lbf/in²)`],
      ['inHg', conventionalMercuryPaPerM * inchM, 0, `${sp811} (conventional)`],
      ['mmHg', conventionalMercuryPaPerM / 1000, 0, `${sp811} (conventional)`],
    ],
  ],
  [
    ['volumeFlow'],
    [
      ['m3/s', 1, 0, si],
      ['m3/h', 1 / 3600, 0, siTable8],
      ['L/s', 1 / 1000, 0, siTable8],
      ['L/min', 1 / 60_000, 0, siTable8],
      ['gpm(US)', gallonM3 / 60, 0, `${sp811} (US gallon per minute)`],
    ],
  ],
  [
    ['freeAirFlow'],
    [
      ['free m3/s', 1, 0, 'definition: 20 °C, 101.325 kPa'],
      ['free m3/h', 1 / 3600, 0, 'definition: 20 °C, 101.325 kPa'],
      ['free L/min', 1 / 60_000, 0, 'definition: 20 °C, 101.325 kPa'],
      [
        'L/min at 0 degC',
        293.15 / 273.15 / 60_000,
        0,
        'ideal gas, from 0 °C and 101.325 kPa to 20 °C at the same pressure',
      ],
    ],
  ],
  [
    ['massFlow'],
    [
      ['kg/s', 1, 0, si],
      ['kg/h', 1 / 3600, 0, siTable8],
    ],
  ],
  [
    ['level'],
    [
      ['m', 1, 0, si],
      ['cm', 1 / 100, 0, si],
      ['mm', 1 / 1000, 0, si],
      ['in', inchM, 0, sp811],
    ],
  ],
  [
    ['power'],
    [
      ['W', 1, 0, si],
      ['kW', 1000, 0, si],
      ['MW', 1_000_000, 0, si],
    ],
  ],
  [
    ['ratio', 'relativeHumidity'],
    [
      ['1', 1, 0, si],
      ['%', 1 / 100, 0, `${si}, 5.4.7`],
    ],
  ],
  [['yesNo', 'mode', 'ph'], [['1', 1, 0, definition]]],
  [
    ['ph'],
    [['mV', -1 / electrodeSlopeMv25, 7, 'IUPAC Recommendations 2002, pH: 0 mV at pH 7 and RT·ln 10/F a pH, at 25 °C']],
  ],
  [
    ['conductivity'],
    [
      ['S/m', 1, 0, si],
      ['mS/m', 1 / 1000, 0, si],
      ['mS/cm', 1 / 10, 0, si],
      ['uS/cm', 1 / 10_000, 0, si],
    ],
  ],
  [['turbidity'], [['NTU', 1, 0, definition]]],
  [
    ['concentration'],
    [
      ['kg/m3', 1, 0, si],
      ['g/L', 1, 0, siTable8],
      ['mg/L', 1 / 1000, 0, siTable8],
    ],
  ],
  [
    ['volume'],
    [
      ['m3', 1, 0, si],
      ['L', 1 / 1000, 0, siTable8],
    ],
  ],
  [
    ['duration'],
    [
      ['s', 1, 0, si],
      ['min', 60, 0, siTable8],
      ['h', 3600, 0, siTable8],
      ['d', 86_400, 0, siTable8],
    ],
  ],
  [['bacteria'], [['CFU/mL', 1, 0, definition]]],
  [['thermalConductance'], [['W/K', 1, 0, si]]],
  [['thermalResistance'], [['K/W', 1, 0, si]]],
  [
    ['velocity'],
    [
      ['m/s', 1, 0, si],
      ['ft/s', 12 * inchM, 0, sp811],
    ],
  ],
  [
    ['heatFlux'],
    [
      ['W/m2', 1, 0, si],
      ['W/cm2', 10_000, 0, si],
    ],
  ],
  [['filmCoefficient'], [['W/(m2.K)', 1, 0, si]]],
  [['foulingFactor'], [['m2.K/W', 1, 0, si]]],
];

export const unitsOfMeasure: readonly UnitOfMeasure[] = rowsByQuantity.flatMap(([quantities, rows]) =>
  rows.map(([id, factor, offset, source]) => ({ id, quantities, factor, offset, source })),
);

/** The row for a unit of measure as it serves this quantity, or undefined where it serves it not. */
export function unitOfMeasure(id: string, quantity: QuantityKind): UnitOfMeasure | undefined {
  return unitsOfMeasure.find((row) => row.id === id && row.quantities.includes(quantity));
}

/** Ids that a site file may name for this quantity, in order of the table; for messages. */
export function unitsOfMeasureFor(quantity: QuantityKind): readonly string[] {
  return unitsOfMeasure.filter((row) => row.quantities.includes(quantity)).map((row) => row.id);
}

export const toSi = (row: UnitOfMeasure, value: number): number => value * row.factor + row.offset;

export const fromSi = (row: UnitOfMeasure, value: number): number => (value - row.offset) / row.factor;
