import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { Reading } from '@ebbline/shared/contract/reading';
import { isPlausibleCapture } from '@ebbline/shared/heat/capture';
import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import { counts, noSum, sumFigures } from './sum-figures';

/** What one unit brings to a sum. */
export interface UnitInputs {
  readonly unit: string;
  /** In the order of `HallSum.of`. */
  readonly readings: readonly Reading[];
}

interface SumPart {
  /** `unit:point` */
  readonly from: string;
  /** Standard uncertainty that it brings; NaN where none is stated. */
  readonly contribution: number;
}

/** A value of a hall that is made of its units' values. */
export interface HallSum {
  readonly of: readonly string[];
  /** UCUM code. */
  readonly unitOfMeasure: string;
  readonly formula: string;
  add(units: readonly UnitInputs[]): { readonly figure: Figure; readonly parts: readonly SumPart[] };
}

const partOf = (unit: string, { id, expandedUncertainty }: Reading, slope: number): SumPart => ({
  from: `${unit}:${id}`,
  contribution: (Math.abs(slope) * (expandedUncertainty ?? Number.NaN)) / coverageFactor,
});

const sumOf = (point: string, formula: string): HallSum => ({
  of: [point],
  unitOfMeasure: 'W',
  formula,
  add: (units) => ({
    figure: sumFigures(units.flatMap(({ readings }) => readings)),
    parts: units.flatMap(({ unit, readings }) => readings.filter(counts).map((one) => partOf(unit, one, 1))),
  }),
});

/**
 * Heat over chip power of the units that have both: a unit whose chip power is not known would raise the share though it takes
 * off no more. u² = Σ(u(Q)/ΣP)² + Σ(ΣQ·u(P)/ΣP²)²
 */
function captured(units: readonly UnitInputs[]): ReturnType<HallSum['add']> {
  const both = units.filter(({ readings }) => readings.every(counts));
  const heat = sumFigures(both.flatMap(({ readings }) => readings.slice(0, 1)));
  const power = sumFigures(both.flatMap(({ readings }) => readings.slice(1)));
  if (heat.value === null || power.value === null)
    return { figure: noSum(units.flatMap(({ readings }) => readings)), parts: [] };
  // All chips are off: there is nothing to take a share of.
  if (power.value <= 0) return { figure: { ...heat, value: null, quality: 'bad', reasons: ['undefined'] }, parts: [] };
  const share = heat.value / power.value;
  if (!isPlausibleCapture(share))
    return { figure: { ...heat, value: null, quality: 'bad', reasons: ['contradicted'] }, parts: [] };
  const slopes = [1 / power.value, heat.value / power.value ** 2];
  const parts = both.flatMap(({ unit, readings }) =>
    readings.map((one, index) => partOf(unit, one, slopes[index] ?? 0)),
  );
  const expanded = coverageFactor * Math.hypot(...parts.map(({ contribution }) => contribution));
  const reasons = sumFigures(units.flatMap(({ readings }) => readings)).reasons;
  return {
    figure: {
      value: share,
      age: Math.max(heat.age ?? 0, power.age ?? 0),
      quality: reasons.length === 0 ? 'good' : 'uncertain',
      reasons,
      expandedUncertainty: Number.isFinite(expanded) ? expanded : null,
    },
    parts,
  };
}

/** Sums over the units of a hall, by the point that they are asked for as. */
export const hallSums: { readonly [point: string]: HallSum | undefined } = {
  heatRemoved: sumOf('heatRemoved', 'Q = Σ Q of the units whose heat is known'),
  chipPower: sumOf('chipPower', 'P = Σ P of the units whose chip power is known'),
  capture: {
    of: ['heatRemoved', 'chipPower'],
    unitOfMeasure: '1',
    formula: 'Q/P = Σ Q / Σ P, of the units whose heat and chip power are both known',
    add: captured,
  },
};
