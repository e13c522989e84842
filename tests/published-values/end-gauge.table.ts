import { effectiveDegreesOfFreedom } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { propagatedUncertainty } from '@ebbline/shared/uncertainty/propagate';
import { studentTFactor } from '@ebbline/shared/uncertainty/student-t';
import { absolute, type PublishedTable } from './published-table';

const source = 'JCGM 100:2008 (GUM) H.1, table H.1 and H.1.7';

/** l = l_S + d − l_S (δα·θ + α_S·δθ), nm; standard gauge 50.000623 mm, d = 215 nm, α_S = 11.5e-6, θ = −0.1 °C. */
const standardNm = 50.000623e6;
const theta = -0.1;
const alpha = 11.5e-6;
const inputs = [
  { name: 'l_S', sensitivity: 1, u: 25, degreesOfFreedom: 18 },
  { name: 'd', sensitivity: 1, u: 9.7, degreesOfFreedom: 25.6 },
  { name: 'δα', sensitivity: -standardNm * theta, u: 0.58e-6, degreesOfFreedom: 50 },
  { name: 'δθ', sensitivity: -standardNm * alpha, u: 0.029, degreesOfFreedom: 2 },
];
const combined = (): number =>
  propagatedUncertainty(
    inputs.map(({ sensitivity }) => sensitivity),
    inputs.map(({ u }) => u),
  );
const effective = (): number =>
  effectiveDegreesOfFreedom(
    combined(),
    inputs.map(({ sensitivity, u, degreesOfFreedom }) => ({ contribution: sensitivity * u, degreesOfFreedom })),
  );

export const combinedTable: PublishedTable = {
  title: 'combined standard uncertainty of an end gauge, nm',
  subject: { equation: propagatedUncertainty as unknown as (...inputs: never[]) => number },
  evaluate: () => combined(),
  rows: [{ id: 'gum-h1 u_c', status: 'published', source, inputs: {}, expected: 32, tolerance: absolute(0.6) }],
};

export const effectiveTable: PublishedTable = {
  title: 'effective degrees of freedom of an end gauge, rounded down',
  subject: { equation: effectiveDegreesOfFreedom as unknown as (...inputs: never[]) => number },
  evaluate: () => effective(),
  rows: [{ id: 'gum-h1 nu_eff', status: 'published', source, inputs: {}, expected: 16, tolerance: absolute(0.99) }],
};

export const gaugeFactorTable: PublishedTable = {
  title: 'coverage factor and expanded uncertainty of an end gauge, 99 %',
  subject: { equation: studentTFactor },
  evaluate: (equation, { asWidth = 0 }) => equation(effective(), 0.99) * (asWidth === 1 ? combined() : 1),
  rows: [
    { id: 'gum-h1 k_99', status: 'published', source, inputs: {}, expected: 2.92, tolerance: absolute(0.005) },
    { id: 'gum-h1 U_99', status: 'published', source, inputs: { asWidth: 1 }, expected: 93, tolerance: absolute(1.5) },
  ],
};

export const studentTable: PublishedTable = {
  title: 'Student factor t_p(ν)',
  subject: { equation: studentTFactor },
  evaluate: (equation, { nu = Number.NaN, percent = Number.NaN }) => equation(nu, percent / 100),
  rows: [
    ['gum-t-10-95', 10, 95, 2.23],
    ['gum-t-16-99', 16, 99, 2.92],
  ].map(([id, nu, percent, expected]) => ({
    id: String(id),
    status: 'published' as const,
    source: 'JCGM 100:2008 (GUM) table G.2',
    inputs: { nu: Number(nu), percent: Number(percent) },
    expected: Number(expected),
    tolerance: absolute(0.005),
  })),
};
