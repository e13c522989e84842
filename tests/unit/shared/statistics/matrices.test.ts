import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addToMoments } from '@ebbline/shared/statistics/co-moments';
import { gaussLegendre } from '@ebbline/shared/statistics/gauss-legendre';
import { hotellingT2 } from '@ebbline/shared/statistics/hotelling';
import { solveInPlace } from '@ebbline/shared/statistics/linear-solve';
import { componentDistances } from '@ebbline/shared/statistics/principal-components';
import { symmetricEigen } from '@ebbline/shared/statistics/symmetric-eigen';

const size = 4;
const entry = fc.double({ min: -3, max: 3, noNaN: true });
/** B Bᵀ and something on its diagonal: symmetric, and no direction has no width. */
const covariance = fc.array(entry, { minLength: size * size, maxLength: size * size }).map((b) =>
  Float64Array.from({ length: size * size }, (_, place) => {
    const [i, j] = [Math.floor(place / size), place % size];
    let sum = i === j ? 0.5 : 0;
    for (let k = 0; k < size; k += 1) sum += (b[i * size + k] ?? 0) * (b[j * size + k] ?? 0);
    return sum;
  }),
);
const point = fc.array(entry, { minLength: size, maxLength: size });

describe('matrices of covariance', () => {
  it('are put together again from their eigenvalues and vectors', () => {
    fc.assert(
      fc.property(covariance, (matrix) => {
        const { values, vectors } = symmetricEigen(matrix, size);
        for (let i = 0; i < size; i += 1)
          for (let j = 0; j < size; j += 1) {
            let sum = 0;
            for (let k = 0; k < size; k += 1)
              sum += (values[k] ?? 0) * (vectors[k * size + i] ?? 0) * (vectors[k * size + j] ?? 0);
            expect(sum).toBeCloseTo(matrix[i * size + j] ?? 0, 8);
          }
      }),
    );
  });

  it('give the same T² by their components as by their inverse, and leave nothing over where all are kept', () => {
    fc.assert(
      fc.property(covariance, point, (matrix, x) => {
        const { t2, spe } = componentDistances(x, symmetricEigen(matrix, size), size);
        const direct = hotellingT2(x, new Float64Array(size), matrix);
        expect(spe).toBe(0);
        expect(Math.abs(t2 - direct)).toBeLessThan(1e-8 * Math.max(1, direct));
      }),
    );
  });

  it('are the sums over pairs of deviations, whatever the order and offset of the samples', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 30 }), (samples) => {
        const offset = 1e5;
        const mean = new Float64Array(size);
        const products = new Float64Array(size * size);
        samples.forEach((one, i) =>
          addToMoments(
            Float64Array.from(one, (value) => value + offset),
            i + 1,
            mean,
            products,
          ),
        );
        const means = mean.map((_, j) => samples.reduce((sum, one) => sum + (one[j] ?? 0), 0) / samples.length);
        const direct = samples.reduce(
          (sum, one) => sum + ((one[0] ?? 0) - (means[0] ?? 0)) * ((one[1] ?? 0) - (means[1] ?? 0)),
          0,
        );
        expect(products[1]).toBeCloseTo(direct, 5);
        expect(products[size]).toBe(products[1]);
      }),
    );
  });

  it('tell that equations without a single answer have none', () => {
    expect(solveInPlace(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1)).every(Number.isNaN)).toBe(true);
  });

  it('integrate a polynomial of degree 2n − 1 exactly with n nodes', () => {
    const { nodes, weights } = gaussLegendre(5, 0, 2);
    const ninth = nodes.reduce((sum, x, i) => sum + x ** 9 * (weights[i] ?? 0), 0);
    expect(ninth).toBeCloseTo(2 ** 10 / 10, 10);
  });
});
