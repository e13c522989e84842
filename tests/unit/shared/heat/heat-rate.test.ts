import { describe, expect, it } from 'vitest';
import { addPower } from '@ebbline/shared/heat/add-power';
import { approach } from '@ebbline/shared/heat/approach';
import { dewPointMargin } from '@ebbline/shared/heat/dew-point-margin';
import { heatRate, heatRateUncertainty } from '@ebbline/shared/heat/heat-rate';
import { celsius, joulePerKilogramKelvin, kilogramPerSecond, watt } from '@ebbline/shared/units/quantity';

const flow = kilogramPerSecond(5.7);
const capacity = joulePerKilogramKelvin(4180);

describe('heat and temperatures', () => {
  it('is negative where the water comes back colder', () => {
    expect(heatRate(flow, capacity, celsius(36), celsius(35))).toBe(-5.7 * 4180);
  });

  it('stays uncertain at no temperature rise at all: the pair of sensors alone decides', () => {
    const u = heatRateUncertainty(flow, 0.05, capacity, 4, 0, 0.1, 0.1);
    expect(u).toBeCloseTo(5.7 * 4180 * Math.SQRT2 * 0.1, 8);
  });

  it('passes no partial sum of powers off as a whole', () => {
    expect(addPower(watt(300), watt(20))).toBe(320);
    expect(addPower(watt(300), watt(Number.NaN))).toBeNaN();
  });

  it('counts approach and dew point margin upward from the colder side', () => {
    expect(approach(celsius(36), celsius(32))).toBe(4);
    expect(dewPointMargin(celsius(14), celsius(16))).toBe(-2);
  });
});
