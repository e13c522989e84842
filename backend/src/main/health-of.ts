import type { Health } from '@ebbline/shared/contract/http-api';
import { toHealth } from '../connections/health/to-health';
import type { BrokerLink } from '../ports/broker-link';
import type { Clock } from '../ports/clock';
import type { RunnerHealth } from '../ports/health-report';
import type { HistoryStore } from '../ports/history-store';
import type { LiveView } from '../ports/live-view';

export interface HealthParts {
  readonly view: LiveView;
  readonly broker: BrokerLink;
  readonly history: HistoryStore;
  readonly runner: RunnerHealth;
  readonly version: string;
}

/** The reasons that health gives, for whoever follows them from now on. */
export function healthOf(clock: Clock, { view, broker, history, runner, version }: HealthParts) {
  const startedMs = clock.monotonicMs();
  return (): Health['reasons'] =>
    toHealth({
      clock: view.clock(),
      broker: broker.state(),
      history: history.health(),
      lastSampleAge: runner.lastSampleAge(),
      runningFor: (clock.monotonicMs() - startedMs) / 1000,
      reasons: runner.reasons(),
      version,
    }).reasons;
}
