import { describe, expect, it } from 'vitest';
import { cleanConductance } from '@ebbline/shared/heat/conductance';
import { fitConductance, fittedRelativeU, type ConductanceRecord } from '@ebbline/shared/heat/fit-conductance';

/** An exchanger of 48 kW/K with 30, 50 and 20 % of its resistance on the loop's side, the facility's and in the wall. */
const shares = { film1: 0.3, film2: 0.5, wall: 0.2 };
const record = (share1: number, share2: number, off = 1): ConductanceRecord => ({
  flow1: 5.74 * share1,
  flow2: 6.2 * share2,
  ua: off * cleanConductance(48_000, share1, share2, 0.75, shares),
});
const spread = [record(1, 1), record(0.5, 1), record(1, 0.5), record(0.5, 0.5), record(1.5, 1.5)];

describe('films and wall of records of a clean exchanger', () => {
  it('come out as they are, of records that are exact', () => {
    const fit = fitConductance(spread, 0.75, 0.01);
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.clean).toBeCloseTo(48_000, 3);
    expect(fit.shares.film1).toBeCloseTo(0.3, 9);
    expect(fit.shares.film2).toBeCloseTo(0.5, 9);
    expect(fit.shares.wall).toBeCloseTo(0.2, 9);
  });

  it('come out of three records too, where first one flow and then the other is changed', () => {
    const fit = fitConductance(spread.slice(0, 3), 0.75, 0.01);
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.shares.wall).toBeCloseTo(0.2, 9);
  });

  it('are not determined by two records, by the same one thrice, or by one flow alone', () => {
    expect(fitConductance(spread.slice(0, 2), 0.75, 0.01)).toBe('undetermined');
    expect(fitConductance([record(1, 1), record(1, 1), record(1, 1)], 0.75, 0.01)).toBe('undetermined');
    expect(fitConductance([record(1, 1), record(0.7, 1), record(0.5, 1)], 0.75, 0.01)).toBe('undetermined');
  });

  it('are not determined by flows that lie near each other, as the records are not that exact', () => {
    expect(fitConductance([record(1, 1), record(0.97, 1), record(1, 0.97)], 0.75, 0.03)).toBe('undetermined');
  });

  it('are refused where a film would help in place of hinder', () => {
    const more = [record(1, 1), record(0.5, 1, 2), record(1, 0.5), record(0.5, 0.5, 2)];
    expect(fitConductance(more, 0.75, 0.01)).toBe('negative');
  });

  it('have no wall where it comes out a little below 0, within what the records are good for', () => {
    const thin = { film1: 0.5, film2: 0.5, wall: 0 };
    const of = (share1: number, share2: number, off: number): ConductanceRecord => ({
      flow1: share1,
      flow2: share2,
      ua: off * cleanConductance(48_000, share1, share2, 0.75, thin),
    });
    const records = [of(1, 1, 1.01), of(0.6, 1, 0.99), of(1, 0.5, 0.99), of(0.6, 0.5, 1)];
    const fit = fitConductance(records, 0.75, 0.03);
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.shares.wall).toBe(0);
    expect(fit.shares.film1).toBeCloseTo(0.5, 1);
  });

  it('are surer between the records than far from them', () => {
    const fit = fitConductance(spread, 0.75, 0.02);
    if (typeof fit === 'string') throw new Error(fit);
    const within = fittedRelativeU(fit, 0.8, 0.8, 0.75);
    expect(within).toBeLessThan(0.02);
    expect(fittedRelativeU(fit, 0.1, 1.5, 0.75)).toBeGreaterThan(2 * within);
  });
});
