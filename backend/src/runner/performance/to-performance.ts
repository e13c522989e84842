import type { AlarmPerformance, Flood } from '@ebbline/shared/contract/alarm-performance';
import type { Annunciation } from '../../evaluation/alarm-performance/annunciation';
import { firstOutsOf } from '../../evaluation/alarm-performance/flood-first-outs';
import type { FloodSpan } from '../../evaluation/alarm-performance/flood-meter';
import type { JudgedFigure } from '../../evaluation/alarm-performance/judge-figure';
import { mostFrequent } from '../../evaluation/alarm-performance/most-frequent';
import { priorityMix } from '../../evaluation/alarm-performance/priority-mix';
import { staleOf } from '../../evaluation/alarm-performance/stale';
import { timeSpreads } from '../../evaluation/alarm-performance/time-spreads';
import type { Told } from '../../evaluation/alarm-performance/told';
import { countsPerSpan } from '../../evaluation/alarm-performance/trailing-window';
import { quantile } from '../../evaluation/alarm-performance/quantile';
import { byAlarm } from '../../evaluation/alarm-performance/chattering';
import { titleOf } from './title-of';

const hourMs = 3_600_000;
const enoughDays = 30;

type Proposals = ReadonlyMap<string, AlarmPerformance['chattering'][number]['proposal']>;

export interface Proposed {
  readonly chattering: Proposals;
  readonly fleeting: Proposals;
}

/** All figures in the words of the contract. */
export function toPerformance(
  told: Told,
  hall: string | null,
  judged: readonly JudgedFigure[],
  proposed: Proposed,
): AlarmPerformance {
  const { period, annunciations } = told;
  return {
    from: iso(period.fromMs),
    to: iso(period.toMs),
    hall,
    days: told.days,
    enough: told.days >= enoughDays,
    annunciations: annunciations.length,
    figures: [...judged],
    mix: priorityMix(annunciations),
    mostFrequent: mostFrequent(annunciations).map(({ last, share, annunciations: count }) => ({
      ...named(last),
      annunciations: count,
      share,
    })),
    chattering: chatteringOf(told, proposed.chattering),
    fleeting: fleetingOf(told, proposed.fleeting),
    stale: staleOf(told.standings, period).map(({ alarm, entry, unit, fromMs, toMs }) => ({
      ...named({ alarm, entry, unit }),
      since: iso(fromMs),
      hours: (Math.min(toMs, period.toMs) - fromMs) / hourMs,
    })),
    floods: told.floods.map((flood) => toFlood(flood, annunciations)),
    acknowledging: timeSpreads(annunciations, 'acknowledgedMs'),
    clearing: timeSpreads(annunciations, 'clearedMs'),
    perHour: perHour(told),
  };
}

/** A flood as one event. */
export const toFlood = (flood: FloodSpan, annunciations: readonly Annunciation[]): Flood => ({
  from: iso(flood.fromMs),
  to: flood.toMs === null ? null : iso(flood.toMs),
  annunciations: flood.annunciations,
  mostInTenMinutes: flood.most,
  firstOuts: firstOutsOf(flood, annunciations).map(named),
});

function chatteringOf({ bursts, annunciations }: Told, proposals: Proposals): AlarmPerformance['chattering'] {
  const counts = byAlarm(annunciations);
  return [...new Set(bursts.map(({ alarm }) => alarm))].flatMap((alarm) => {
    const all = counts.get(alarm) ?? [];
    const last = all.at(-1);
    if (last === undefined) return [];
    const times = bursts.filter((burst) => burst.alarm === alarm).length;
    return [{ ...named(last), annunciations: all.length, times, proposal: proposals.get(alarm) ?? null }];
  });
}

function fleetingOf({ fleeting, annunciations }: Told, proposals: Proposals): AlarmPerformance['fleeting'] {
  const counts = byAlarm(annunciations);
  return [...byAlarm(fleeting)].flatMap(([alarm, gone]) => {
    const last = gone.at(-1);
    const seconds = gone.map(({ atMs, clearedMs }) => ((clearedMs ?? atMs) - atMs) / 1000);
    if (last === undefined) return [];
    return [
      {
        ...named(last),
        annunciations: counts.get(alarm)?.length ?? 0,
        times: gone.length,
        medianSeconds: quantile(seconds, 0.5) ?? 0,
        proposal: proposals.get(alarm) ?? null,
      },
    ];
  });
}

const perHour = ({ times, period: { fromMs, toMs } }: Told): AlarmPerformance['perHour'] =>
  countsPerSpan(times, hourMs, fromMs, toMs).flatMap((annunciations, hour) =>
    annunciations === 0 ? [] : [{ from: iso(fromMs + hour * hourMs), annunciations }],
  );

const named = ({ alarm, entry, unit }: Pick<Annunciation, 'alarm' | 'entry' | 'unit'>) => ({
  alarm,
  entry,
  title: titleOf(entry),
  unit,
});

const iso = (ms: number): string => new Date(ms).toISOString();
