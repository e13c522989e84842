import { Controller, Get, Inject, Query } from '@nestjs/common';
import type { Intake } from '@ebbline/shared/contract/http-api';
import { lastPayloadQuerySchema, type LastPayload } from '@ebbline/shared/contract/setup';
import { INTAKE_REPORT, type IntakeReport } from '../../ports/intake-report';
import { LIVE_VIEW, type LiveView } from '../../ports/live-view';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';

/** What has come in. */
@Controller('api/intake')
export class IntakeController {
  constructor(
    @Inject(INTAKE_REPORT) private readonly intake: IntakeReport,
    @Inject(LIVE_VIEW) private readonly view: LiveView,
  ) {}

  @Get()
  report(): Intake {
    return this.intake.report();
  }

  @Get('last')
  last(@Query() asked: unknown): LastPayload {
    const { topic } = checkInput(lastPayloadQuerySchema, asked, 'QUERY_MALFORMED');
    if (!this.view.hasTopic(topic))
      throw new ProblemError('TOPIC_UNKNOWN', 'The site file names no such topic; /api/units/{unit}/setup lists them.');
    return this.intake.lastPayload(topic);
  }
}
