import type { FigureRow, FigureTarget } from './figure-row';
import type { PerformanceTargets } from './targets';
import type { Told } from './told';

export interface JudgedFigure {
  readonly id: string;
  readonly title: string;
  readonly value: number | null;
  readonly unit: string;
  readonly acceptable: number | null;
  readonly limit: number | null;
  readonly verdict: 'within' | 'between' | 'beyond' | 'noTarget' | 'nothing';
  readonly band: string | null;
  readonly source: string;
}

/** One figure beside what is aimed at. */
export function judgeFigure(row: FigureRow, told: Told, targets: PerformanceTargets): JudgedFigure {
  const { id, title, unit, source } = row;
  const value = row.of(told);
  const target = row.target?.(targets) ?? null;
  return {
    id,
    title,
    value,
    unit,
    acceptable: target?.acceptable ?? null,
    limit: target?.limit ?? null,
    verdict: verdictOf(value, target),
    band: value === null ? null : (row.band?.(value) ?? null),
    source,
  };
}

function verdictOf(value: number | null, target: FigureTarget | null): JudgedFigure['verdict'] {
  if (value === null) return 'nothing';
  if (target === null) return 'noTarget';
  const keeps = (bound: number): boolean => (target.bound === 'below' ? value < bound : value <= bound);
  if (keeps(target.acceptable)) return 'within';
  return keeps(target.limit) ? 'between' : 'beyond';
}
