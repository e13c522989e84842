import type { ValueProvider } from '@nestjs/common';
import { usualTargets } from '../evaluation/alarm-performance/targets';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { Clock } from '../ports/clock';
import type { HistoryStore } from '../ports/history-store';
import type { Environment } from '../connections/config/environment';
import { PERFORMANCE_DESK, type PerformanceDesk } from '../ports/performance-desk';
import { journalBegan } from '../runner/performance/journal-began';
import { JournalPerformanceDesk } from '../runner/performance/performance-desk';
import { proposeSettings } from '../runner/performance/propose-settings';

export interface PerformanceNeeds {
  readonly journal: AlarmJournal;
  readonly store: HistoryStore;
  readonly clock: Clock;
  readonly site: () => CompiledSite;
  readonly nowMs: () => number;
}

/** The figures of alarm performance, for the routes. */
export function openPerformance(
  { alarmsPerDay = usualTargets.perDay, clock: kind }: Pick<Environment, 'alarmsPerDay' | 'clock'>,
  { journal, store, clock, site, nowMs }: PerformanceNeeds,
): ValueProvider<PerformanceDesk> {
  const desk = new JournalPerformanceDesk({
    journal,
    // On the clock of the samples only rows of alarms are of that time; people come by the clock of the machine.
    beganMs: () => (kind === 'wall' ? journalBegan(journal) : Number.NaN),
    site,
    nowMs,
    wallMs: () => clock.wallMs(),
    targets: { perDay: alarmsPerDay },
    propose: (told) => proposeSettings(told, { site: site(), store }),
  });
  return { provide: PERFORMANCE_DESK, useValue: desk };
}
