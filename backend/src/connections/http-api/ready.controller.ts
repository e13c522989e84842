import { Controller, Get, Inject } from '@nestjs/common';
import { toHealthReason } from '@ebbline/shared/contract/health-reasons';
import type { Alive, Ready } from '@ebbline/shared/contract/http-api';
import { BROKER_LINK, type BrokerLink } from '../../ports/broker-link';
import { RUNNER_HEALTH, type RunnerHealth } from '../../ports/health-report';
import { notReadyReasons } from './not-ready-reasons';
import { ProblemError } from './problem-error';

/** For whatever starts, watches and ends programs on this machine. */
@Controller('api/health')
export class ReadyController {
  constructor(
    @Inject(BROKER_LINK) private readonly broker: BrokerLink,
    @Inject(RUNNER_HEALTH) private readonly runner: RunnerHealth,
  ) {}

  @Get('alive')
  alive(): Alive {
    return { status: 'alive' };
  }

  @Get('ready')
  ready(): Ready {
    const reasons = notReadyReasons({ broker: this.broker.state().state, isJudging: this.runner.isJudging() });
    if (reasons.length === 0) return { status: 'ready' };
    throw new ProblemError('NOT_READY', reasons.map(({ message }) => message).join(' '), {
      reasons: reasons.map(toHealthReason),
    });
  }
}
