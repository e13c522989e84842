import { Alike } from '@ebbline/backend/src/evaluation/site/alike';
import { describe, expect, it } from 'vitest';

describe('objects that are alike', () => {
  it('become one, and those that differ in a figure stay two', () => {
    const alike = new Alike();
    const first = alike.once({ lossPa: 3000, tanks: [{ areaM2: 0.4 }] });
    expect(alike.once({ lossPa: 3000, tanks: [{ areaM2: 0.4 }] })).toBe(first);
    expect(alike.once({ lossPa: 3000, tanks: [{ areaM2: 0.5 }] })).not.toBe(first);
  });

  it('are told apart where JSON alone would not: no number, no bound, nothing, and columns of another kind', () => {
    const alike = new Alike();
    const all = [
      { a: Number.NaN },
      { a: Infinity },
      { a: -Infinity },
      { a: null },
      Uint8Array.of(1),
      Float64Array.of(1),
    ];
    expect(new Set(all.map((one) => alike.once(one))).size).toBe(all.length);
    expect(alike.once(null)).toBeNull();
    expect(alike.once(Float64Array.of(1))).toBe(all[5]);
  });

  it('are never maps, sets or functions, whose content is not seen', () => {
    expect(() => new Alike().once({ limits: new Map() })).toThrow(TypeError);
    expect(() => new Alike().once({ of: () => 1 })).toThrow(TypeError);
  });
});
