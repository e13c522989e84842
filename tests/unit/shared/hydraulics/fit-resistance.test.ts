import { describe, expect, it } from 'vitest';
import { fitResistance, type LossRecord } from '@ebbline/shared/hydraulics/fit-resistance';
import { permissibleVelocity, velocityTables } from '@ebbline/shared/hydraulics/permissible-velocity';
import {
  frictionFactor,
  laminarFrictionFactor,
  turbulentFrictionFactor,
} from '@ebbline/shared/hydraulics/pipe-friction';

const record = (share: number, exponent: number): LossRecord => ({
  flowM3PerS: 0.006 * share,
  lossPa: 15_000 * share ** exponent,
});

describe('loss and exponent of records at three flows', () => {
  it.each([1, 1.4, 1.75, 2])('come out as they are, exponent %s', (exponent) => {
    const fit = fitResistance([record(1, exponent), record(0.8, exponent), record(0.6, exponent)], 0.003);
    expect(fit?.exponent).toBeCloseTo(exponent, 9);
    expect(fit?.lossPa).toBeCloseTo(15_000 * 0.5 ** exponent, 6);
  });

  it('are not told by fewer, nor by flows that hardly differ', () => {
    expect(fitResistance([record(1, 2), record(0.5, 2)], 0.006)).toBeNull();
    expect(fitResistance([record(1, 2), record(0.95, 2), record(0.9, 2)], 0.006)).toBeNull();
  });
});

describe('friction factor', () => {
  it('solves its own equation to the last digits, from smooth to very rough', () => {
    for (const reynolds of [4e3, 1e5, 1e7])
      for (const roughness of [0, 1e-5, 1e-3, 0.05]) {
        const root = Math.sqrt(turbulentFrictionFactor(reynolds, roughness));
        const rest = 1 / root + 2 * Math.log10(roughness / 3.7 + 2.51 / (reynolds * root));
        expect(Math.abs(rest), `${reynolds} ${roughness}`).toBeLessThan(1e-10);
      }
  });

  it('is that of laminar flow below 2,300 and falls with Reynolds number on either side', () => {
    expect(frictionFactor(2000, 1e-4)).toBe(laminarFrictionFactor(2000));
    expect(frictionFactor(1000, 0)).toBeGreaterThan(frictionFactor(2000, 0));
    expect(frictionFactor(1e4, 1e-4)).toBeGreaterThan(frictionFactor(1e5, 1e-4));
  });
});

describe('permissible velocity', () => {
  it('joins the rows of a table by lines, or holds a step to its end', () => {
    expect(permissibleVelocity(velocityTables.copperSwedish, 30)).toBeCloseTo(1.75, 9);
    expect(permissibleVelocity(velocityTables.copperBs6700, 60)).toBeCloseTo(2.75, 9);
    expect(permissibleVelocity(velocityTables.copperHandbook, 60)).toBe(1.5);
    expect(permissibleVelocity(velocityTables.copperHandbook, 60.1)).toBe(0.9);
  });

  it('is that of the first row in colder water, and not told above the last', () => {
    expect(permissibleVelocity(velocityTables.copperBs6700, 1)).toBe(3);
    expect(permissibleVelocity(velocityTables.copperBs6700, 91)).toBeNaN();
  });
});
