import type { PerformanceTargets } from './targets';
import type { Told } from './told';

/** What a figure is held against. */
export interface FigureTarget {
  readonly acceptable: number;
  readonly limit: number;
  /** `below`: the limit itself is too much. */
  readonly bound: 'atMost' | 'below';
}

/** One figure: what it means, what it is held against, and how it is reckoned. */
export interface FigureRow {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly source: string;
  /** Null: only to be known, nothing is aimed at. */
  readonly target: ((targets: PerformanceTargets) => FigureTarget) | null;
  /** Null where there is nothing to reckon it from. */
  readonly of: (told: Told) => number | null;
  /** What a value is called; absent where the source names no bands. */
  readonly band?: (value: number) => string;
}

export const atMost =
  (acceptable: number, limit = acceptable): FigureRow['target'] =>
  () => ({ acceptable, limit, bound: 'atMost' });
export const below =
  (limit: number): FigureRow['target'] =>
  () => ({ acceptable: limit, limit, bound: 'below' });

/** A mean over spans of so many days; null where not one whole span has passed, as seconds say nothing of a day. */
export const meanPer = (spanDays: number, count: number, days: number): number | null =>
  days >= spanDays ? count / (days / spanDays) : null;

export const isa2009 = 'ANSI/ISA-18.2-2009, IEC 62682:2014';
export const isa2016 = 'ANSI/ISA-18.2-2016, IEC 62682:2014';
export const eemua = 'EEMUA 191';
