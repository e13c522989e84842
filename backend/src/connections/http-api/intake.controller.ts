import { Controller, Get, Inject } from '@nestjs/common';
import type { Intake } from '@ebbline/shared/contract/http-api';
import { INTAKE_REPORT, type IntakeReport } from '../../ports/intake-report';

/** What has come in. */
@Controller('api/intake')
export class IntakeController {
  constructor(@Inject(INTAKE_REPORT) private readonly intake: IntakeReport) {}

  @Get()
  report(): Intake {
    return this.intake.report();
  }
}
