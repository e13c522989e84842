import { Controller, Get, Header, Inject } from '@nestjs/common';
import { BROKER_LINK, type BrokerLink } from '../../ports/broker-link';
import { DELIVERY_GATE, type DeliveryGate } from '../../ports/delivery-gate';
import { RUNNER_HEALTH, type RunnerHealth } from '../../ports/health-report';
import { HISTORY_STORE, type HistoryStore } from '../../ports/history-store';
import { INTAKE_REPORT, type IntakeReport } from '../../ports/intake-report';
import { OWN_FIGURES, type OwnFigures } from '../../ports/own-figures';
import { PROGRAM_VERSION } from '../../ports/program-version';
import { PROGRAM_WATCH, type ProgramWatch } from '../../ports/program-watch';
import { openMetricsText, openMetricsType } from './open-metrics-text';
import { plantFamilies } from './plant-families';
import { programFamilies } from './program-families';

/** What the program counts of itself, in the open text format that others read in regularly. */
@Controller('api/metrics')
export class MetricsController {
  constructor(
    @Inject(OWN_FIGURES) private readonly figures: OwnFigures,
    @Inject(PROGRAM_WATCH) private readonly program: ProgramWatch,
    @Inject(INTAKE_REPORT) private readonly intake: IntakeReport,
    @Inject(DELIVERY_GATE) private readonly gate: DeliveryGate,
    @Inject(BROKER_LINK) private readonly broker: BrokerLink,
    @Inject(HISTORY_STORE) private readonly history: HistoryStore,
    @Inject(RUNNER_HEALTH) private readonly health: RunnerHealth,
    @Inject(PROGRAM_VERSION) private readonly version: string,
  ) {}

  @Get()
  @Header('Content-Type', openMetricsType)
  metrics(): string {
    const { figures } = this;
    return openMetricsText([
      ...plantFamilies({
        intake: this.intake.report(),
        broker: this.broker.state(),
        held: this.gate.waiting(),
        lastSampleAgeS: this.health.lastSampleAge(),
        site: figures.site(),
        ticks: figures.ticks,
      }),
      ...programFamilies({
        figures,
        program: this.program.figures(),
        history: this.history.health(),
        reasons: this.health.reasons(),
        version: this.version,
        nodeVersion: process.versions.node,
      }),
    ]);
  }
}
