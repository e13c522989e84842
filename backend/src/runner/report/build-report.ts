import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { AlarmPerformance } from '@ebbline/shared/contract/alarm-performance';
import type { EnergyReport } from '@ebbline/shared/contract/energy';
import type { Handover } from '@ebbline/shared/contract/handover';
import type { Note } from '@ebbline/shared/contract/notes';
import type { Report } from '@ebbline/shared/contract/report';
import type { StandingThen } from '../../ports/alarm-journal';
import { titleOf } from '../performance/title-of';
import { isoOf } from './iso-of';
import { changesOf, testsOf } from './report-changes';
import { setAsideOf, standingOf } from './standing-at-end';

/** What history told. */
export type PlantOfPeriod = Pick<Report, 'lineUp' | 'smallestMargin' | 'smallestReserve' | 'topUp' | 'log' | 'gaps'>;

export interface ReportSources {
  readonly site: string;
  readonly timeZone: string;
  /** Null: the whole site. */
  readonly hall: string | null;
  /** In which hall a unit stands; undefined: the site file has it no more. */
  readonly hallOf: (unit: string) => string | undefined;
  readonly fromMs: number;
  readonly toMs: number;
  /** End of what is told: that of the period, or now. */
  readonly untilMs: number;
  readonly madeMs: number;
  readonly madeBy: string | null;
  /** Rows of the journal that happened in [fromMs, untilMs). */
  readonly rows: readonly JournalRow[];
  /** Null: rows of that time were sealed. */
  readonly then: StandingThen | null;
  readonly notes: readonly Note[];
  readonly handovers: readonly Handover[];
  readonly plant: PlantOfPeriod;
  readonly energy: EnergyReport | null;
  readonly performance: AlarmPerformance | null;
  readonly waterByHand: Report['waterByHand'];
  /** What is known to be missing, in sentences. */
  readonly missing: readonly string[];
}

/** The report of a period from what was read for it: nothing is looked up, and the same sources give the same report. */
export function buildReport(sources: ReportSources): Report {
  const { hall, hallOf, performance, rows, then, timeZone, untilMs } = sources;
  /** What is of no hall concerns all of them. */
  const concerns = ({
    hall: its,
    unit,
  }: {
    readonly hall?: string | null | undefined;
    readonly unit: string | null;
  }): boolean => {
    const place = unit === null ? (its ?? null) : (hallOf(unit) ?? its ?? null);
    return hall === null || place === null || place === hall;
  };
  const own = rows.filter(concerns);
  const alarms = then?.alarms.filter(concerns) ?? null;
  return {
    site: sources.site,
    hall,
    timeZone,
    from: isoOf(sources.fromMs),
    to: isoOf(sources.toMs),
    until: isoOf(untilMs),
    madeAt: isoOf(sources.madeMs),
    madeBy: sources.madeBy,
    incomplete: [...sources.missing, ...(then === null ? [sealed] : [])],
    handovers: [...sources.handovers],
    standing: alarms === null ? null : standingOf(alarms),
    setAside: alarms === null ? null : setAsideOf(alarms),
    alerts: then === null ? null : alertsOf(then.alerts.filter(concerns)),
    permits: then === null ? null : permitsOf(then.permits, concerns, untilMs),
    ...sources.plant,
    waterByHand: [...sources.waterByHand],
    changes: changesOf(own, timeZone),
    notes: sources.notes.filter((note) => note.correctedBy === null && note.withdrawn === null),
    tests: testsOf(own, timeZone),
    floods: performance?.floods ?? [],
    energy: sources.energy,
    performance,
  };
}

const sealed =
  'What stood at the end of this time can not be told any more: rows of the journal from then were sealed into files.';

const alertsOf = (alerts: StandingThen['alerts']): NonNullable<Report['alerts']> =>
  alerts
    .map(({ alert: id, entry, unit, hall, where, detail, sinceMs }) => ({
      ...{ id, entry, title: titleOf(entry), unit, hall, where },
      detail: detail ?? null,
      since: isoOf(sinceMs),
    }))
    .sort((a, b) => a.since.localeCompare(b.since));

const permitsOf = (
  permits: StandingThen['permits'],
  concerns: (of: { readonly unit: string }) => boolean,
  untilMs: number,
): NonNullable<Report['permits']> =>
  permits
    .filter((permit) => concerns(permit))
    .sort((a, b) => a.untilMs - b.untilMs)
    .map(({ id, unit, branch, openedBy, openedMs, untilMs: endMs, expectedInLeakM3PerS, comment }) => ({
      ...{ id, unit, branch, openedBy, openedAt: isoOf(openedMs), until: isoOf(endMs), comment },
      overdue: untilMs >= endMs,
      expectedInLeak: expectedInLeakM3PerS,
    }));
