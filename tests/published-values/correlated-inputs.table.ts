import { propagatedCovariance, propagatedUncertainty } from '@ebbline/shared/uncertainty/propagate';
import { absolute, type PublishedTable } from './published-table';

const source = 'JCGM 100:2008 (GUM) H.2, tables H.2 to H.4';

/** Five simultaneous readings of V (V), I (A) and φ (rad). */
const voltage = [5.007, 4.994, 5.005, 4.99, 4.999];
const current = [0.019663, 0.019639, 0.01964, 0.019685, 0.019678];
const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
const covarianceOfMeans = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, one, i) => sum + (one - mean(a)) * ((b[i] ?? Number.NaN) - mean(b)), 0) / (a.length * (a.length - 1));

const raw = [voltage, current, phase];
const u = raw.map((values) => Math.sqrt(covarianceOfMeans(values, values)));
const correlation = (i: number, j: number): number =>
  covarianceOfMeans(raw[i] ?? [], raw[j] ?? []) / ((u[i] ?? Number.NaN) * (u[j] ?? Number.NaN));
const v = mean(voltage);
const i = mean(current);
const phi = mean(phase);
const z = v / i;
/** Sensitivities to V, I and φ: R = z cos φ, X = z sin φ, Z = z. */
const sensitivities = {
  R: [Math.cos(phi) / i, (-z * Math.cos(phi)) / i, -z * Math.sin(phi)],
  X: [Math.sin(phi) / i, (-z * Math.sin(phi)) / i, z * Math.cos(phi)],
  Z: [1 / i, -z / i, 0],
} as const;
const names = ['R', 'X', 'Z'] as const;
const of = (index: number): readonly number[] => sensitivities[names[index] ?? 'Z'];

const row = (id: string, inputs: Readonly<Record<string, number>>, expected: number) => ({
  id: `gum-h2-results ${id}`,
  status: 'published' as const,
  source,
  inputs,
  expected,
  tolerance: absolute(0.001),
});

export const correlatedTable: PublishedTable = {
  title: 'standard uncertainty of resistance, reactance and impedance with correlated inputs, Ω',
  subject: { equation: propagatedUncertainty as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) => propagatedUncertainty(of(which), u, correlation),
  rows: [row('u(R)', { which: 0 }, 0.071), row('u(X)', { which: 1 }, 0.295), row('u(Z)', { which: 2 }, 0.236)],
};

export const correlationTable: PublishedTable = {
  title: 'correlation of resistance, reactance and impedance',
  subject: { equation: propagatedCovariance as unknown as (...inputs: never[]) => number },
  evaluate: (_, { one = 0, other = 0 }) =>
    propagatedCovariance(of(one), of(other), u, correlation) /
    (propagatedUncertainty(of(one), u, correlation) * propagatedUncertainty(of(other), u, correlation)),
  rows: [
    row('r(R,X)', { one: 0, other: 1 }, -0.588),
    row('r(R,Z)', { one: 0, other: 2 }, -0.485),
    row('r(X,Z)', { one: 1, other: 2 }, 0.993),
  ],
};
