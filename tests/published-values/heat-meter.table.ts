import {
  calculatorError,
  flowSensorError,
  heatMeterError,
  temperaturePairError,
  type MeterClass,
} from '@ebbline/shared/uncertainty/heat-meter';
import { absolute, type PublishedRow, type PublishedTable } from './published-table';

const source = 'Directive 2014/32/EU annex VI (MI-004) 7.1 to 7.3; EN 1434-1';

type Case = readonly [id: string, grade: MeterClass, flowShare: number, differenceShare: number, expected: number];

/** Constants of classes 1 and 3 are recalled. */
const rows = (part: string, cases: readonly Case[]): readonly PublishedRow[] =>
  cases.map(([id, grade, flowShare, differenceShare, expected]) => ({
    id: `mid-mpe-${id} ${part}`,
    status: grade === 2 ? ('published' as const) : ('from-memory' as const),
    source,
    inputs: { grade, flowShare, differenceShare },
    expected,
    tolerance: absolute(1e-9),
  }));

export const flowSensorTable: PublishedTable = {
  title: 'largest error of the flow sensor of a heat meter, %',
  subject: { equation: flowSensorError },
  evaluate: (equation, { grade = Number.NaN, flowShare = Number.NaN }) => equation(grade, flowShare),
  rows: rows('Ef', [
    ['2-10-0.3', 2, 10, 0.3, 2.2],
    ['1-10-0.3', 1, 10, 0.3, 1.1],
    ['2-1-1', 2, 1, 1, 2.02],
    ['3-100-0.3', 3, 100, 0.3, 5],
  ]),
};

export const temperaturePairTable: PublishedTable = {
  title: 'largest error of the temperature pair of a heat meter, %',
  subject: { equation: temperaturePairError },
  evaluate: (equation, { differenceShare = Number.NaN }) => equation(differenceShare),
  rows: rows('Et', [
    ['2-10-0.3', 2, 10, 0.3, 1.4],
    ['2-1-1', 2, 1, 1, 3.5],
  ]),
};

export const calculatorTable: PublishedTable = {
  title: 'largest error of the calculator of a heat meter, %',
  subject: { equation: calculatorError },
  evaluate: (equation, { differenceShare = Number.NaN }) => equation(differenceShare),
  rows: rows('Ec', [
    ['2-10-0.3', 2, 10, 0.3, 0.8],
    ['2-1-1', 2, 1, 1, 1.5],
  ]),
};

export const heatMeterTable: PublishedTable = {
  title: 'largest error of a heat meter, %',
  subject: { equation: heatMeterError },
  evaluate: (equation, { grade = Number.NaN, flowShare = Number.NaN, differenceShare = Number.NaN }) =>
    equation(grade, flowShare, differenceShare),
  rows: rows('E', [
    ['2-10-0.3', 2, 10, 0.3, 4.4],
    ['1-10-0.3', 1, 10, 0.3, 3.3],
    ['2-1-1', 2, 1, 1, 7.02],
    ['3-100-0.3', 3, 100, 0.3, 7.2],
  ]),
};
