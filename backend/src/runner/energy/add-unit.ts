import { energyQuantities, type EnergyQuantity } from '@ebbline/shared/contract/energy';
import type { HistoryBuckets } from '../../ports/history-store';
import type { PeriodSum } from './energy-sums';

/** Mean power and the seconds that it was measured in, by piece of time. */
export interface PowerSeries {
  readonly buckets: HistoryBuckets;
  /** Seconds that one value stands for: the period of a slow sensor, else 1. */
  readonly secondsPerValue: number;
  /** Mean expanded uncertainty (k = 2) of the power in a piece; NaN where it is not known. */
  readonly uncertainty: (piece: number) => number;
}

export type UnitPowers = Readonly<Partial<Record<EnergyQuantity, PowerSeries>>>;

/** Wants the seconds of each period that have passed, of each energy that the unit has. */
export function addWanted(periods: readonly PeriodSum[], has: readonly EnergyQuantity[], nowMs: number): void {
  for (const { startMs, endMs, of } of periods) {
    const passedS = Math.max(0, Math.min(endMs, nowMs) - startMs) / 1000;
    for (const quantity of has) of[quantity].wantedSeconds += passedS;
  }
}

/**
 * Adds one unit's energies to the periods: E = Σ P̄·t over the seconds that were measured, piece by piece, so that a gap adds neither
 * energy nor seconds. U(E) = Σ U(P)·t: what a sensor is off it is off in every second alike (r = +1: JCGM 100:2008, 5.2.2, note 1),
 * so nothing is divided by √n. Units are added up in the same way, which bounds the sum from above where their sensors are
 * independent. Pieces are equal, and begin with the first period; none crosses the border of two periods.
 */
export function addMeasured(periods: readonly PeriodSum[], powers: UnitPowers, pieceMs: number): void {
  let piece = 0;
  for (const period of periods) {
    const pieces = Math.round((period.endMs - period.startMs) / pieceMs);
    for (const end = piece + pieces; piece < end; piece += 1) addPiece(period, powers, piece, pieceMs / 1000);
  }
}

function addPiece(period: PeriodSum, powers: UnitPowers, piece: number, pieceS: number): void {
  for (const quantity of energyQuantities) {
    const series = powers[quantity];
    if (series === undefined) continue;
    const seconds = secondsOf(series, piece, pieceS);
    if (seconds === 0) continue;
    const sum = period.of[quantity];
    sum.measuredSeconds += seconds;
    sum.energy += meanOf(series, piece) * seconds;
    const uncertainty = series.uncertainty(piece);
    if (Number.isNaN(uncertainty)) continue;
    sum.uncertainty += uncertainty * seconds;
    sum.uncertainSeconds += seconds;
  }
  const { heatRemoved: heat, unitEnergy: power } = powers;
  if (heat === undefined || power === undefined) return;
  const both = Math.min(secondsOf(heat, piece, pieceS), secondsOf(power, piece, pieceS));
  if (both === 0) return;
  period.commonHeat += meanOf(heat, piece) * both;
  period.commonPower += meanOf(power, piece) * both;
}

const meanOf = ({ buckets }: PowerSeries, piece: number): number => buckets.mean[piece] ?? Number.NaN;

const secondsOf = ({ buckets, secondsPerValue }: PowerSeries, piece: number, pieceS: number): number =>
  Math.min(pieceS, (buckets.count[piece] ?? 0) * secondsPerValue);
