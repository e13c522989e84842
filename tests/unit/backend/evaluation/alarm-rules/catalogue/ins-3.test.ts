import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

// 346 L/min over 8.7 K: 0.005767 m³/s × 990 kg/m³ × 4180 J/(kg·K) × 8.7 K = 207.6 kW.
const swapped = { 'loop.flow': 0.005767, 'supply.temperature': 45, 'return.temperature': 36.3, chipPower: 210e3 };
const bench = (values: Readonly<Record<string, number>>): RuleBench => new RuleBench({ values }).run(90);

describe('INS-3', () => {
  it('tells of a swapped pair after a minute, and holds the warm supply back that is none', () => {
    const early = new RuleBench({ values: swapped }).run(55);
    expect(early.active('INS-3')).toBe(false);
    const late = early.run(15);
    expect(late.alarm('INS-3')).toMatchObject({ active: true, where: 'supply.temperature', limit: 3 });
    expect(late.detail('INS-3')).toMatch(/takes up 208 kW, and the chips give off 210 kW: swapped\.$/);
    expect(late.active('TSUP-1')).toBe(false);
  });

  it('holds nothing back where the heat does not fit: then it may be the return sensor alone', () => {
    const off = bench({ ...swapped, 'return.temperature': 30 });
    expect(off.active('INS-3')).toBe(true);
    expect(off.detail('INS-3')).toMatch(/One of the two may be off/);
    expect(off.active('TSUP-1')).toBe(true);
  });

  it('holds nothing back where the supply is too warm the other way round as well', () => {
    const warm = bench({ ...swapped, 'supply.temperature': 53.7, 'return.temperature': 45 });
    expect(warm.active('INS-3')).toBe(true);
    expect(warm.active('TSUP-1')).toBe(true);
  });

  it.each([
    ['without load', { chipPower: 0 }],
    ['without flow', { 'loop.flow': 0.001 }],
    ['within the uncertainty of both', { 'return.temperature': 44.9 }],
  ])('says nothing %s', (_what, change) => {
    expect(bench({ ...swapped, ...change }).active('INS-3')).toBe(false);
  });
});
