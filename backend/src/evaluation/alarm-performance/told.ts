import type { AlarmHistory } from './alarm-history';
import type { Annunciation, Standing } from './annunciation';
import { burstsOf, type Burst } from './chattering';
import { fleetingOf } from './fleeting';
import { floodsOf, type FloodSpan } from './flood-meter';
import { isWithin, type Period } from './period';

/** What the figures of one period are reckoned from. */
export interface Told {
  readonly period: Period;
  readonly days: number;
  /** Of the period, in order of time. */
  readonly annunciations: readonly Annunciation[];
  /** Times of all that were told before the end of the period, those before it too: windows look back. */
  readonly times: readonly number[];
  readonly standings: readonly Standing[];
  /** Those that touch the period; a flood that goes on has no end. */
  readonly floods: readonly FloodSpan[];
  readonly bursts: readonly Burst[];
  readonly fleeting: readonly Annunciation[];
  readonly folded: number;
  readonly unauthorised: number;
  /** Alarms that are configured and on. */
  readonly configured: number;
}

/** Sorts by time: a clock that was set back wrote rows out of order. */
export function toldIn(history: AlarmHistory, period: Period, configured: number): Told {
  const all = history.annunciations.filter(({ atMs }) => atMs < period.toMs).sort((a, b) => a.atMs - b.atMs);
  const annunciations = all.filter(({ atMs }) => atMs >= period.fromMs);
  const times = all.map(({ atMs }) => atMs);
  const bursts = burstsOf(annunciations);
  const inPeriod = (list: readonly number[]): number => list.filter((atMs) => isWithin(period, atMs)).length;
  return {
    period,
    days: Math.max(0, period.toMs - period.fromMs) / 86_400_000,
    annunciations,
    times,
    standings: history.standings,
    floods: floodsOf(times, period.toMs).filter(({ toMs }) => (toMs ?? period.toMs) > period.fromMs),
    bursts,
    fleeting: fleetingOf(annunciations, bursts),
    folded: inPeriod(history.foldedMs),
    unauthorised: inPeriod(history.unauthorisedMs),
    configured,
  };
}
