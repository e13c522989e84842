import { describe, expect, it } from 'vitest';
import { GasAccount } from '../../../../../../backend/src/evaluation/derive/memory/gas-account';
import { TopUps } from '../../../../../../backend/src/evaluation/derive/memory/top-ups';

describe('the gas account', () => {
  it('explains a rate while a fill has gas left, and none when it is spent', () => {
    const account = new GasAccount(2);
    account.addFill(1, 0.006);
    expect(account.budgetRate(1)).toBeCloseTo(0.006 / 1800, 12);
    expect(account.budgetRate(0)).toBe(0);
    for (let s = 0; s < 3600; s += 1) account.spend(1, 0.000_002, 1);
    expect(account.budgetRate(1)).toBe(0);
  });

  it('fades by itself within days, and loses nothing to a load below what is allowed or not known', () => {
    const account = new GasAccount(1);
    account.addFill(0, 1);
    account.spend(0, -1, 1);
    account.spend(0, Number.NaN, 1);
    expect(account.budgetM3[0]).toBeGreaterThan(0.9999);
    for (let day = 0; day < 30; day += 1) account.spend(0, 0, 86_400);
    expect(account.budgetM3[0]).toBeLessThan(0.001);
  });
});

describe('top-ups', () => {
  it('are the mean of the last ten minutes, over a counter that rolls over at its full scale', () => {
    const topUps = new TopUps(1);
    let gained = 0;
    for (let s = 0; s <= 1200; s += 1) gained += topUps.push(0, s * 1000, (999 + s * 0.01) % 1000, 1000);
    expect(gained).toBeCloseTo(12, 6);
    expect(topUps.rate(0, 1_200_000)).toBeCloseTo(0.01, 3);
  });

  it('take a counter that was set back as starting anew, and a lost reading as none', () => {
    const topUps = new TopUps(1);
    expect(topUps.push(0, 0, 5, Infinity)).toBe(0);
    expect(topUps.push(0, 1000, Number.NaN, Infinity)).toBe(0);
    expect(topUps.push(0, 2000, 5.5, Infinity)).toBeCloseTo(0.5);
    expect(topUps.push(0, 3000, 0.2, Infinity)).toBeCloseTo(0.2);
    expect(topUps.total[0]).toBeCloseTo(0.7);
  });

  it('take no water from a counter that comes back with an older total, at its full scale neither', () => {
    const topUps = new TopUps(2);
    expect(topUps.push(0, 0, 0.3005, Infinity)).toBe(0);
    expect(topUps.push(0, 1000, 0.3, Infinity)).toBe(0);
    expect(topUps.push(0, 2000, 0.301, Infinity)).toBeCloseTo(0.001);
    expect(topUps.push(1, 0, 990, 1000)).toBe(0);
    expect(topUps.push(1, 1000, 989, 1000)).toBe(0);
    expect(topUps.total[0]).toBeCloseTo(0.001);
    expect(topUps.total[1]).toBe(0);
  });

  it('take no gain that is more than the loop holds: the counter misread, and comes back to what it was', () => {
    const topUps = new TopUps(1);
    topUps.push(0, 0, 5, Infinity, 0.5);
    for (const [i, reading] of [1e9, 5, 0, 5, -1, 5].entries())
      expect(topUps.push(0, 1000 * (i + 1), reading, Infinity, 0.5)).toBe(0);
    expect(topUps.push(0, 10_000, 5.1, Infinity, 0.5)).toBeCloseTo(0.1);
    expect(topUps.total[0]).toBeCloseTo(0.1);
  });

  it('have no rate before a minute has passed', () => {
    const topUps = new TopUps(1);
    topUps.push(0, 0, 1, Infinity);
    topUps.push(0, 30_000, 2, Infinity);
    expect(topUps.rate(0, 30_000)).toBeNaN();
  });
});
