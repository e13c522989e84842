import { Controller, Get, Inject } from '@nestjs/common';
import type { Health } from '@ebbline/shared/contract/http-api';
import { BROKER_LINK, type BrokerLink } from '../../ports/broker-link';
import { CLOCK, type Clock } from '../../ports/clock';
import { RUNNER_HEALTH, type RunnerHealth } from '../../ports/health-report';
import { HISTORY_STORE, type HistoryStore } from '../../ports/history-store';
import { LIVE_VIEW, type LiveView } from '../../ports/live-view';
import { PROGRAM_VERSION } from '../../ports/program-version';
import { toHealth } from './to-health';

/** How the program itself is. */
@Controller('api/health')
export class HealthController {
  private readonly startedMs: number;

  constructor(
    @Inject(LIVE_VIEW) private readonly view: LiveView,
    @Inject(BROKER_LINK) private readonly broker: BrokerLink,
    @Inject(HISTORY_STORE) private readonly history: HistoryStore,
    @Inject(RUNNER_HEALTH) private readonly runner: RunnerHealth,
    @Inject(CLOCK) private readonly time: Clock,
    @Inject(PROGRAM_VERSION) private readonly version: string,
  ) {
    this.startedMs = time.monotonicMs();
  }

  @Get()
  health(): Health {
    return toHealth({
      clock: this.view.clock(),
      broker: this.broker.state(),
      history: this.history.health(),
      lastSampleAge: this.runner.lastSampleAge(),
      runningFor: (this.time.monotonicMs() - this.startedMs) / 1000,
      reasons: this.runner.reasons(),
      version: this.version,
    });
  }
}
