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

/** Seconds that something is known of, with its mean power and the mean uncertainty of that. */
interface Stretch {
  readonly seconds: number;
  readonly mean: number;
  readonly uncertainty: number;
}

type Stretches = Partial<Record<EnergyQuantity, Stretch>>;

/**
 * Adds one unit's energies to the periods: E = Σ P̄·t over the seconds that were measured, piece by piece, so that a gap adds neither
 * energy nor seconds. U(E) = Σ U(P)·t: what a sensor is off it is off in every second alike (r = +1: JCGM 100:2008, 5.2.2, note 1),
 * so nothing is divided by √n. Units are added up in the same way, which bounds the sum from above where their sensors are
 * independent. Pieces are equal, and begin with the first period; none crosses the border of two periods. A value of a slow sensor
 * stands for its period beyond its piece too, and no longer; nothing is added of what has not passed but the second that runs.
 */
export function addMeasured(
  periods: readonly PeriodSum[],
  powers: UnitPowers,
  pieceMs: number,
  nowMs = Infinity,
): void {
  const left: Stretches = {};
  let piece = 0;
  for (const period of periods) {
    const pieces = Math.round((period.endMs - period.startMs) / pieceMs);
    for (let i = 0; i < pieces; i += 1, piece += 1) {
      const passedMs = Math.min(pieceMs, Math.max(0, nowMs - period.startMs - i * pieceMs));
      addPiece(period, pieceOf(powers, left, { piece, pieceS: pieceMs / 1000, passedS: passedMs / 1000 }));
    }
  }
}

interface Piece {
  /** Which one, from the first on. */
  readonly piece: number;
  readonly pieceS: number;
  /** Of it, what has passed. */
  readonly passedS: number;
}

/** What is known of a piece; what its values stand for beyond it is left in `left` for the next. */
function pieceOf(powers: UnitPowers, left: Stretches, { piece, pieceS, passedS }: Piece): Stretches {
  const found: Stretches = {};
  for (const quantity of energyQuantities) {
    const series = powers[quantity];
    if (series === undefined) continue;
    const { buckets, secondsPerValue, uncertainty } = series;
    const values = buckets.count[piece] ?? 0;
    const own = {
      seconds: values * secondsPerValue,
      mean: buckets.mean[piece] ?? Number.NaN,
      uncertainty: uncertainty(piece),
    };
    const known = together(left[quantity], own);
    // A value that is there already stands for the second that runs.
    const seconds = Math.min(pieceS, Math.max(passedS, values), known.seconds);
    found[quantity] = { ...known, seconds };
    // However many values came, the last of them stands for no more than its period.
    left[quantity] = { ...known, seconds: Math.min(secondsPerValue, known.seconds - seconds) };
  }
  return found;
}

function together(one: Stretch | undefined, other: Stretch): Stretch {
  if (one === undefined || one.seconds === 0) return other;
  if (other.seconds === 0) return one;
  const seconds = one.seconds + other.seconds;
  const share = other.seconds / seconds;
  return {
    seconds,
    mean: one.mean + (other.mean - one.mean) * share,
    uncertainty: one.uncertainty + (other.uncertainty - one.uncertainty) * share,
  };
}

function addPiece(period: PeriodSum, piece: Stretches): void {
  for (const quantity of energyQuantities) {
    const { seconds, mean, uncertainty } = piece[quantity] ?? nothing;
    if (seconds === 0) continue;
    const sum = period.of[quantity];
    sum.measuredSeconds += seconds;
    sum.energy += mean * seconds;
    if (Number.isNaN(uncertainty)) continue;
    sum.uncertainty += uncertainty * seconds;
    sum.uncertainSeconds += seconds;
  }
  const { heatRemoved: heat = nothing, unitEnergy: power = nothing } = piece;
  const both = Math.min(heat.seconds, power.seconds);
  if (both === 0) return;
  period.commonHeat += heat.mean * both;
  period.commonPower += power.mean * both;
}

const nothing: Stretch = { seconds: 0, mean: Number.NaN, uncertainty: Number.NaN };
